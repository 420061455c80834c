/** Proves a backup whole before anything of it is used: every file there, nothing more, each as the manifest says, entries readable and whole. */
import { createHash } from 'node:crypto'
import { type Event, readEvent } from '@gripbook/record'
import { type Signer, signerOf } from '../archives/signature.ts'
import { sha256 } from '../archives/unitArchive.ts'
import type { Zip } from '../archives/zipIn.ts'
import {
  BACKUP_FILES,
  type BackupManifest,
  type BackupPeople,
  backupHash,
  backupPhotograph,
  backupSchema,
  peopleSchema,
} from './manifest.ts'

export class BadBackup extends Error {
  readonly faults: readonly string[]
  constructor(faults: readonly string[]) {
    super(faults.join('\n'))
    this.name = 'BadBackup'
    this.faults = faults
  }
}

export type ReadBackup = { manifest: BackupManifest; people: BackupPeople; signer: Exclude<Signer, 'wrong'> }

const MOST_MANIFEST = 400_000_000

/** Throws `BadBackup` with every fault in words, `BadZip` where the file is no zip that can be read. */
export async function readBackup(zip: Zip): Promise<ReadBackup> {
  const missing = Object.values(BACKUP_FILES).filter(
    (name) => name !== BACKUP_FILES.signature && !zip.names.includes(name),
  )
  if (missing.length > 0) throw new BadBackup(missing.map((name) => `${name} is missing.`))
  const manifest = manifestIn((await zip.read(BACKUP_FILES.manifest, MOST_MANIFEST)).toString())
  const faults: string[] = []
  if (backupHash(manifest, sha256) !== manifest.hash) faults.push('manifest.json was changed or damaged.')
  const signature = zip.names.includes(BACKUP_FILES.signature)
    ? (await zip.read(BACKUP_FILES.signature, 10_000)).toString()
    : undefined
  const signer = signerOf(signature, manifest.hash)
  if (signer === 'wrong') faults.push('The signature does not fit: the backup was changed, or signed by nobody.')
  const photographs = new Map(manifest.photographs.map((kept) => [backupPhotograph(kept.photograph), kept]))
  const known = new Set<string>([...Object.values(BACKUP_FILES), ...photographs.keys()])
  for (const name of zip.names) if (!known.has(name)) faults.push(`${name} is not named in the manifest.`)
  for (const [name, { sha256: hash, bytes }] of photographs) {
    if (!zip.names.includes(name)) faults.push(`${name} is missing.`)
    else {
      const found = await zip.hashOf(name)
      if (found.sha256 !== hash || found.bytes !== bytes) faults.push(`${name} was changed or damaged.`)
    }
  }
  const peopleText = (await zip.read(BACKUP_FILES.people, MOST_MANIFEST)).toString()
  if (sha256(peopleText) !== manifest.files[BACKUP_FILES.people])
    faults.push(`${BACKUP_FILES.people} was changed or damaged.`)
  faults.push(...(await entryFaults(zip, manifest)))
  const people = peopleSchema.safeParse(parsed(peopleText))
  if (!people.success && faults.length === 0) faults.push(`${BACKUP_FILES.people} cannot be read.`)
  if (faults.length > 0 || !people.success || signer === 'wrong') throw new BadBackup(faults)
  return { manifest, people: people.data, signer }
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
  const format = (value as { gripbook?: unknown } | undefined)?.gripbook
  if (typeof format === 'string' && format !== 'backup/1')
    throw new BadBackup([`The file is of the format ${format.slice(0, 40)}; this Gripbook reads backup/1.`])
  const read = backupSchema.safeParse(value)
  if (!read.success)
    throw new BadBackup([
      `manifest.json cannot be read (at ${read.error.issues[0]?.path.join('.') || 'its beginning'}).`,
    ])
  return read.data
}

async function entryFaults(zip: Zip, manifest: BackupManifest): Promise<string[]> {
  const hash = createHash('sha256')
  const faults: string[] = []
  let count = 0
  for await (const line of linesOf(zip)) {
    count++
    hash.update(`${line}\n`)
    const read = readEvent(parsed(line))
    if (!read.ok)
      faults.push(
        `Line ${count} of ${BACKUP_FILES.entries} is no entry${read.path === '' ? '' : ` (at ${read.path})`}.`,
      )
    else if (sha256(read.text.hashed) !== read.value.hash)
      faults.push(`The content of entry ${read.value.id} was changed.`)
    if (faults.length >= 20) return faults
  }
  if (hash.digest('hex') !== manifest.files[BACKUP_FILES.entries])
    faults.push(`${BACKUP_FILES.entries} was changed or damaged.`)
  if (count !== manifest.entries) faults.push(`${count} entries are here, ${manifest.entries} were backed up.`)
  return faults
}

async function* linesOf(zip: Zip): AsyncGenerator<string> {
  const decoder = new TextDecoder()
  let rest = ''
  for await (const piece of zip.pieces(BACKUP_FILES.entries)) {
    const lines = (rest + decoder.decode(piece, { stream: true })).split('\n')
    rest = lines.pop()!
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
