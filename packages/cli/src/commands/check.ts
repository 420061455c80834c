import type { Checked } from '@gripbook/server'
import { STATUS } from '../world.ts'
import { counted, keepingCommand, type Server, withShop } from './keeping.ts'

const HELP = `gripbook check [FILE] [--data DIR] [--json]

Proves the record whole, or a backup or archive (FILE): every entry against its hash and its chain, every
photograph against its hash, nothing missing, nothing doubled. What is wrong is named. Changes nothing.

  --data DIR   where the record is kept (else GRIPBOOK_DATA, else ~/.local/share/gripbook)
  --json       the whole answer as JSON

Ends with 0 when all is whole, 1 when something is wrong.
`

type Answer = { what: 'record' | 'backup' | 'archive'; whole: boolean; faults: readonly string[]; notes: string[] }

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
      file === undefined ? ofRecord(await withShop(asked, server, server.checkRecord)) : await ofFile(file, server)
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
  if (strangers.length > 0)
    notes.push(
      `Entered by somebody who was never paired here (it came in with an archive of another shop): ${strangers.join(', ')}.`,
    )
  return { what: 'record', whole: faults.length === 0, faults, notes }
}

async function ofFile(file: string, server: Server): Promise<Answer> {
  const what = { is: 'archive' as 'archive' | 'backup' }
  try {
    const zip = await server.openZip(file, server.BACKUP_LIMITS)
    try {
      if (zip.names.includes(server.BACKUP_FILES.people)) {
        what.is = 'backup'
        const { manifest, signer } = await server.readBackup(zip)
        const { units, entries, photographs, at } = manifest
        const notes = [
          `Made ${at}: ${counted(Object.keys(units).length, 'unit')}, ${counted(entries, 'entry', 'entries')}, ${counted(photographs.length, 'photograph')}. ${signedWords(signer)}`,
        ]
        return { what: 'backup', whole: true, faults: [], notes }
      }
      const { manifest, events, key } = await server.readArchive(zip)
      const notes = [
        `Unit ${manifest.unit}, made ${manifest.at}: ${counted(events.length, 'entry', 'entries')}, ${counted(manifest.photographs.length, 'photograph')}. ${signedWords(key === null ? 'none' : { key })}`,
      ]
      return { what: 'archive', whole: true, faults: [], notes }
    } finally {
      zip.close()
    }
  } catch (error) {
    if (error instanceof server.BadZip)
      return { what: what.is, whole: false, faults: [`The file is damaged or none: ${error.message}.`], notes: [] }
    if (error instanceof server.BadBackup || error instanceof server.BadArchive)
      return { what: what.is, whole: false, faults: error.faults, notes: [] }
    throw error
  }
}

function signedWords(signer: 'none' | { key: string }): string {
  return signer === 'none' ? 'Nobody signed it.' : `Signed with the key ${signer.key}.`
}

function inWords({ what, whole, faults, notes }: Answer): string {
  const head = whole ? `The ${what} is whole.` : `The ${what} is not whole:`
  return [head, ...faults.map((fault) => `  ✗ ${fault}`), ...notes].map((line) => `${line}\n`).join('')
}
