/** Files that hold a private key and its certificate together, so that there is never one without the other. For this user alone. */
import { createPrivateKey, type KeyObject, randomUUID, X509Certificate } from 'node:crypto'
import { chmod, link, mkdir, open, readFile, rename, rm } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { flushFolder } from '../flushFolder.ts'
import { certificatePem } from './certificate.ts'
import { CertificateError } from './faults.ts'

export type KeyAndCertificate = { key: KeyObject; certificate: X509Certificate }

/** The folder within the data folder, for this user alone. The data folder may have to be passed through by the database's user, so it stays open for that. */
export async function certificateFolder(dataFolder: string): Promise<string> {
  const folder = join(dataFolder, 'certificates')
  await writing(folder, async () => {
    if ((await mkdir(dataFolder, { recursive: true })) !== undefined) await chmod(dataFolder, 0o711)
    await mkdir(folder, { recursive: true, mode: 0o700 })
  })
  return folder
}

/** Null when there is no such file; throws what the system says otherwise, or when it holds something else. A file that others could read is closed to them. */
export async function readKeyFile(file: string): Promise<KeyAndCertificate | null> {
  let text: string
  try {
    text = await readFile(file, 'utf8')
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null
    throw error
  }
  await chmod(file, 0o600)
  const block = (label: string) =>
    new RegExp(`-----BEGIN ${label}-----[^-]+-----END ${label}-----`).exec(text)?.[0] ?? ''
  const key = createPrivateKey(block('PRIVATE KEY'))
  const certificate = new X509Certificate(block('CERTIFICATE'))
  if (!certificate.checkPrivateKey(key)) throw new Error('Key and certificate do not belong together.')
  return { key, certificate }
}

/** Puts a file in the place of the one before: the old one or the new one is there whole, at every moment. */
export function replaceKeyFile(file: string, given: KeyAndCertificate): Promise<void> {
  return place(file, given, rename)
}

/** Makes a file that is not there; false, and nothing changed, when it is there: another process may have been first. */
export async function makeKeyFile(file: string, given: KeyAndCertificate): Promise<boolean> {
  let made = true
  await place(file, given, (from, to) =>
    link(from, to).catch((error: NodeJS.ErrnoException) => {
      if (error.code !== 'EEXIST') throw error
      made = false
    }),
  )
  return made
}

async function place(
  file: string,
  { key, certificate }: KeyAndCertificate,
  put: (from: string, to: string) => Promise<void>,
): Promise<void> {
  const beside = `${file}.${randomUUID()}`
  const text = `${key.export({ type: 'pkcs8', format: 'pem' })}${certificatePem(certificate.raw)}`
  await writing(dirname(file), async () => {
    try {
      const handle = await open(beside, 'wx', 0o600)
      try {
        await handle.writeFile(text)
        await handle.sync()
      } finally {
        await handle.close()
      }
      await put(beside, file)
    } finally {
      await rm(beside, { force: true })
    }
    await flushFolder(dirname(file))
  })
}

async function writing(folder: string, work: () => Promise<void>): Promise<void> {
  try {
    await work()
  } catch (error) {
    throw new CertificateError({ code: 'folder-not-writable', folder, reason: (error as Error).message }, error)
  }
}
