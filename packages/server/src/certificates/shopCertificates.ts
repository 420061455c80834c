/** The certificates of a shop that has none of its own: an authority that its devices trust, and what it signs for the server. */
import { X509Certificate } from 'node:crypto'
import { isIP } from 'node:net'
import { hostname } from 'node:os'
import { join } from 'node:path'
import { domainToASCII } from 'node:url'
import { DAY, shopAuthority } from './authority.ts'
import { certificatePem, newKey, serverExtensions, subjectNames, writeCertificate } from './certificate.ts'
import { CertificateError } from './faults.ts'
import { certificateFolder, type KeyAndCertificate, readKeyFile, replaceKeyFile } from './keyFile.ts'
import { addressBytes, permitsAddress, permitsName } from './permitted.ts'

/** `fingerprint`: SHA-256 of `der`, as pairs of hex digits with colons between them. */
export type Authority = { pem: string; der: Buffer; fingerprint: string }

/** `key`, `cert`: PEM; `cert` with the chain behind it. */
export type ServerCertificate = { key: string; cert: string; validUntil: Date }

export type ForShop = {
  /** The data folder; certificates are kept in a folder of their own within it. */
  folder: string
  /** By which devices reach the server, besides localhost. One that the authority cannot stand for is a fault, but for this machine's own. */
  names: readonly string[]
  /** Where devices reach it, besides the loopback address. One outside of a shop's own network is left out: the authority cannot stand for it. */
  addresses: readonly string[]
  now: Date
  /** The name of this machine. */
  host?: string
}

/** Browsers take no certificate of a server that is good for more than 398 days. */
const LIFE = 397 * DAY
const RENEWED_BEFORE = 30 * DAY
/** A device whose clock is a little behind takes a new certificate at once. */
const BEGINS_BEFORE = DAY
const NAME = /^(?=.{1,253}$)[a-z0-9_]([a-z0-9_-]{0,61}[a-z0-9_])?(\.[a-z0-9_]([a-z0-9_-]{0,61}[a-z0-9_])?)*$/

/**
 * Makes what is missing, and a new certificate of the server when names or addresses have changed or less than 30 days are left. Throws `CertificateError`:
 * folder-not-writable, damaged-authority, authority-ended, clock-behind, name-outside.
 */
export async function shopCertificates({
  folder: dataFolder,
  names,
  addresses,
  now,
  host = hostname(),
}: ForShop): Promise<ServerCertificate & { authority: Authority }> {
  const folder = await certificateFolder(dataFolder)
  const authority = await shopAuthority(folder, readName(host), now)
  const { raw } = authority.certificate
  const standsFor = { names: namesFor(raw, names, host), addresses: addressesFor(raw, [...addresses, ...names]) }
  const server = await serverCertificate(folder, authority, standsFor, now)
  const pem = certificatePem(raw)
  return {
    key: String(server.key.export({ type: 'pkcs8', format: 'pem' })),
    cert: certificatePem(server.certificate.raw) + pem,
    validUntil: new Date(server.certificate.validTo),
    authority: { pem, der: raw, fingerprint: authority.certificate.fingerprint256 },
  }
}

type StandsFor = { names: readonly string[]; addresses: readonly string[] }

async function serverCertificate(
  folder: string,
  authority: KeyAndCertificate,
  standsFor: StandsFor,
  now: Date,
): Promise<KeyAndCertificate> {
  const file = join(folder, 'server.pem')
  // Whatever is wrong with it, another one is as good: devices trust the authority.
  const kept = await readKeyFile(file).catch(() => null)
  const until = lastMoment(authority, now)
  if (kept !== null && isGood(kept.certificate, authority, standsFor, until, now)) return kept
  const key = newKey()
  const written = writeCertificate({
    subject: 'Gripbook shop server',
    issuer: commonName(authority.certificate.subject),
    from: new Date(now.getTime() - BEGINS_BEFORE),
    until,
    key,
    signedBy: authority.key,
    extensions: serverExtensions(standsFor.names, standsFor.addresses),
  })
  const made = { key, certificate: new X509Certificate(written) }
  await replaceKeyFile(file, made)
  return made
}

/** When a certificate that is made now ends: never after the authority. */
function lastMoment(authority: KeyAndCertificate, now: Date): Date {
  return new Date(Math.min(now.getTime() - BEGINS_BEFORE + LIFE, Date.parse(authority.certificate.validTo)))
}

function isGood(
  certificate: X509Certificate,
  authority: KeyAndCertificate,
  { names, addresses }: StandsFor,
  until: Date,
  now: Date,
): boolean {
  const ends = Date.parse(certificate.validTo)
  const lasts = ends - now.getTime() >= RENEWED_BEFORE || (ends > now.getTime() && ends >= until.getTime())
  return (
    lasts &&
    Date.parse(certificate.validFrom) <= now.getTime() &&
    certificate.raw.includes(subjectNames(names, addresses)) &&
    certificate.verify(authority.certificate.publicKey)
  )
}

/** In one order, so that the same names make the same certificate. This machine's own name may have changed since the authority was made: it is left out. */
function namesFor(authority: Buffer, given: readonly string[], host: string): string[] {
  const own = [host, `${host}.local`].map((name) => name.toLowerCase())
  const names = given.flatMap((name) => {
    const read = readName(name)
    if (read !== null && permitsName(authority, read)) return [read]
    if (own.includes(name.toLowerCase()) || (isIP(name) !== 0 && permitsAddress(authority, name))) return []
    throw new CertificateError({ code: 'name-outside', name })
  })
  return [...new Set(['localhost', ...names])].sort()
}

function addressesFor(authority: Buffer, given: readonly string[]): string[] {
  const known = new Map(
    ['127.0.0.1', '::1', ...given]
      .filter((address) => isIP(address) !== 0 && !address.includes('%') && permitsAddress(authority, address))
      .map((address) => [addressBytes(address).toString('hex'), address]),
  )
  return [...known].sort(([one], [other]) => (one < other ? -1 : 1)).map(([, address]) => address)
}

/** A name as certificates hold it: lower case, in the letters of the DNS; null for what can be none. */
function readName(name: string): string | null {
  const ascii = domainToASCII(name.replace(/\.$/, ''))
  return NAME.test(ascii) && isIP(ascii) === 0 ? ascii : null
}

function commonName(subject: string): string {
  return /^CN=(.*)$/m.exec(subject)![1]!
}
