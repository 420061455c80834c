import { chmod, mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** A folder of a test's own that an unprivileged user can pass through, as a data folder must be when root starts the database. */
export async function temporaryFolder(): Promise<{ folder: string; remove: () => Promise<void> }> {
  const folder = await mkdtemp(join(tmpdir(), 'gb-test-'))
  await chmod(folder, 0o711)
  return { folder, remove: () => rm(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 50 }) }
}
