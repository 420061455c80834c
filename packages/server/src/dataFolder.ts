import { homedir } from 'node:os'
import { join } from 'node:path'

/** Where the record lies when no folder is named: `GRIPBOOK_DATA`, else `gripbook` where this user's data lie (XDG Base Directory). */
export function dataFolder(env: Record<string, string | undefined>): string {
  return env.GRIPBOOK_DATA || join(env.XDG_DATA_HOME || join(homedir(), '.local', 'share'), 'gripbook')
}
