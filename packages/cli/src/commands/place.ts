import { type FaceAnswer, type PlacementAnswer, place, type Unit } from '@gripbook/engine'
import { nearestName } from '@gripbook/record'
import { loadSolver } from '../highs.ts'
import { readOptions } from '../options.ts'
import { placementText } from '../text/placementText.ts'
import { readUnitFrom } from '../unitFrom.ts'
import { STATUS } from '../world.ts'
import type { Command } from './command.ts'
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
export const placeCommand: Command = {
  words: 'place FILE [--face ID] [--json] [--svg DIR]',
  help: HELP,
  async run(args, out, err, world) {
    const refuse = (why: string) => {
      err(`${why}\n`)
      return STATUS.wrongInput
    }
    const read = readOptions(args, ['--face', '--svg'], ['--json', '--help'])
    if (!read.ok) return refuse(`${read.why} See: gripbook place --help`)
    const { words, values, flags } = read.options
    if (flags.has('--help')) {
      out(HELP)
      return STATUS.right
    }
    const [path, ...more] = words
    if (path === undefined) return refuse('Which file? gripbook place FILE')
    if (more.length > 0) return refuse(`One file at a time: ${JSON.stringify(more[0])} is one too many.`)
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
}

function somethingIsWrong(face: FaceAnswer): boolean {
  return !face.feasible || face.changes.count > 0
}

function noSuchFace(wanted: string, unit: Unit): string {
  const ids = unit.faces.map(({ id }) => id)
  const near = nearestName(wanted, ids)
  const known = ids.slice(0, 10).join(', ')
  return `There is no face ${JSON.stringify(wanted)} in this unit. ${near ? `Did you mean ${JSON.stringify(near)}?` : `There is: ${known}.`}`
}
