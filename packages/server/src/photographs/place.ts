/** Where the bytes of photographs lie: a folder, or an S3-compatible store; one suite (testing/placeSuite.ts) holds both to the same. */
import { must } from '@gripbook/engine'
import { FaultError, type Words } from '../faultError.ts'

export type Place = {
  /** For people: the folder, or the store without its keys. */
  where: string
  /** Answers when the bytes are durable; replaces what was there by this name, whole or not at all. */
  put(name: string, bytes: Uint8Array): Promise<void>
  get(name: string): Promise<Buffer | null>
  has(name: string): Promise<boolean>
  /** Harmless when there is nothing by this name. */
  remove(name: string): Promise<void>
  /** Names of all that is kept, in no order. */
  list(): AsyncIterable<string>
}

/** What may be a name: nothing that a folder or an address could read as a way elsewhere. */
const NAME = /^[0-9a-z][0-9a-z-]{2,99}(\.[0-9a-z]{1,9})?$/

export function isName(name: string): boolean {
  return NAME.test(name)
}

export function mustBeName(name: string): void {
  must(isName(name), 'a name in the place of photographs', { name })
}

/** What can keep the place from serving, as data with words: a person can put each of these right. */
export type PlaceFault =
  | { code: 'bad-address'; reason: string }
  | { code: 'no-keys'; missing: string }
  | { code: 'folder-unusable'; folder: string; reason: string }
  | { code: 'no-answer'; where: string; reason: string }
  /** `reason` as the store calls it. */
  | { code: 'store-refuses'; where: string; status: number; reason: string }

const WORDS: Words<PlaceFault> = {
  'bad-address': ({ reason }) =>
    `GRIPBOOK_PHOTOGRAPHS_URL cannot be read (${reason}). It looks like s3+https://host/bucket/folder; without it photographs lie in the data folder.`,
  'no-keys': ({ missing }) => `GRIPBOOK_PHOTOGRAPHS_URL names a store, and ${missing} is not set.`,
  'folder-unusable': ({ folder, reason }) => `The folder of the photographs ${folder} cannot be used: ${reason}.`,
  'no-answer': ({ where, reason }) => `The store of the photographs ${where} does not answer: ${reason}.`,
  'store-refuses': ({ where, status, reason }) =>
    `The store of the photographs ${where} refuses: ${status} ${reason}. Check bucket, region, keys, what the keys may do, and the clock of this machine.`,
}

export class PlaceError extends FaultError<PlaceFault> {
  constructor(fault: PlaceFault, cause?: unknown) {
    super('PlaceError', WORDS, fault, cause)
  }
}
