/** The shop's own certificate authority: made once, kept for ten years, never replaced by itself. */
import { X509Certificate } from 'node:crypto'
import { join } from 'node:path'
import { authorityExtensions, newKey, writeCertificate } from './certificate.ts'
import { CertificateError } from './faults.ts'
import { type KeyAndCertificate, makeKeyFile, readKeyFile } from './keyFile.ts'
import { nameConstraints } from './permitted.ts'

export const DAY = 86_400_000
const YEARS = 10
/** A machine without a battery for its clock begins in 1970 or at some other day of the past. */
const NOT_BEFORE_GRIPBOOK = Date.parse('2026-01-01T00:00:00.000Z')

/** `host`: the name of this machine, lower case, that a new authority may stand for as well; null for none. Throws `CertificateError`. */
export async function shopAuthority(folder: string, host: string | null, now: Date): Promise<KeyAndCertificate> {
  if (now.getTime() < NOT_BEFORE_GRIPBOOK) throw behind(now)
  const file = join(folder, 'authority.pem')
  const authority = (await read(file)) ?? (await make(file, host, now))
  const { validFrom, validTo } = authority.certificate
  if (now.getTime() < Date.parse(validFrom)) throw behind(now)
  if (now.getTime() > Date.parse(validTo))
    throw new CertificateError({ code: 'authority-ended', file, until: new Date(validTo).toISOString() })
  return authority
}

async function read(file: string): Promise<KeyAndCertificate | null> {
  try {
    const found = await readKeyFile(file)
    if (found !== null && !found.certificate.ca) throw new Error('Its certificate is not one of an authority.')
    return found
  } catch (error) {
    throw new CertificateError({ code: 'damaged-authority', file, reason: sentence(error as Error) }, error)
  }
}

async function make(file: string, host: string | null, now: Date): Promise<KeyAndCertificate> {
  const key = newKey()
  const from = new Date(now.getTime() - DAY)
  const until = new Date(from)
  until.setUTCFullYear(from.getUTCFullYear() + YEARS)
  // Two authorities of one shop can be told apart in a device's list.
  const subject = `Gripbook shop authority ${host === null ? '' : `${host.slice(0, 24)} `}${now.toISOString().slice(0, 10)}`
  const written = writeCertificate({
    subject,
    issuer: subject,
    from,
    until,
    key,
    signedBy: key,
    extensions: authorityExtensions(nameConstraints(host)),
  })
  const made = { key, certificate: new X509Certificate(written) }
  return (await makeKeyFile(file, made)) ? made : (await read(file))!
}

function behind(now: Date): CertificateError {
  return new CertificateError({ code: 'clock-behind', says: now.toISOString() })
}

function sentence({ message }: Error): string {
  return message.endsWith('.') ? message : `${message}.`
}
