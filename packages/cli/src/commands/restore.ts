import { VERSION } from '../version.ts'
import { STATUS } from '../world.ts'
import { type Asked, oneFileOnly, tell } from './asking.ts'
import { counted, keepingCommand, type Server, signedWords, withShop } from './keeping.ts'

const HELP = `gripbook restore FILE [--data DIR] [--json]

Puts a backup of a whole shop into an empty record, or takes a unit's archive into this one.

  --data DIR   where the record is to be kept (else GRIPBOOK_DATA, else ~/.local/share/gripbook;
               as root /var/lib/gripbook)
  --json       what was taken in as JSON

The file is proven whole before anything is written, and what was written is folded again and compared.
A record that is not empty is left as it is; a restore that was killed is started again with the same file.
Sessions are not in a backup: devices are paired again, and
what still waits on them is sent then.
`

/** A backup, or a unit's archive, into a record. */
export const restoreCommand = keepingCommand({
  name: 'restore',
  words: 'restore FILE [--data DIR] [--json]',
  help: HELP,
  withValue: ['--data'],
  flags: ['--json'],
  async run(asked, server) {
    const { words, refuse } = asked
    const [file, ...more] = words
    if (file === undefined) return refuse('Which file? gripbook restore FILE')
    if (more.length > 0) return refuse(oneFileOnly(more[0]!))
    const zip = await server.openZip(file, server.BACKUP_LIMITS)
    const whole = await server.isBackup(zip).finally(zip.close)
    return whole ? ofShop(asked, server, file) : ofUnit(asked, server, file)
  },
})

async function ofUnit(asked: Asked, server: Server, file: string): Promise<number> {
  const { unit, added, known, photographs, absent, signed, key } = await withShop(asked, server, (shop) =>
    server.takeInArchive(shop, file, server.LOCAL_ARCHIVE_LIMITS),
  )
  const by = key === null ? 'Nobody signed it.' : `Signed ${signed}, with the key ${key}.`
  const missing =
    absent === 0
      ? ''
      : `${counted(absent, 'photograph')} that entries speak of ${absent === 1 ? 'is' : 'are'} not in it.\n`
  tell(
    asked,
    'restore/1',
    { what: 'archive', unit, added, known, photographs, absent, signed: key === null ? null : signed, key },
    `Unit ${unit}: ${counted(added, 'new entry', 'new entries')}, ${known} known; ${counted(photographs.added, 'new photograph')}, ${photographs.known} known. ${by}\n${missing}`,
  )
  return STATUS.right
}

async function ofShop(asked: Asked, server: Server, file: string): Promise<number> {
  const { units, entries, photographs, absent, key, version, statesCompared } = await withShop(asked, server, (shop) =>
    server.restore(shop, file, VERSION),
  )
  const proven = statesCompared
    ? 'Proven: every unit was folded again from what is kept now, and is what it was when the backup was made.'
    : `Proven: the entries of every unit are those that were backed up. The backup is of Gripbook ${version}, so what they fold to was not compared.`
  const missing = absent === 0 ? [] : [`${counted(absent, 'photograph')} had not arrived when the backup was made.`]
  const lines = [
    `${counted(units, 'unit')}, ${counted(entries, 'entry', 'entries')}, ${counted(photographs, 'photograph')} put back. ${signedWords(key)}`,
    proven,
    ...missing,
    'Devices are paired again: `gripbook serve --another-owner` prints the code for the owner.\n',
  ]
  tell(
    asked,
    'restore/1',
    { what: 'backup', units, entries, photographs, absent, key, version, statesCompared },
    lines.join('\n'),
  )
  return STATUS.right
}
