import type { Checked, CheckedPaper, Fault } from '@gripbook/server'
import { VERSION } from '../version.ts'
import { STATUS, type World } from '../world.ts'
import { oneFileOnly, tell } from './asking.ts'
import { counted, keepingCommand, type Server, signedWords, withRecord } from './keeping.ts'
import { besideOf } from './record.ts'

const HELP = `gripbook check [FILE] [--data DIR] [--json]

Proves the record whole, or a backup, an archive or the PDF of a build record (FILE): every entry against its
hash and its chain, every photograph against its hash, nothing missing, nothing doubled, every byte of a PDF.
What is wrong is named, with its place. Changes nothing, and needs no record for a FILE.

  --data DIR   where the record is kept (else GRIPBOOK_DATA, else ~/.local/share/gripbook;
               as root /var/lib/gripbook)
  --json       the whole answer as JSON: each fault with unit, device, number and entry where it has one

It may run while the record is served. Ends with 0 when all is whole, 1 when something is wrong.
`

/** A build record with hundreds of photographs has 100 MB. */
const MOST_PAPER = 500_000_000

type Answer = {
  what: 'record' | 'backup' | 'archive' | 'build record'
  whole: boolean
  faults: readonly Fault[]
  notes: string[]
  /** Photographs that entries speak of and that are not here. */
  absent?: readonly string[]
  strangers?: Checked['strangers']
}

/** Whether the record, a backup, an archive or the PDF of a build record is whole. */
export const checkCommand = keepingCommand({
  name: 'check',
  words: 'check [FILE] [--data DIR] [--json]',
  help: HELP,
  withValue: ['--data'],
  flags: ['--json'],
  async run(asked, server) {
    const { words, world, refuse } = asked
    const [file, ...more] = words
    if (more.length > 0) return refuse(oneFileOnly(more[0]!))
    if (file !== undefined && (await isText(file, world)))
      return refuse(`${file}: this is a text, no backup, archive or PDF of Gripbook. A unit file carries no proof.`)
    const answer =
      file === undefined
        ? ofRecord(await withRecord(asked, server, server.checkRecord))
        : await ofFile(file, server, world)
    tell(asked, 'check/1', answer, inWords(answer))
    return answer.whole ? STATUS.right : STATUS.wrongFound
  },
})

function ofRecord({ units, entries, photographs, faults, absent, strangers }: Checked): Answer {
  const notes = [
    `${counted(units, 'unit')}, ${counted(entries, 'entry', 'entries')}, ${counted(photographs, 'photograph')}.`,
  ]
  if (absent.length > 0)
    notes.push(
      `Photographs that entries speak of and that have not arrived (they may wait on a device): ${absent.join(', ')}.`,
    )
  for (const { who, device, entries: made, first } of strangers)
    notes.push(
      `${counted(made, 'entry', 'entries')} by ${who} on device ${device}, who were never paired here (from an archive of another shop); the first is ${first}.`,
    )
  return { what: 'record', whole: faults.length === 0, faults, notes, absent, strangers }
}

async function ofFile(file: string, server: Server, world: World): Promise<Answer> {
  const bytes = Buffer.from(await readIfPaper(file, server, world))
  if (bytes.length > 0) return ofPaper(file, server.checkPaper(bytes), server)
  const answer = await ofZip(file, server)
  const seal = await server.checkZipSeal(file)
  if (seal.is !== 'changed') return answer
  const places = seal.places.map((place) => ({ words: sealWords(server.stretchWords(place), seal.seal) }))
  return { ...answer, whole: false, faults: [...answer.faults, ...places] }
}

function sealWords(place: string, ofSeal: boolean): string {
  return ofSeal ? `Changed: the seal of the zip file, ${place}.` : `Changed: ${place} of the zip file.`
}

/** A unit file, say. No damage to a single byte makes a text of a zip file or a PDF: both hold bytes that no text has. */
async function isText(file: string, world: World): Promise<boolean> {
  const start = await world.readFile(file, 65_536).catch(() => new Uint8Array())
  if (start.length === 0 || start.some((byte) => byte < 9)) return false
  try {
    return !new TextDecoder('utf-8', { fatal: true }).decode(start, { stream: true }).startsWith('%PDF')
  } catch {
    return false
  }
}

/** The whole of a file that is a PDF or carries the seal of one; nothing of any other. */
async function readIfPaper(file: string, server: Server, world: World): Promise<Uint8Array> {
  const start = Buffer.from(await world.readFile(file, 4).catch(() => new Uint8Array()))
  if (start.subarray(0, 2).toString('latin1') === 'PK') return new Uint8Array()
  const bytes = Buffer.from(await world.readFile(file, MOST_PAPER).catch(() => new Uint8Array()))
  return bytes.length <= MOST_PAPER && server.isPaper(bytes) ? bytes : new Uint8Array()
}

/** A PDF against its seal, and against the archive that lies beside it. */
async function ofPaper(file: string, checked: CheckedPaper, server: Server): Promise<Answer> {
  const { unit, entries, record, key } = checked
  const answer = (faults: string[], notes: string[]): Answer => ({
    what: 'build record',
    whole: faults.length === 0,
    faults: faults.map((words) => ({ words })),
    notes,
  })
  if (checked.faults.length > 0) return answer(checked.faults, [])
  if (entries === 0) return answer([], [`Of the unit file ${unit}, with the hash ${record}. ${signedWords(key)}`])
  const made = `Unit ${unit}, ${counted(entries, 'entry', 'entries')}, hash ${record}. ${signedWords(key)}`
  const beside = besideOf(file)
  const archive = await archiveAt(beside, server)
  if (archive === 'none') return answer([], [made, `The archive that it was made from is not beside it (${beside}).`])
  if (archive === 'damaged')
    return answer([], [made, `The archive beside it (${beside}) is not whole: check it by itself.`])
  return archive.unit === unit && archive.record === record
    ? answer([], [made, `It fits the archive beside it (${beside}).`])
    : answer([`The archive beside it (${beside}) holds other entries than this was made from.`], [made])
}

async function archiveAt(path: string, server: Server): Promise<'none' | 'damaged' | { unit: string; record: string }> {
  try {
    const zip = await server.openZip(path, server.LOCAL_ARCHIVE_LIMITS)
    return (await server.readArchive(zip).finally(zip.close)).manifest
  } catch (error) {
    return (error as { code?: string }).code === 'ENOENT' ? 'none' : 'damaged'
  }
}

async function ofZip(file: string, server: Server): Promise<Answer> {
  let what: Answer['what'] = 'archive'
  const faulty = (faults: readonly Fault[]): Answer => ({ what, whole: false, faults, notes: [] })
  try {
    const zip = await server.openZip(file, server.BACKUP_LIMITS)
    try {
      if (!(await server.isBackup(zip))) return ofArchive(await server.readArchive(zip))
      what = 'backup'
      return ofBackup(await server.readBackup(zip, VERSION))
    } finally {
      zip.close()
    }
  } catch (error) {
    if (error instanceof server.BadZip) return faulty([{ words: `The file is damaged or none: ${error.message}.` }])
    if (error instanceof server.BadBackup) return faulty(error.faults)
    if (error instanceof server.BadArchive) return faulty(error.faults.map((words) => ({ words })))
    throw error
  }
}

function ofBackup({ manifest, signer, statesCompared }: Awaited<ReturnType<Server['readBackup']>>): Answer {
  const { units, entries, photographs, absent, at, version } = manifest
  const notes = [
    `Made ${at}: ${counted(Object.keys(units).length, 'unit')}, ${counted(entries, 'entry', 'entries')}, ${counted(photographs.length, 'photograph')}. ${signedWords(signer === 'none' ? null : signer.key)}`,
  ]
  if (!statesCompared) notes.push(`It is of Gripbook ${version}: what its entries fold to was not compared.`)
  if (absent.length > 0) notes.push(`Photographs that had not arrived when it was made: ${absent.join(', ')}.`)
  return { what: 'backup', whole: true, faults: [], notes, absent }
}

function ofArchive({ manifest, events, key }: Awaited<ReturnType<Server['readArchive']>>): Answer {
  const { unit, at, photographs, absent } = manifest
  const notes = [
    `Unit ${unit}, made ${at}: ${counted(events.length, 'entry', 'entries')}, ${counted(photographs.length, 'photograph')}. ${signedWords(key)}`,
  ]
  if (absent.length > 0) notes.push(`Photographs that whoever made it did not have: ${absent.join(', ')}.`)
  return { what: 'archive', whole: true, faults: [], notes, absent }
}

function inWords({ what, whole, faults, notes }: Answer): string {
  const head = whole ? `The ${what} is whole.` : `The ${what} is not whole:`
  return [head, ...faults.map(({ words }) => `  ✗ ${words}`), ...notes].map((line) => `${line}\n`).join('')
}
