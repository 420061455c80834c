import { VERSION } from '../version.ts'
import { STATUS } from '../world.ts'
import { counted, keepingCommand, withShop } from './keeping.ts'

const HELP = `gripbook restore FILE [--data DIR]

Puts a backup of a whole shop into an empty record, or takes a unit's archive into this one.

  --data DIR   where the record is to be kept (else GRIPBOOK_DATA, else ~/.local/share/gripbook)

The file is proven whole before anything is written, and what was written is folded again and compared.
A record that is not empty is left as it is. Sessions are not in a backup: devices are paired again, and
what still waits on them is sent then.
`

/** A backup, or a unit's archive, into a record. */
export const restoreCommand = keepingCommand({
  name: 'restore',
  words: 'restore FILE [--data DIR]',
  help: HELP,
  withValue: ['--data'],
  flags: [],
  async run(asked, server) {
    const { words, out, refuse } = asked
    const [file, ...more] = words
    if (file === undefined) return refuse('Which file? gripbook restore FILE')
    if (more.length > 0) return refuse(`One file at a time: ${JSON.stringify(more[0])} is one too many.`)
    const zip = await server.openZip(file, server.BACKUP_LIMITS)
    const isBackup = zip.names.includes(server.BACKUP_FILES.people)
    zip.close()
    if (!isBackup) {
      const taken = await withShop(asked, server, (shop) => server.takeInArchive(shop, file))
      out(
        `Unit ${taken.unit}: ${counted(taken.added, 'new entry', 'new entries')}, ${taken.known} known; ${counted(taken.photographs.added, 'new photograph')}, ${taken.photographs.known} known. Signed ${taken.signed}.\n`,
      )
      return STATUS.right
    }
    const restored = await withShop(asked, server, (shop) => server.restore(shop, file, VERSION))
    out(
      `${counted(restored.units, 'unit')}, ${counted(restored.entries, 'entry', 'entries')}, ${counted(restored.photographs, 'photograph')} put back. Signed ${restored.signed}.\n`,
    )
    out(
      restored.statesCompared
        ? 'Proven: every unit was folded again from what is kept now, and is what it was when the backup was made.\n'
        : `Proven: the entries of every unit are those that were backed up. The backup is of Gripbook ${restored.version}, so what they fold to was not compared.\n`,
    )
    if (restored.absent > 0)
      out(`${counted(restored.absent, 'photograph')} had not arrived when the backup was made.\n`)
    return STATUS.right
  },
})
