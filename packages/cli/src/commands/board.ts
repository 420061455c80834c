import { type Face, type PlacementAnswer, place, type Unit } from '@gripbook/engine'
import { type Board, type BoardFault, boltBoard, type Fonts, learnerSheet, type PaperSize } from '@gripbook/paper'
import { nearestName } from '@gripbook/record'
import { loadFonts } from '../fonts.ts'
import { loadSolver } from '../highs.ts'
import { readOptions } from '../options.ts'
import { readUnitFrom, systemWords } from '../unitFrom.ts'
import { STATUS, type World } from '../world.ts'
import type { Command } from './command.ts'

const HELP = `gripbook board FILE -o board.pdf [--face ID] [--paper A4|Letter]
               [--as-found] [--learner] [--font FILE]

Prints the bolt board of the unit in FILE: each face at true scale, to stick its
bolts through while the unit is apart. Every hole has its number and its bolt
beside it: the one that belongs, or dashed the one that came out where that is
open. A face larger than a sheet goes over several that are joined by crosses.
Print it at actual size; the bar on every sheet must then measure 100 mm.

  -o FILE       where the PDF goes
  --face ID     only this face; for --learner needed when the unit has several
  --paper SIZE  A4 or Letter; A4 where not given
  --as-found    what came out, even where it is settled what belongs
  --learner     instead a sheet for a learner: the face with questions, then the
                answers with the reasons
  --font FILE   a font file (.ttf, .otf) for names in a script that the built-in
                font lacks: it holds Latin, Greek, Cyrillic and Hebrew. Without
                it such letters are boxes on paper, and whole when copied

The places of the holes are "at" of the unit file. A face without them is drawn
in rows and said not to be to scale.

Ends with 0 when written, 2 when the input is wrong (told on standard error,
nothing written), 3 when Gripbook failed.
`

/** A font file that is larger is none: the largest that are in use hold every Chinese character. */
const MOST_FONT_BYTES = 64_000_000

/** The bolt board of a unit, and the sheet for a learner. */
export const boardCommand: Command = {
  words: 'board FILE -o board.pdf [--face ID] [--paper A4|Letter]',
  help: HELP,
  async run(args, out, err, world) {
    const refuse = (why: string) => {
      err(`${why}\n`)
      return STATUS.wrongInput
    }
    const read = readOptions(args, ['-o', '--face', '--paper', '--font'], ['--as-found', '--learner', '--help'])
    if (!read.ok) return refuse(`${read.why} See: gripbook board --help`)
    const { words, values, flags } = read.options
    if (flags.has('--help')) {
      out(HELP)
      return STATUS.right
    }
    const [path, ...more] = words
    if (path === undefined) return refuse('Which file? gripbook board FILE -o board.pdf')
    if (more.length > 0) return refuse(`One file at a time: ${JSON.stringify(more[0])} is one too many.`)
    const target = values.get('-o')
    if (target === undefined) return refuse('Where does the board go? gripbook board FILE -o board.pdf')
    const paper = paperOf(values.get('--paper') ?? 'A4')
    if (paper === undefined) return refuse(`--paper ${JSON.stringify(values.get('--paper'))}: it is A4 or Letter.`)
    const unit = await readUnitFrom(path, world)
    if (!unit) return STATUS.wrongInput
    const chosen = facesOf(unit, values.get('--face'))
    if (!chosen.ok) return refuse(chosen.why)
    if (flags.has('--learner') && chosen.faces.length > 1) {
      const ids = chosen.faces.map(({ id }) => JSON.stringify(id)).join(', ')
      return refuse(`A sheet for a learner is of one face. Which? --face, one of ${ids}.`)
    }
    const fonts = await fontsWith(values.get('--font'), world)
    if (!fonts.ok) return refuse(fonts.why)

    const asFound = flags.has('--as-found') && !flags.has('--learner')
    const answer = asFound ? undefined : await place(unit, { solver: loadSolver })
    const made = new Date(`${world.today()}T00:00:00Z`)
    const board = await printed(unit, chosen.faces, answer, { paper, fonts: fonts.value, made, asFound })
    if (!board.ok) return refuse(`${path}: ${faultWords(board.fault)}`)
    try {
      await world.writeBytes(target, board.bytes)
    } catch (fault) {
      const why = systemWords(fault)
      if (why === undefined) throw fault
      return refuse(`${target}: the board cannot be written there: ${why}`)
    }
    return STATUS.right

    function printed(
      of: Unit,
      faces: Face[],
      whole: PlacementAnswer | undefined,
      options: { paper: PaperSize; fonts: Fonts; made: Date; asFound: boolean },
    ): Promise<Board> {
      const answered = (face: Face) => whole?.faces.find((one) => one.face === face.id)
      if (flags.has('--learner')) return learnerSheet(of, faces[0]!, answered(faces[0]!)!, options)
      return boltBoard(
        of,
        faces.map((face) => {
          const its = answered(face)
          return { face, ...(its === undefined ? {} : { answer: its }) }
        }),
        options,
      )
    }
  },
}

function paperOf(text: string): PaperSize | undefined {
  return (['A4', 'Letter'] as const).find((size) => size.toLowerCase() === text.toLowerCase())
}

function facesOf(unit: Unit, wanted: string | undefined): { ok: true; faces: Face[] } | { ok: false; why: string } {
  if (wanted === undefined) return { ok: true, faces: unit.faces }
  const face = unit.faces.find(({ id }) => id === wanted)
  if (face) return { ok: true, faces: [face] }
  const ids = unit.faces.map(({ id }) => id)
  const near = nearestName(wanted, ids)
  const known = near ? `Did you mean ${JSON.stringify(near)}?` : `There is: ${ids.slice(0, 10).join(', ')}.`
  return { ok: false, why: `There is no face ${JSON.stringify(wanted)} in this unit. ${known}` }
}

async function fontsWith(
  path: string | undefined,
  world: World,
): Promise<{ ok: true; value: Fonts } | { ok: false; why: string }> {
  if (path === undefined) return { ok: true, value: await loadFonts() }
  try {
    const bytes = await world.readFile(path, MOST_FONT_BYTES)
    if (!isFont(bytes)) return { ok: false, why: `${path}: this is no font file (.ttf or .otf).` }
    return { ok: true, value: await loadFonts(bytes) }
  } catch (fault) {
    const why = systemWords(fault)
    if (why === undefined) throw fault
    return { ok: false, why: `${path}: ${why}` }
  }
}

/** The four bytes that a TrueType or OpenType file begins with. @source OpenType specification, table directory */
function isFont(bytes: Uint8Array): boolean {
  const start = String.fromCharCode(...bytes.subarray(0, 4))
  return start === '\0\u0001\0\0' || start === 'OTTO' || start === 'true'
}

function faultWords(fault: BoardFault): string {
  if (fault.code === 'no-holes') return `face ${JSON.stringify(fault.face)} has no holes, so there is nothing to print.`
  const [width, height] = [fault.width, fault.height].map((mm) => Math.ceil(mm))
  return `face ${JSON.stringify(fault.face)} is ${width} mm × ${height} mm and would take ${fault.sheets} sheets. Are the places ("at") in mm?`
}
