import { open } from 'node:fs/promises'

/** Until the names in a folder are on the disk: a file that was made or renamed is durable only then. Windows flushes no folder and needs none. */
export async function flushFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return
  const handle = await open(folder, 'r')
  await handle.sync().finally(() => handle.close())
}
