import { VERSION } from '../version.ts'
import { STATUS } from '../world.ts'
import { type Asked, tell } from './asking.ts'
import { counted, keepingCommand, type Server, signedWords, withRecord } from './keeping.ts'

const HELP = `gripbook backup -o FILE [--data DIR] [--unit ID] [--json]

Writes the whole shop into one file, while the server runs: entries, people, devices, photographs.
No sessions and no codes are in it. The file is read again and proven before it has its name: it is there
whole or not at all.

  -o FILE      the file to write
  --data DIR   where the record is kept (else GRIPBOOK_DATA, else ~/.local/share/gripbook;
               as root /var/lib/gripbook)
  --unit ID    only this unit, as an archive of open formats that another shop can take in
  --json       what was written as JSON

Keep the file where the record is not, and as carefully: whoever has it can read everything.
`

/** The whole shop, or one unit, as a file. */
export const backupCommand = keepingCommand({
  name: 'backup',
  words: 'backup -o FILE [--data DIR] [--unit ID] [--json]',
  help: HELP,
  withValue: ['-o', '--data', '--unit'],
  flags: ['--json'],
  async run(asked, server) {
    const { words, values, refuse } = asked
    const file = values.get('-o')
    if (file === undefined) return refuse('Which file? gripbook backup -o FILE')
    if (words.length > 0) return refuse(`${JSON.stringify(words[0])} is one word too many. See: gripbook backup --help`)
    const unit = values.get('--unit')
    if (unit !== undefined) return oneUnit(asked, server, unit, file)
    const made = await withRecord(asked, server, (shop) => server.backUp(shop, file, VERSION))
    const { entries, units, photographs, absent, bytes, key } = made
    const missing =
      absent.length === 0
        ? ''
        : `${counted(absent.length, 'photograph')} that entries speak of ${absent.length === 1 ? 'has' : 'have'} not arrived yet; the backup is whole without.\n`
    tell(
      asked,
      'backup/1',
      { file, what: 'backup', units, entries, photographs, absent, bytes, key },
      `${file}: ${counted(units, 'unit')}, ${counted(entries, 'entry', 'entries')}, ${counted(photographs, 'photograph')}, ${bytes} bytes. Read again, and whole.\n${signedWords(key)}\n${missing}`,
    )
    return STATUS.right
  },
})

async function oneUnit(asked: Asked, server: Server, unit: string, file: string): Promise<number> {
  const key = await withRecord(asked, server, (shop) => server.writeArchive(shop, unit, file, new Date().toISOString()))
  if (key === null) return asked.refuse(`There is no unit ${unit} in this record.`)
  const words = `${file}: unit ${unit}. Read again, and whole.\n${signedWords(key)}\n`
  tell(asked, 'backup/1', { file, what: 'archive', unit, key }, words)
  return STATUS.right
}
