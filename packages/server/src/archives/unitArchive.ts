/** One unit as a file of open formats, out of this record and into it. */
import { createHash } from 'node:crypto'
import {
  archiveFaultText,
  checkArchive,
  ENTRIES_FILE,
  type Event,
  inOrder,
  MANIFEST_FILE,
  type Manifest,
  type PackedPhotograph,
  packUnit,
  photographName,
  photographsOf,
  SIGNATURE_FILE,
  UNIT_FILE,
} from '@gripbook/record'
import { Refused } from '../app/faults.ts'
import type { Shop } from '../app/shop.ts'
import { shopKey, signedBy, signerOf } from './signature.ts'
import { BadZip, openZip, type Zip } from './zipIn.ts'
import type { FileIn } from './zipOut.ts'

type Keeping = Pick<Shop, 'db' | 'store' | 'photographs'>

export type TakenIn = {
  unit: string
  added: number
  known: number
  photographs: { added: number; known: number }
  /** Photographs that entries speak of and that whoever made the archive did not have. */
  absent: number
  /** Whose signature it carries. */
  signed: 'by this shop' | 'by another shop' | 'not at all'
}

const LIMITS = { files: 100_010, bytes: 4_000_000_000 }
const MOST_TEXT = 400_000_000
export const MOST_PHOTOGRAPH = 100_000_000
const BATCH = 1_000
const FAULTS_TOLD = 20

export const sha256 = (text: string | Buffer): string => createHash('sha256').update(text).digest('hex')

/** The files of a unit's archive in their order; null for a unit that is not known. `at`: now, ISO 8601. */
export async function unitFiles(
  { db, store, photographs }: Keeping,
  unit: string,
  at: string,
): Promise<AsyncIterable<FileIn> | null> {
  const events = await store.ofUnit(unit)
  if (events.length === 0) return null
  const kept: PackedPhotograph[] = []
  for (const name of photographsOf(events)) {
    const found = await photographs.find(name)
    if (found !== null) kept.push(found)
  }
  const texts = packUnit({ unit, events, photographs: kept, at }, sha256)
  const manifest = JSON.parse(texts.find(({ name }) => name === MANIFEST_FILE)!.text) as Manifest
  const signature = await signedBy(db, manifest.hash)
  return (async function* () {
    for (const { name, text } of texts) yield { name, bytes: Buffer.from(text) }
    yield { name: SIGNATURE_FILE, bytes: Buffer.from(signature) }
    for (const { photograph } of kept) {
      const bytes = await photographs.read(photograph, 'full')
      if (bytes !== null) yield { name: photographName(photograph), bytes }
    }
  })()
}

export type ReadArchive = { manifest: Manifest; events: Event[]; key: string | null }

/** Reads and proves an archive that lies on the disk; throws `BadArchive` with every fault in words. */
export async function readArchive(zip: Zip): Promise<ReadArchive> {
  const texts = new Map<string, string>()
  const others = new Map<string, { sha256: string; bytes: number }>()
  for (const name of zip.names) {
    if ([MANIFEST_FILE, ENTRIES_FILE, UNIT_FILE, SIGNATURE_FILE].includes(name))
      texts.set(name, (await zip.read(name, MOST_TEXT)).toString())
    else others.set(name, await zip.hashOf(name))
  }
  const checked = checkArchive({ texts, others }, sha256)
  if (!checked.ok) throw new BadArchive(checked.faults.map(archiveFaultText))
  const signer = signerOf(texts.get(SIGNATURE_FILE), checked.manifest.hash)
  if (signer === 'wrong')
    throw new BadArchive(['The signature does not fit: the archive was changed, or signed by nobody.'])
  return { ...checked, key: signer === 'none' ? null : signer.key }
}

export class BadArchive extends Error {
  readonly faults: readonly string[]
  constructor(faults: readonly string[]) {
    super(faults.join(' '))
    this.name = 'BadArchive'
    this.faults = faults
  }
}

/** Takes an archive from the disk into this record: everything is proven before anything is written; taking it in again changes nothing. Throws `BadArchive`. */
export async function takeInArchive(keeping: Keeping, path: string): Promise<TakenIn> {
  const zip = await openZip(path, LIMITS).catch(asBadArchive)
  try {
    const { manifest, events, key } = await readArchive(zip)
    await mustNotContradict(keeping, manifest.unit, events)
    const photographs = { added: 0, known: 0 }
    for (const kept of manifest.photographs)
      photographs[
        await keeping.photographs.takeIn(kept, await zip.read(photographName(kept.photograph), MOST_PHOTOGRAPH))
      ]++
    const { added, known } = await appendAll(keeping, events)
    const own = await shopKey(keeping.db)
    const signed = key === null ? 'not at all' : key === own ? 'by this shop' : 'by another shop'
    return { unit: manifest.unit, added, known, photographs, absent: manifest.absent.length, signed }
  } catch (error) {
    return asBadArchive(error)
  } finally {
    zip.close()
  }
}

/** Entries in the order of the record, so that each device's come in order of number; a refusal is a contradiction that came up meanwhile. */
export async function appendAll(
  { store }: Pick<Keeping, 'store'>,
  events: readonly Event[],
): Promise<{ added: number; known: number }> {
  const sum = { added: 0, known: 0 }
  const sorted = events.toSorted(inOrder)
  for (let at = 0; at < sorted.length; at += BATCH) {
    const answer = await store.append(sorted.slice(at, at + BATCH))
    if (!answer.ok)
      throw new BadArchive(answer.refusals.map(({ id, code }) => `The entry ${id} contradicts the record (${code}).`))
    sum.added += answer.added
    sum.known += answer.known
  }
  return sum
}

/** What is kept already of the unit must be the same, entry by entry: a device's chain cannot have two histories. */
async function mustNotContradict({ store }: Keeping, unit: string, events: readonly Event[]): Promise<void> {
  const kept = await store.ofUnit(unit)
  const byNumber = new Map(kept.map((event) => [`${event.device} ${event.seq}`, event]))
  const faults = events.flatMap((event) => {
    const here = byNumber.get(`${event.device} ${event.seq}`)
    return here === undefined || here.hash === event.hash
      ? []
      : [`Entry ${event.seq} of device ${event.device} (${event.id}) is another one here (${here.id}).`]
  })
  if (faults.length > 0) throw new BadArchive(faults.slice(0, FAULTS_TOLD))
}

/** A zip that cannot be read, and a photograph that is refused, are faults of the archive. */
function asBadArchive(error: unknown): never {
  if (error instanceof BadZip) throw new BadArchive([`The archive is damaged or none: ${error.message}.`])
  if (error instanceof Refused) throw new BadArchive([`${error.message} ${JSON.stringify(error.details)}`])
  throw error
}
