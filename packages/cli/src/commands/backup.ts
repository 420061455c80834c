import { createWriteStream } from 'node:fs'
import { rename, rm } from 'node:fs/promises'
import { pipeline } from 'node:stream/promises'
import { VERSION } from '../version.ts'
import { STATUS } from '../world.ts'
import { type Asked, counted, keepingCommand, type Server, withShop } from './keeping.ts'

const HELP = `gripbook backup -o FILE [--data DIR] [--unit ID]

Writes the whole shop into one file, while the server runs: entries, people, devices, photographs.
No sessions and no codes are in it. The file is there whole or not at all.

  -o FILE      the file to write
  --data DIR   where the record is kept (else GRIPBOOK_DATA, else ~/.local/share/gripbook)
  --unit ID    only this unit, as an archive of open formats that another shop can take in

Keep the file where the record is not, and as carefully: whoever has it can read everything.
`

/** The whole shop, or one unit, as a file. */
export const backupCommand = keepingCommand({
  name: 'backup',
  words: 'backup -o FILE [--data DIR] [--unit ID]',
  help: HELP,
  withValue: ['-o', '--data', '--unit'],
  flags: [],
  async run(asked, server) {
    const { words, values, out, refuse } = asked
    const file = values.get('-o')
    if (file === undefined) return refuse('Which file? gripbook backup -o FILE')
    if (words.length > 0) return refuse(`${JSON.stringify(words[0])} is one word too many. See: gripbook backup --help`)
    const unit = values.get('--unit')
    if (unit !== undefined) return oneUnit(asked, server, unit, file)
    const { entries, units, photographs, absent, bytes } = await withShop(asked, server, (shop) =>
      server.backUp(shop, file, VERSION),
    )
    out(
      `${file}: ${counted(units, 'unit')}, ${counted(entries, 'entry', 'entries')}, ${counted(photographs, 'photograph')}, ${bytes} bytes.\n`,
    )
    if (absent.length > 0)
      out(
        `${counted(absent.length, 'photograph')} that entries speak of ${absent.length === 1 ? 'has' : 'have'} not arrived yet; the backup is whole without.\n`,
      )
    return STATUS.right
  },
})

async function oneUnit(asked: Asked, server: Server, unit: string, file: string): Promise<number> {
  const found = await withShop(asked, server, async (shop) => {
    const files = await server.unitFiles(shop, unit, new Date().toISOString())
    if (files === null) return false
    const part = `${file}.part`
    try {
      await pipeline(server.zipOf(files), createWriteStream(part, { mode: 0o600, flush: true }))
      await rename(part, file)
    } catch (error) {
      await rm(part, { force: true })
      throw error
    }
    return true
  })
  if (!found) return asked.refuse(`There is no unit ${unit} in this record.`)
  asked.out(`${file}: unit ${unit}.\n`)
  return STATUS.right
}
