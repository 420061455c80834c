import { readdirSync } from 'node:fs'
import { readdir } from 'node:fs/promises'
import { homedir } from 'node:os'
import { join } from 'node:path'

/** Where the system's services keep what they hold (Filesystem Hierarchy Standard 3.0, 5.8). */
const OF_THE_SYSTEM = '/var/lib/gripbook'

/**
 * Where the record lies when no folder is named: `GRIPBOOK_DATA`, else `gripbook` where this user's data lie (XDG Base Directory). For root, whose home the database cannot enter, it
 * is where services keep theirs, unless a record was begun at home already.
 */
export function dataFolder(
  env: Record<string, string | undefined>,
  { home = homedir(), isRoot = process.getuid?.() === 0 } = {},
): string {
  if (env.GRIPBOOK_DATA) return env.GRIPBOOK_DATA
  if (env.XDG_DATA_HOME) return join(env.XDG_DATA_HOME, 'gripbook')
  const atHome = join(home, '.local', 'share', 'gripbook')
  return isRoot && !isRecord(namesAt(atHome)) ? OF_THE_SYSTEM : atHome
}

/** Whether a record was ever begun in the folder, by whatever version: a mistyped folder must not be taken for an empty record. */
export async function holdsRecord(folder: string): Promise<boolean> {
  const names = await readdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code !== 'ENOENT') throw error
    return []
  })
  return isRecord(names)
}

const isRecord = (names: readonly string[]): boolean => names.some((name) => /^postgres-\d+$/.test(name))

function namesAt(folder: string): string[] {
  try {
    return readdirSync(folder)
  } catch {
    return []
  }
}
