/**
 * Certificates, written and signed: ECDSA on P-256 with SHA-256. Keys, hashes and signatures are made by node:crypto.
 * @source RFC 5280 (form and extensions), RFC 5480 and RFC 5758 3.2 (the algorithm), RFC 7093 2 (key identifiers)
 */
import { createHash, createPublicKey, generateKeyPairSync, type KeyObject, randomBytes, sign } from 'node:crypto'
import { isIP } from 'node:net'
import { bits, der, integer, oid, sequence, TAG, tagged, time, truth } from './der.ts'
import { addressBytes } from './permitted.ts'

const ECDSA_WITH_SHA256 = '1.2.840.10045.4.3.2'
const COMMON_NAME = '2.5.4.3'
const ORGANISATION = '2.5.4.10'
const SERVER_AUTH = '1.3.6.1.5.5.7.3.1'
const POINT_BYTES = 65

export type Writing = {
  subject: string
  issuer: string
  from: Date
  until: Date
  /** The key that the certificate is about, and the one that signs it: the same for the authority's own. */
  key: KeyObject
  signedBy: KeyObject
  extensions: readonly Buffer[]
}

export function newKey(): KeyObject {
  return generateKeyPairSync('ec', { namedCurve: 'P-256' }).privateKey
}

/** A certificate in DER. Its number is chance: 127 bits and never zero. */
export function writeCertificate({ subject, issuer, from, until, key, signedBy, extensions }: Writing): Buffer {
  const algorithm = sequence(oid(ECDSA_WITH_SHA256))
  const serial = randomBytes(16)
  serial[0] = (serial[0]! & 0x7f) | 0x40
  const told = sequence(
    tagged(0, true, integer(Buffer.from([2]))),
    integer(serial),
    algorithm,
    nameOf(issuer),
    sequence(time(from), time(until)),
    nameOf(subject),
    publicKey(key),
    tagged(3, true, sequence(...extensions, keyIdentifier(key), issuersKey(signedBy))),
  )
  return sequence(told, algorithm, bits(sign('sha256', told, signedBy)))
}

/** What makes a certificate one of an authority: it signs certificates, but no further authorities, and only those of servers. */
export function authorityExtensions(nameConstraints: Buffer): Buffer[] {
  const keyCertSign = bits(Buffer.from([0b0000_0100]), 2)
  return [
    extension('2.5.29.19', true, sequence(truth(), integer(Buffer.from([0])))),
    extension('2.5.29.15', true, keyCertSign),
    extension('2.5.29.37', false, sequence(oid(SERVER_AUTH))),
    extension('2.5.29.30', true, nameConstraints),
  ]
}

/** What makes a certificate one of a server. */
export function serverExtensions(names: readonly string[], addresses: readonly string[]): Buffer[] {
  const digitalSignature = bits(Buffer.from([0b1000_0000]), 7)
  return [
    extension('2.5.29.19', true, sequence()),
    extension('2.5.29.15', true, digitalSignature),
    extension('2.5.29.37', false, sequence(oid(SERVER_AUTH))),
    subjectNames(names, addresses),
  ]
}

/** The extension that says which names and addresses a certificate is for. */
export function subjectNames(names: readonly string[], addresses: readonly string[]): Buffer {
  const dns = names.map((name) => tagged(2, false, Buffer.from(name, 'latin1')))
  const ip = addresses.filter((address) => isIP(address) !== 0).map((each) => tagged(7, false, addressBytes(each)))
  return extension('2.5.29.17', false, sequence(...dns, ...ip))
}

export function certificatePem(content: Buffer): string {
  const lines = content.toString('base64').match(/.{1,64}/g)!
  return ['-----BEGIN CERTIFICATE-----', ...lines, '-----END CERTIFICATE-----', ''].join('\n')
}

function extension(id: string, critical: boolean, value: Buffer): Buffer {
  return sequence(oid(id), ...(critical ? [truth()] : []), der(TAG.octets, value))
}

function nameOf(commonName: string): Buffer {
  const part = (type: string, value: string) =>
    der(TAG.set, sequence(oid(type), der(TAG.utf8, Buffer.from(value, 'utf8'))))
  return sequence(part(ORGANISATION, 'Gripbook'), part(COMMON_NAME, commonName))
}

function publicKey(key: KeyObject): Buffer {
  return createPublicKey(key).export({ type: 'spki', format: 'der' })
}

function identifierOf(key: KeyObject): Buffer {
  const point = publicKey(key).subarray(-POINT_BYTES)
  return createHash('sha256').update(point).digest().subarray(0, 20)
}

function keyIdentifier(key: KeyObject): Buffer {
  return extension('2.5.29.14', false, der(TAG.octets, identifierOf(key)))
}

function issuersKey(key: KeyObject): Buffer {
  return extension('2.5.29.35', false, sequence(tagged(0, false, identifierOf(key))))
}
