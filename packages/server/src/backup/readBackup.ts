/** Proves a backup whole before anything of it is used: every file there, nothing more, each as the manifest says, entries readable, in whole chains. */
import { createHash } from 'node:crypto'
import { EVENT_LIMITS, type Event, readEvent } from '@gripbook/record'
import { type Signer, signerOf } from '../archives/signature.ts'
import { BadZip, type Zip } from '../archives/zipIn.ts'
import { sha256 } from '../sha256.ts'
import { entryIn } from './entryIn.ts'
import { entryFault, type Fault, Faults } from './fault.ts'
import {
  BACKUP_FILES,
  type BackupManifest,
  type BackupPeople,
  backupHash,
  backupPhotograph,
  backupSchema,
  peopleSchema,
} from './manifest.ts'
import { unitFaults } from './proveUnits.ts'

export class BadBackup extends Faults {
  constructor(faults: readonly Fault[]) {
    super('BadBackup', '', faults)
  }
}

export type ReadBackup = {
  manifest: BackupManifest
  people: BackupPeople
  signer: Exclude<Signer, 'wrong'>
  /** It was made by this same version of Gripbook, and every unit folds to what it was; by another version only its entries are compared. */
  statesCompared: boolean
}

const MOST_MANIFEST = 400_000_000
const MOST_SIGNATURE = 10_000
const LINES_TOLD = 20

const words = (text: string): Fault => ({ words: text })

/** `version` is this Gripbook's. Throws `BadBackup` with every fault in words, `BadZip` where the file is no zip that can be read. */
export async function readBackup(zip: Zip, version: string): Promise<ReadBackup> {
  const missing = Object.values(BACKUP_FILES).filter(
    (name) => name !== BACKUP_FILES.signature && !zip.names.includes(name),
  )
  if (missing.length > 0) throw new BadBackup(missing.map((name) => words(`${name} is missing.`)))
  const manifest = manifestIn((await zip.read(BACKUP_FILES.manifest, MOST_MANIFEST)).toString())
  const faults: Fault[] = []
  if (backupHash(manifest, sha256) !== manifest.hash) faults.push(words('manifest.json was changed or damaged.'))
  const signer = await signerIn(zip, manifest)
  if (signer === 'wrong') faults.push(words('The signature does not fit: the backup was changed, or signed by nobody.'))
  faults.push(...(await photographFaults(zip, manifest)))
  const { people, faults: amongPeople } = await peopleIn(zip, manifest)
  faults.push(...amongPeople, ...(await lineFaults(zip, manifest)))
  const statesCompared = manifest.version === version
  faults.push(...(await unitFaults(manifest, (units) => entriesIn(zip, units), statesCompared)))
  if (faults.length > 0 || people === null || signer === 'wrong') throw new BadBackup(faults)
  return { manifest, people, signer, statesCompared }
}

/** Whether a zip says of itself that it is a backup: what is wrong with it is told in a backup's words then. */
export async function isBackup(zip: Zip): Promise<boolean> {
  if (!zip.names.includes(BACKUP_FILES.manifest)) return zip.names.includes(BACKUP_FILES.people)
  const manifest = parsed((await zip.read(BACKUP_FILES.manifest, MOST_MANIFEST)).toString())
  const format = (manifest as { gripbook?: unknown } | null | undefined)?.gripbook
  return typeof format === 'string' ? format.startsWith('backup/') : zip.names.includes(BACKUP_FILES.people)
}

/** Its entries, batch after batch, in the order in which the shop kept them. */
export async function* batchesOf(zip: Zip, size: number): AsyncGenerator<Event[]> {
  let batch: Event[] = []
  for await (const line of linesOf(zip)) {
    batch.push(JSON.parse(line) as Event)
    if (batch.length === size) {
      yield batch
      batch = []
    }
  }
  if (batch.length > 0) yield batch
}

function manifestIn(text: string): BackupManifest {
  const value = parsed(text)
  const format = (value as { gripbook?: unknown } | null | undefined)?.gripbook
  if (typeof format === 'string' && format !== 'backup/1')
    throw new BadBackup([words(`The file is of the format ${format.slice(0, 40)}; this Gripbook reads backup/1.`)])
  const read = backupSchema.safeParse(value)
  if (read.success) return read.data
  const at = read.error.issues[0]?.path.join('.') || 'its beginning'
  throw new BadBackup([words(`manifest.json cannot be read (at ${at}).`)])
}

async function signerIn(zip: Zip, manifest: BackupManifest): Promise<Signer> {
  if (!zip.names.includes(BACKUP_FILES.signature)) return 'none'
  return signerOf((await zip.read(BACKUP_FILES.signature, MOST_SIGNATURE)).toString(), manifest.hash)
}

/** Of every file beside those that are text: whether it is there, and what it was; and what is there beside them. */
async function photographFaults(zip: Zip, manifest: BackupManifest): Promise<Fault[]> {
  const faults: Fault[] = []
  const named = new Map(manifest.photographs.map((kept) => [backupPhotograph(kept.photograph), kept]))
  const known = new Set<string>([...Object.values(BACKUP_FILES), ...named.keys()])
  const here = new Set(zip.names)
  for (const name of here) if (!known.has(name)) faults.push(words(`${name} is not named in the manifest.`))
  for (const [name, { photograph, sha256: hash, bytes }] of named) {
    const found = here.has(name) ? await zip.hashOf(name) : null
    if (found === null) faults.push({ words: `${name} is missing.`, photograph })
    else if (found.sha256 !== hash || found.bytes !== bytes)
      faults.push({ words: `${name} was changed or damaged.`, photograph })
  }
  return faults
}

async function peopleIn(
  zip: Zip,
  { files }: BackupManifest,
): Promise<{ people: BackupPeople | null; faults: Fault[] }> {
  const text = (await zip.read(BACKUP_FILES.people, MOST_MANIFEST)).toString()
  if (sha256(text) !== files[BACKUP_FILES.people])
    return { people: null, faults: [words(`${BACKUP_FILES.people} was changed or damaged.`)] }
  const read = peopleSchema.safeParse(parsed(text))
  return read.success
    ? { people: read.data, faults: [] }
    : { people: null, faults: [words(`${BACKUP_FILES.people} cannot be read.`)] }
}

/** Whether each line is an entry of a unit that the manifest names, and all of them together are the file that was backed up. */
async function lineFaults(zip: Zip, manifest: BackupManifest): Promise<Fault[]> {
  const hash = createHash('sha256')
  const faults: Fault[] = []
  let count = 0
  for await (const line of linesOf(zip)) {
    count++
    hash.update(`${line}\n`)
    const read = readEvent(parsed(line))
    if (faults.length >= LINES_TOLD) continue
    const named = `Line ${count} of ${BACKUP_FILES.entries}`
    if (!read.ok) faults.push(words(`${named} is no entry${read.path === '' ? '' : ` (at ${read.path})`}.`))
    else if (read.text.whole !== line)
      faults.push(
        entryFault(`${named} (entry ${read.value.id}) is not written letter by letter as it was made.`, read.value),
      )
    else if (!Object.hasOwn(manifest.units, read.value.unit)) {
      const { id, unit } = read.value
      faults.push(
        entryFault(`${named} (entry ${id}) is of the unit ${unit}, which the manifest does not name.`, read.value),
      )
    }
  }
  if (hash.digest('hex') !== manifest.files[BACKUP_FILES.entries])
    faults.push(words(`${BACKUP_FILES.entries} was changed or damaged.`))
  if (count !== manifest.entries) faults.push(words(`${count} entries are here, ${manifest.entries} were backed up.`))
  return faults
}

/** Those lines that are entries of one of these units. */
async function* entriesIn(zip: Zip, units: ReadonlySet<string>): AsyncGenerator<Event> {
  for await (const line of linesOf(zip)) {
    const unit = unitIn(line)
    if (unit !== null && !units.has(unit)) continue
    const event = entryIn(line)
    if (event !== null && units.has(event.unit)) yield event
  }
}

const UNIT = '"unit":"'
const UUID_LENGTH = 36

/**
 * The unit of an entry without reading the entry: after it, canonical JSON has only `version` and `who`, and no text within a text looks like this. Of a line that
 * is written otherwise, which is a fault by itself, it may be wrong, or null.
 */
function unitIn(line: string): string | null {
  const at = line.lastIndexOf(UNIT)
  return at < 0 ? null : line.slice(at + UNIT.length, at + UNIT.length + UUID_LENGTH)
}

async function* linesOf(zip: Zip): AsyncGenerator<string> {
  const decoder = new TextDecoder()
  let rest = ''
  for await (const piece of zip.pieces(BACKUP_FILES.entries)) {
    const lines = (rest + decoder.decode(piece, { stream: true })).split('\n')
    rest = lines.pop()!
    // The texts of an entry are not longer; what goes on without an end is not waited for.
    if (rest.length > EVENT_LIMITS.text)
      throw new BadZip(`a line of ${BACKUP_FILES.entries} is longer than an entry can be`)
    yield* lines
  }
  rest += decoder.decode()
  if (rest !== '') yield rest
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return undefined
  }
}
