/** One unit as a file of open formats, out of this record and into it. */
import { must } from '@gripbook/engine'
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
import { sql } from 'kysely'
import { Refused } from '../app/faults.ts'
import type { Shop } from '../app/shop.ts'
import { mustNotBeRestoring } from '../backup/unfinished.ts'
import { wholeFile } from '../backup/wholeFile.ts'
import { oneAtATime, proven } from '../photographs/pictures.ts'
import { sha256 } from '../sha256.ts'
import { shopKey, signedBy, signerOf } from './signature.ts'
import { BadZip, openZip, type Zip } from './zipIn.ts'
import { type FileIn, zipOf } from './zipOut.ts'

type Keeping = Pick<Shop, 'db' | 'store' | 'photographs'>

export type TakenIn = {
  unit: string
  added: number
  known: number
  photographs: { added: number; known: number }
  /** Photographs that entries speak of and that whoever made the archive did not have. */
  absent: number
  /** Whose signature it carries, and the public key of whoever signed it. */
  signed: 'by this shop' | 'by another shop' | 'not at all'
  key: string | null
}

/** `bytes`: that may come out of an archive while it is read, which is up to three times: its hashes, its pictures, and to keep it. */
export const ARCHIVE_LIMITS = { files: 100_010, bytes: 6_000_000_000 }
/** An archive on a disk that the owner works at may be larger than one that comes over the network. */
export const LOCAL_ARCHIVE_LIMITS = { files: 100_010, bytes: 1_000_000_000_000 }
/** A hundred thousand entries of 2 kB; a hundred thousand photographs in a manifest. */
const MOST_OF: ReadonlyMap<string, number> = new Map([
  [ENTRIES_FILE, 200_000_000],
  [UNIT_FILE, 50_000_000],
  [MANIFEST_FILE, 50_000_000],
  [SIGNATURE_FILE, 10_000],
])
export const MOST_PHOTOGRAPH = 100_000_000
const BATCH = 1_000
const FAULTS_TOLD = 20

/** The files of a unit's archive in their order; null for a unit that is not known. `at`: now, ISO 8601. */
export async function unitFiles(
  { db, store, photographs }: Keeping,
  unit: string,
  at: string,
): Promise<AsyncIterable<FileIn> | null> {
  const events = await store.ofUnit(unit)
  if (events.length === 0) return null
  await mustNotBeRestoring(db)
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
      must(bytes !== null, 'a photograph that is kept is never taken away', photograph)
      yield { name: photographName(photograph), bytes }
    }
  })()
}

/** Writes a unit's archive as a file, whole or not at all, read again before it has its name; the key that signed it, or null for a unit that is not known. */
export async function writeArchive(keeping: Keeping, unit: string, file: string, at: string): Promise<string | null> {
  const files = await unitFiles(keeping, unit, at)
  if (files === null) return null
  await wholeFile(file, zipOf(files), async (path) => {
    const zip = await openZip(path, LOCAL_ARCHIVE_LIMITS)
    await readArchive(zip).finally(zip.close)
  })
  return shopKey(keeping.db)
}

export type ReadArchive = { manifest: Manifest; events: Event[]; key: string | null }

/** Reads and proves an archive that lies on the disk; throws `BadArchive` with every fault in words. */
export async function readArchive(zip: Zip): Promise<ReadArchive> {
  const texts = new Map<string, string>()
  const others = new Map<string, { sha256: string; bytes: number }>()
  for (const name of zip.names) {
    const most = MOST_OF.get(name)
    if (most !== undefined) texts.set(name, (await zip.read(name, most)).toString())
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
export async function takeInArchive(keeping: Keeping, path: string, limits = ARCHIVE_LIMITS): Promise<TakenIn> {
  await mustNotBeRestoring(keeping.db)
  const zip = await openZip(path, limits).catch(asBadArchive)
  try {
    const { manifest, events, key } = await readArchive(zip)
    await mustNotContradict(keeping, manifest.unit, events)
    await mustBePictures(keeping, zip, manifest)
    const photographs = { added: 0, known: 0 }
    for (const kept of manifest.photographs)
      photographs[
        await keeping.photographs.takeIn(kept, await zip.read(photographName(kept.photograph), MOST_PHOTOGRAPH))
      ]++
    const { added, known } = await appendAll(keeping, events)
    const own = await shopKey(keeping.db)
    const signed = key === null ? 'not at all' : key === own ? 'by this shop' : 'by another shop'
    return { unit: manifest.unit, added, known, photographs, absent: manifest.absent.length, signed, key }
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

/** What is kept already must be the same, entry by entry: a device's chain cannot have two histories, an id cannot stand for two entries. */
async function mustNotContradict({ db, store }: Keeping, unit: string, events: readonly Event[]): Promise<void> {
  const kept = await store.ofUnit(unit)
  const byNumber = new Map(kept.map((event) => [`${event.device} ${event.seq}`, event]))
  const faults = events.flatMap((event) => {
    const here = byNumber.get(`${event.device} ${event.seq}`)
    return here === undefined || here.hash === event.hash
      ? []
      : [`Entry ${event.seq} of device ${event.device} (${event.id}) is another one here (${here.id}).`]
  })
  const hashes = new Map(events.map(({ id, hash }) => [id, hash]))
  for (let at = 0; at < events.length; at += BATCH) {
    const ids = events.slice(at, at + BATCH).map(({ id }) => id)
    const { rows } = await sql<{ id: string; unit: string; device: string; seq: number; hash: string }>`
      select id, unit, device, seq, hash from record_entry where id = any(${ids}::uuid[])`.execute(db)
    for (const here of rows)
      if (here.hash !== hashes.get(here.id))
        faults.push(
          `The entry ${here.id} is another one here: entry ${here.seq} of device ${here.device} about unit ${here.unit}.`,
        )
  }
  if (faults.length > 0) throw new BadArchive(faults.slice(0, FAULTS_TOLD))
}

/** Photographs that are new here are pictures before the first of them is kept; whoever made the archive can have put anything there, with the right hash. */
async function mustBePictures({ photographs }: Keeping, zip: Zip, manifest: Manifest): Promise<void> {
  for (const { photograph, width, height } of manifest.photographs) {
    if ((await photographs.find(photograph)) !== null) continue
    const bytes = await zip.read(photographName(photograph), MOST_PHOTOGRAPH)
    const picture = await oneAtATime(() => proven(bytes)).catch((error: unknown) => {
      if (error instanceof Refused) return null
      throw error
    })
    if (picture?.width !== width || picture.height !== height)
      throw new BadArchive([`${photographName(photograph)} is not the clean picture that the manifest says.`])
  }
}

/** A zip that cannot be read, and a photograph that is refused, are faults of the archive. */
function asBadArchive(error: unknown): never {
  if (error instanceof BadZip) throw new BadArchive([`The archive is damaged or none: ${error.message}.`])
  if (error instanceof Refused) throw new BadArchive([`${error.message} ${JSON.stringify(error.details)}`])
  throw error
}
