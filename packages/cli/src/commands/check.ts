import type { Checked, Fault } from '@gripbook/server'
import { VERSION } from '../version.ts'
import { STATUS } from '../world.ts'
import { counted, keepingCommand, type Server, signedWords, withRecord } from './keeping.ts'

const HELP = `gripbook check [FILE] [--data DIR] [--json]

Proves the record whole, or a backup or archive (FILE): every entry against its hash and its chain, every
photograph against its hash, nothing missing, nothing doubled. What is wrong is named. Changes nothing.

  --data DIR   where the record is kept (else GRIPBOOK_DATA, else ~/.local/share/gripbook)
  --json       the whole answer as JSON: each fault with unit, device, number and entry where it has one

It may run while the record is served. Ends with 0 when all is whole, 1 when something is wrong.
`

type Answer = {
  what: 'record' | 'backup' | 'archive'
  whole: boolean
  faults: readonly Fault[]
  notes: string[]
  /** Photographs that entries speak of and that are not here. */
  absent?: readonly string[]
  strangers?: Checked['strangers']
}

/** Whether the record, a backup or an archive is whole. */
export const checkCommand = keepingCommand({
  name: 'check',
  words: 'check [FILE] [--data DIR] [--json]',
  help: HELP,
  withValue: ['--data'],
  flags: ['--json'],
  async run(asked, server) {
    const { words, flags, out, refuse } = asked
    const [file, ...more] = words
    if (more.length > 0) return refuse(`One file at a time: ${JSON.stringify(more[0])} is one too many.`)
    const answer =
      file === undefined ? ofRecord(await withRecord(asked, server, server.checkRecord)) : await ofFile(file, server)
    out(flags.has('--json') ? `${JSON.stringify({ gripbook: 'check/1', ...answer }, null, 2)}\n` : inWords(answer))
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

async function ofFile(file: string, server: Server): Promise<Answer> {
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
