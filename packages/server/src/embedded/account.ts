/** As whom PostgreSQL runs: it refuses root, so root hands it to an unprivileged user. */
import { stat } from 'node:fs/promises'
import { dirname } from 'node:path'

export type Account = { uid: number; gid: number }

/** The user without rights of Debian and most others ("nobody"). */
const NOBODY: Account = { uid: 65534, gid: 65534 }

/**
 * Null: as whoever runs Gripbook. For root: the owner of the first of these folders that is there and not root's, so that a shop may choose a user by
 * `chown`; else nobody.
 */
export async function accountFor(...folders: readonly string[]): Promise<Account | null> {
  if (process.getuid?.() !== 0) return null
  for (const folder of folders) {
    const owner = await stat(folder).catch(() => null)
    if (owner !== null && owner.uid !== 0) return { uid: owner.uid, gid: owner.gid }
  }
  return NOBODY
}

/**
 * The first folder on the way to `path`, `path` included, that the account cannot enter and read; null when there is none. By mode bits:
 * access lists are not looked at.
 */
export async function blockedAt(path: string, account: Account | null): Promise<string | null> {
  if (account === null) return null
  const above = dirname(path)
  const blocked = above === path ? null : await blockedAt(above, account)
  if (blocked !== null) return blocked
  const { uid, gid, mode } = await stat(path)
  const bits = uid === account.uid ? mode >> 6 : gid === account.gid ? mode >> 3 : mode
  return (bits & 0o1) === 0 ? path : null
}
