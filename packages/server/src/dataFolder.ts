import { readdir } from 'node:fs/promises'
import { homedir } from 'node:os'
import { join } from 'node:path'

/** Where the record lies when no folder is named: `GRIPBOOK_DATA`, else `gripbook` where this user's data lie (XDG Base Directory). */
export function dataFolder(env: Record<string, string | undefined>): string {
  return env.GRIPBOOK_DATA || join(env.XDG_DATA_HOME || join(homedir(), '.local', 'share'), 'gripbook')
}

/** Whether a record was ever begun in the folder, by whatever version: a mistyped folder must not be taken for an empty record. */
export async function holdsRecord(folder: string): Promise<boolean> {
  const names = await readdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'ENOENT') throw error
    return []
  })
  return names.some((name) => /^postgres-\d+$/.test(name))
}
