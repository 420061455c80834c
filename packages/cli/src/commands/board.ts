import { type Face, place, type Unit } from '@gripbook/engine'
import type { BoardFault, Fonts } from '@gripbook/paper'
import { loadFonts } from '../fonts.ts'
import { loadSolver } from '../highs.ts'
import { paperOf } from '../paperSize.ts'
import { readUnitFrom, systemWords } from '../unitFrom.ts'
import { STATUS, type World } from '../world.ts'
import { fileCommand, tell } from './asking.ts'
import { noSuchFace } from './noSuchFace.ts'

const USAGE = 'board FILE -o board.pdf'

const HELP = `gripbook ${USAGE} [--face ID] [--paper A4|Letter]
               [--as-found] [--learner] [--font FILE] [--json]

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
  --json        what was written as JSON

The places of the holes are "at" of the unit file. A face without them is drawn
in rows and said not to be to scale.

Ends with 0 when written, 2 when the input is wrong (told on standard error,
nothing written), 3 when Gripbook failed.
`

/** A font file that is larger is none: the largest that are in use hold every Chinese character. */
const MOST_FONT_BYTES = 64_000_000

/** The bolt board of a unit, and the sheet for a learner. */
export const boardCommand = fileCommand(
  {
    name: 'board',
    words: `${USAGE} [--face ID] [--paper A4|Letter] [--json]`,
    help: HELP,
    withValue: ['-o', '--face', '--paper', '--font'],
    flags: ['--as-found', '--learner', '--json'],
  },
  `gripbook ${USAGE}`,
  async ({ path, values, flags, world, out, refuse }) => {
    const target = values.get('-o')
    if (target === undefined) return refuse(`Where does the board go? gripbook ${USAGE}`)
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
    const options = { paper, fonts: fonts.value, made: new Date(`${world.today()}T00:00:00Z`) }
    const answered = (face: Face) => answer?.faces.find((one) => one.face === face.id)
    const [first] = chosen.faces as [Face]
    const { boltBoard, learnerSheet } = await import('@gripbook/paper')
    const board = flags.has('--learner')
      ? await learnerSheet(unit, first, answered(first)!, options)
      : await boltBoard(
          unit,
          chosen.faces.map((face) => {
            const its = answered(face)
            return { face, ...(its === undefined ? {} : { answer: its }) }
          }),
          { ...options, asFound },
        )
    if (!board.ok) return refuse(`${path}: ${faultWords(board.fault)}`)
    try {
      await world.writeBytes(target, board.bytes)
    } catch (fault) {
      const why = systemWords(fault)
      if (why === undefined) throw fault
      return refuse(`${target}: the board cannot be written there: ${why}`)
    }
    const faces = chosen.faces.map(({ id }) => id)
    const what = flags.has('--learner') ? 'learner sheet' : 'bolt board'
    const print = flags.has('--learner')
      ? 'The questions come first, the answers on the pages after.'
      : 'Print it at actual size: the bar on every sheet must then measure 100 mm.'
    tell(
      { flags, out },
      'board/1',
      { file: target, what, paper, faces },
      `${target}: the ${what} on ${paper}. ${print}\n`,
    )
    return STATUS.right
  },
)

function facesOf(unit: Unit, wanted: string | undefined): { ok: true; faces: Face[] } | { ok: false; why: string } {
  if (wanted === undefined) return { ok: true, faces: unit.faces }
  const face = unit.faces.find(({ id }) => id === wanted)
  if (face) return { ok: true, faces: [face] }
  return { ok: false, why: noSuchFace(wanted, unit) }
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
