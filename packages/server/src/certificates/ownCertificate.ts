/** A certificate that the shop got elsewhere. */
import { createPrivateKey, X509Certificate } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { createSecureContext } from 'node:tls'
import { CertificateError, type CertificateFault } from './faults.ts'
import type { ServerCertificate } from './shopCertificates.ts'

/** Reads a certificate (PEM, with its chain behind it) and its key, read anew each time: another program may renew them. Throws `CertificateError`. */
export async function ownCertificate(file: string, keyFile: string, now: Date): Promise<ServerCertificate> {
  const [cert, key] = await Promise.all([textOf(file), textOf(keyFile)])
  const certificate = orFault(() => new X509Certificate(cert), { code: 'not-a-certificate', file })
  const privateKey = orFault(() => createPrivateKey(key), { code: 'not-a-key', file: keyFile })
  if (!certificate.checkPrivateKey(privateKey)) throw new CertificateError({ code: 'other-key', file, keyFile })
  const [from, until] = [new Date(certificate.validFrom), new Date(certificate.validTo)]
  if (until <= now) throw new CertificateError({ code: 'expired', file, until: until.toISOString() })
  if (from > now) throw new CertificateError({ code: 'not-yet', file, from: from.toISOString() })
  try {
    createSecureContext({ key, cert })
  } catch (error) {
    throw new CertificateError({ code: 'not-usable', file, reason: (error as Error).message }, error)
  }
  return { key, cert, validUntil: until }
}

async function textOf(file: string): Promise<string> {
  try {
    return await readFile(file, 'utf8')
  } catch (error) {
    throw new CertificateError({ code: 'not-readable', file, reason: (error as Error).message }, error)
  }
}

function orFault<T>(read: () => T, fault: CertificateFault): T {
  try {
    return read()
  } catch (error) {
    throw new CertificateError(fault, error)
  }
}
