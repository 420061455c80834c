import { FaultError, type Words } from '../faultError.ts'

/** What can keep certificates from being made or used, as data with words: a person can put each of these right. Times are ISO 8601 in UTC. */
export type CertificateFault =
  | { code: 'folder-not-writable'; folder: string; reason: string }
  /** The authority's file is there and cannot be used: another authority in its place would be one that no device trusts. */
  | { code: 'damaged-authority'; file: string; reason: string }
  | { code: 'authority-ended'; file: string; until: string }
  /** The clock stands before Gripbook, or before the authority, was made. */
  | { code: 'clock-behind'; says: string }
  /** The authority can stand for names and addresses of a shop's own network alone. */
  | { code: 'name-outside'; name: string }
  | { code: 'not-readable'; file: string; reason: string }
  | { code: 'not-a-certificate'; file: string }
  | { code: 'not-a-key'; file: string }
  | { code: 'other-key'; file: string; keyFile: string }
  | { code: 'expired'; file: string; until: string }
  | { code: 'not-yet'; file: string; from: string }
  /** Certificate and key fit, and TLS takes them for too weak or not whole. */
  | { code: 'not-usable'; file: string; reason: string }

const ANEW = 'to begin with a new authority, which every device has to trust anew'

const WORDS: Words<CertificateFault> = {
  'folder-not-writable': ({ folder, reason }) => `Certificates cannot be kept in ${folder}: ${reason}`,
  'damaged-authority': ({ file, reason }) =>
    `The shop's certificate authority in ${file} cannot be used: ${reason} Nothing was changed in it. Put the file back from a backup, or move it away ${ANEW}.`,
  'authority-ended': ({ file, until }) =>
    `The shop's certificate authority in ${file} was good until ${day(until)}. Move the file away ${ANEW}.`,
  'clock-behind': ({ says }) =>
    `The clock of this machine says ${says}, which cannot be: certificates would not be valid. Set the clock and start again.`,
  'name-outside': ({ name }) =>
    `The shop's own authority cannot make a certificate for "${name}": it stands only for this machine's own name and names that end in .local or .home.arpa, so that its key is of no use elsewhere. Choose such a name, or give a certificate of your own.`,
  'not-readable': ({ file, reason }) => `${file} cannot be read: ${reason}`,
  'not-a-certificate': ({ file }) => `${file} holds no certificate in PEM form (-----BEGIN CERTIFICATE-----).`,
  'not-a-key': ({ file }) => `${file} holds no private key in PEM form that can be read without a password.`,
  'other-key': ({ file, keyFile }) => `The key in ${keyFile} does not belong to the first certificate in ${file}.`,
  expired: ({ file, until }) => `The certificate in ${file} was good until ${day(until)}. Get a new one.`,
  'not-yet': ({ file, from }) =>
    `The certificate in ${file} is good only from ${day(from)} on. Is the clock of this machine right?`,
  'not-usable': ({ file, reason }) => `The certificate in ${file} cannot be used: ${reason}`,
}

/** Thrown where there is no certificate to serve with; `fault` says why as data, the message in words. */
export class CertificateError extends FaultError<CertificateFault> {
  constructor(fault: CertificateFault, cause?: unknown) {
    super('CertificateError', WORDS, fault, cause)
  }
}

function day(iso: string): string {
  return iso.slice(0, 10)
}
