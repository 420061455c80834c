import { type FaceAnswer, type PlacementAnswer, place } from '@gripbook/engine'
import { loadSolver } from '../highs.ts'
import { placementText } from '../text/placementText.ts'
import { readUnitFrom } from '../unitFrom.ts'
import { STATUS } from '../world.ts'
import { fileCommand } from './asking.ts'
import { noSuchFace } from './noSuchFace.ts'
import { drawFaces } from './sections.ts'

const HELP = `gripbook place FILE [--face ID] [--json] [--svg DIR]

Says which bolt belongs in which hole of the unit in FILE, what must change from as found, what is
missing, and which reading to take next.

  --face ID   only this face
  --json      the whole answer as JSON
  --svg DIR   also draws each hole with the bolt that belongs in it, one drawing per hole, into DIR

Ends with 0 when nothing is wrong, 1 when a face contradicts itself or a bolt must change, 2 when the
file has a fault (told on standard error, nothing written), 3 when Gripbook failed.
`

/** Which bolt belongs in which hole. */
export const placeCommand = fileCommand(
  {
    name: 'place',
    words: 'place FILE [--face ID] [--json] [--svg DIR]',
    help: HELP,
    withValue: ['--face', '--svg'],
    flags: ['--json'],
  },
  'gripbook place FILE',
  async ({ path, values, flags, out, world, refuse }) => {
    const unit = await readUnitFrom(path, world)
    if (!unit) return STATUS.wrongInput
    const wanted = values.get('--face')
    if (wanted !== undefined && !unit.faces.some(({ id }) => id === wanted)) return refuse(noSuchFace(wanted, unit))

    const whole = await place(unit, { solver: loadSolver })
    const answer: PlacementAnswer = {
      ...whole,
      faces: whole.faces.filter(({ face }) => wanted === undefined || face === wanted),
    }
    const directory = values.get('--svg')
    if (directory !== undefined) {
      const fault = await drawFaces(unit, answer, directory, world)
      if (fault !== undefined) return refuse(fault)
    }
    out(flags.has('--json') ? `${JSON.stringify(answer, null, 2)}\n` : placementText(unit, answer, world))
    return answer.faces.some(somethingIsWrong) ? STATUS.wrongFound : STATUS.right
  },
)

function somethingIsWrong(face: FaceAnswer): boolean {
  return !face.feasible || face.changes.count > 0
}
