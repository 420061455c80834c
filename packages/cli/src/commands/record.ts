import { copyFile } from 'node:fs/promises'
import { basename, resolve } from 'node:path'
import { place, type Unit } from '@gripbook/engine'
import type { PaperSize } from '@gripbook/paper'
import { buildRecordOf, entriesFromUnit, fold, knowledgeOf, sha256OfText } from '@gripbook/record'
import type { Shop } from '@gripbook/server'
import { loadFonts } from '../fonts.ts'
import { loadSolver } from '../highs.ts'
import { paperOf } from '../paperSize.ts'
import { recordPaper } from '../recordPaper.ts'
import { readUnitFrom } from '../unitFrom.ts'
import { STATUS } from '../world.ts'
import { type Asked, tell } from './asking.ts'
import { counted, keepingCommand, type Server, signedWords, withRecord } from './keeping.ts'

const WORDS = 'record FILE|UNIT -o build-record.pdf [--data DIR] [--paper A4|Letter] [--json]'

const HELP = `gripbook ${WORDS}

Prints the build record of a unit: what was wrong, what was changed, and what of it is proven. Beside the PDF
goes the signed archive that it was made from, under the same name with .zip. "gripbook check" proves either.

  FILE           an archive of one unit (gripbook backup --unit), or a unit file: a unit file holds no story,
                 and the record says so
  UNIT           the id, the name or the job of a unit in the shop's record
  -o FILE        where the PDF goes
  --data DIR     where the shop's record is kept (else GRIPBOOK_DATA, else ~/.local/share/gripbook;
                 as root /var/lib/gripbook). With FILE
                 it is used only where it is given: for the names of people and for the shop's signature
  --paper SIZE   A4 or Letter; A4 where not given
  --address URL  where the shop's server is reached: the QR code asks there; without it the code holds the hash
  --json         what was written as JSON: the files, the unit, the hash of its entries and who signed

Ends with 0 when it was written, 2 when what was asked or the file is wrong, 3 when Gripbook failed.
`

/** The build record of a unit, with the archive that it was made from. */
export const recordCommand = keepingCommand({
  name: 'record',
  words: WORDS,
  help: HELP,
  withValue: ['-o', '--data', '--paper', '--address'],
  flags: ['--json'],
  async run(asked, server) {
    const { words, values, refuse } = asked
    const [what, ...more] = words
    if (what === undefined) return refuse('Of what? gripbook record FILE|UNIT -o build-record.pdf')
    if (more.length > 0)
      return refuse(
        `One unit at a time: ${JSON.stringify(more[0])} is one too many. A name with spaces goes in quotes.`,
      )
    const target = values.get('-o')
    if (target === undefined) return refuse('Where does it go? gripbook record FILE|UNIT -o build-record.pdf')
    if (/\.zip$/i.test(target)) return refuse('-o names the PDF; the archive goes beside it.')
    const paper = paperOf(values.get('--paper') ?? 'A4')
    if (paper === undefined) return refuse(`--paper ${JSON.stringify(values.get('--paper'))}: it is A4 or Letter.`)
    const address = values.get('--address')?.replace(/\/+$/, '')
    if (address !== undefined && !/^https?:\/\/[^\s/]+$/.test(address))
      return refuse('--address is like https://shop.local:7480.')
    const given: Given = { target, paper, ...(address === undefined ? {} : { address }) }
    switch (await kindOf(what, asked)) {
      case 'archive':
        return values.has('--data')
          ? withRecord(asked, server, (shop) => ofArchive(asked, server, what, given, shop))
          : ofArchive(asked, server, what, given)
      case 'file':
        return ofUnitFile(asked, server, what, given)
      case 'nothing':
        return withRecord(asked, server, (shop) => ofUnit(asked, server, what, given, shop))
    }
  },
})

type Given = { target: string; paper: PaperSize; address?: string }

/** What lies under the name: a zip file by its first two bytes, another file, or nothing, so that it is a unit of the record. */
async function kindOf(name: string, { world }: Asked): Promise<'archive' | 'file' | 'nothing'> {
  try {
    const [a, b] = await world.readFile(name, 2)
    return a === 0x50 && b === 0x4b ? 'archive' : 'file'
  } catch {
    return 'nothing'
  }
}

async function ofUnit(asked: Asked, server: Server, called: string, given: Given, shop: Shop): Promise<number> {
  const [first, ...others] = await server.findUnits(shop, called)
  if (first === undefined)
    return asked.refuse(
      `There is no file ${JSON.stringify(called)}, and no unit in this record has that id, name or job.`,
    )
  if (others.length > 0) {
    const all = [first, ...others].map(
      ({ unit, name, job }) => `  ${unit}  ${name ?? ''}${job === null ? '' : `, job ${job}`}`,
    )
    return asked.refuse(`Several units are called so. Which, by its id?\n${all.join('\n')}`)
  }
  const zip = besideOf(given.target)
  await server.writeArchive(shop, first.unit, zip, new Date().toISOString())
  return ofArchive(asked, server, zip, given, shop)
}

/** The paper of an archive; the archive is laid beside it where it is not there already. */
async function ofArchive(asked: Asked, server: Server, path: string, given: Given, shop?: Shop): Promise<number> {
  const { target, paper, address } = given
  const zip = await server.openZip(path, server.LOCAL_ARCHIVE_LIMITS)
  const { pdf, archive } = await server
    .paperOfArchive(zip, recordPaper(paper), {
      ...(shop === undefined ? {} : { shop }),
      ...(address === undefined ? {} : { address }),
    })
    .finally(zip.close)
  const beside = besideOf(target)
  if (resolve(beside) !== resolve(path)) await copyFile(path, beside)
  await asked.world.writeBytes(target, pdf)
  const { key } = server.checkPaper(pdf)
  const entries = archive.events.length
  const { unit, record: hash } = archive.manifest
  tell(
    asked,
    'record/1',
    { file: target, unit, entries, hash, key, archive: { file: beside, key: archive.key } },
    `${target}: the build record, of ${counted(entries, 'entry', 'entries')}. ${signedWords(key)}
${beside}: the archive that it was made from. ${signedWords(archive.key)}
`,
  )
  return STATUS.right
}

/**
 * A unit file holds how a unit stands: its entries are made up here to fold it, and nothing of them is printed as done by anybody. The seal names the file, never the folder that it lay in:
 * the paper is handed over.
 */
async function ofUnitFile(asked: Asked, server: Server, path: string, given: Given): Promise<number> {
  const unit = await readUnitFrom(path, asked.world)
  if (unit === undefined) return STATUS.wrongInput
  const { target, paper, address } = given
  const folded = foldedFrom(unit)
  const record = buildRecordOf(folded, {
    people: {},
    hash: sha256OfText,
    stateOnly: true,
    answer: await place(unit, { solver: loadSolver }),
    ...(address === undefined ? {} : { shop: { address } }),
  })
  const { buildRecordPdf } = await import('@gripbook/paper')
  const pdf = await buildRecordPdf(record, { fonts: await loadFonts(), paper, photographs: new Map(), made: NO_TIME })
  await asked.world.writeBytes(
    target,
    await server.sealed(pdf, { unit: basename(path), entries: 0, record: record.hash }),
  )
  tell(
    asked,
    'record/1',
    { file: target, unit: basename(path), entries: 0, hash: record.hash, key: null, archive: null },
    `${target}: how the unit stands. A unit file holds no story: no torques, no signatures. ${signedWords(null)}\n`,
  )
  return STATUS.right
}

/** The same file gives the same bytes, so no clock is read. */
const NO_TIME = new Date('2000-01-01T00:00:00.000Z')

function foldedFrom(unit: Unit) {
  const id = '00000000-0000-4000-8000-000000000000'
  const stamp = (index: number) => ({
    id: `00000000-0000-4000-8000-${(index + 1).toString(16).padStart(12, '0')}`,
    at: NO_TIME.toISOString(),
    who: 'file',
  })
  return fold(id, entriesFromUnit(unit, knowledgeOf(id, id, []), stamp, sha256OfText))
}

/** `build-record.zip` for `build-record.pdf`. */
export function besideOf(pdf: string): string {
  return `${pdf.replace(/\.pdf$/i, '')}.zip`
}
