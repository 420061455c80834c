/** As whom PostgreSQL runs: it refuses root, so root hands it to an unprivileged user. */
import { stat } from 'node:fs/promises'
import { dirname } from 'node:path'

export type Account = { uid: number; gid: number }

/** The user without rights of Debian and most others ("nobody"). */
const NOBODY: Account = { uid: 65534, gid: 65534 }

/** Null: as whoever runs Gripbook. A folder that is there already decides, so that a shop may choose a user of its own by `chown`. */
export async function accountFor(databaseFolder: string): Promise<Account | null> {
  if (process.getuid?.() !== 0) return null
  const owner = await stat(databaseFolder).catch(() => null)
  return owner === null || owner.uid === 0 ? NOBODY : { uid: owner.uid, gid: owner.gid }
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
