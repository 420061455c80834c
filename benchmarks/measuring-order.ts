/**
 * How many readings it takes until a bench knows what belongs in every hole: taken in the order that the answer advises, in the order of the
 * holes, or all of them. The tray has been measured, nothing of the holes is known but their threads and mouths; a reading comes out within its instrument's
 * uncertainty of the truth.
 */
import type { FaceAnswer } from '../packages/engine/src/placement/answer.ts'
import { place } from '../packages/engine/src/placement/place.ts'
import {
  type GeneratedUnit,
  generateUnit,
  type HoleTruth,
  type KindTruth,
  reading,
} from '../packages/engine/src/placement/testing/generateUnit.ts'
import { loadSolver } from '../packages/engine/src/placement/testing/highs.ts'
import { type Random, random } from '../packages/engine/src/placement/testing/random.ts'
import type { Face, Hole, Kind, Unit, Weigh } from '../packages/engine/src/unit.ts'
import { median, short, table } from './table.ts'

const UNITS = 200

type Wanted = { quantity: string; of: string; place: 'hole' | 'kind'; kind?: string }
const named = ({ quantity, of, place: where, kind }: Wanted) => `${where} ${of} ${quantity} ${kind ?? ''}`

/** Every reading that could still be taken, hole by hole. */
const unread = (face: Face): Wanted[] =>
  face.holes.flatMap((hole) =>
    (['grip', 'threadDepth', hole.ending === 'through' ? 'behind' : 'bottomDepth'] as const)
      .filter((quantity) => hole[quantity] === undefined)
      .map((quantity) => ({ quantity, of: hole.id, place: 'hole' as const })),
  )

/** The unit with one reading more; null where it cannot be taken: the generator knows no truth for it, or the bolt would not seat. */
function taken(
  { values }: GeneratedUnit,
  unit: Unit,
  { quantity, of, place: where, kind }: Wanted,
  seed: number,
): Unit | null {
  // The same reading comes out the same in every order.
  const draw = random(
    seed * 1000 + [...`${of}/${quantity}`].reduce((sum, letter) => sum * 31 + letter.charCodeAt(0), 0),
  )
  const face = unit.faces[0]!
  if (quantity === 'turns') {
    const turns = turnsMade(draw, face, values, of, kind)
    return turns === null
      ? null
      : { ...unit, faces: [{ ...face, trials: [...(face.trials ?? []), { hole: of, kind: kind!, turns }] }] }
  }
  const truth =
    where === 'hole' ? values.holes[of]?.[quantity as keyof HoleTruth] : values.kinds[of]?.[quantity as keyof KindTruth]
  if (truth === undefined) return null
  const figure = { [quantity]: reading(draw, truth) }
  const holes = face.holes.map((hole): Hole => (where === 'hole' && hole.id === of ? { ...hole, ...figure } : hole))
  const kinds = face.kinds!.map((one): Kind => (where === 'kind' && one.id === of ? { ...one, ...figure } : one))
  return { ...unit, faces: [{ ...face, holes, kinds }] }
}

/** Whole turns from the first thread until the head seats; null where the bolt stops before. */
function turnsMade(
  draw: Random,
  face: Face,
  values: GeneratedUnit['values'],
  holeId: string,
  kindId: string | undefined,
): number | null {
  const hole = face.holes.find(({ id }) => id === holeId)
  const kind = face.kinds!.find(({ id }) => id === kindId)
  if (!hole || !kind || hole.thread !== kind.thread) return null
  const { grip, mouth, threadDepth, bottomDepth } = values.holes[holeId]!
  const { length, threadLength, tip } = values.kinds[kind.id]!
  const stickOut = length - grip
  const bottoms = hole.ending !== 'through' && (stickOut > bottomDepth || stickOut - tip > mouth + threadDepth)
  if (stickOut <= mouth + tip || bottoms || stickOut - threadLength > mouth) return null
  const pitch = kind.thread === 'M8' ? 1.25 : 1
  // The thread catches somewhere along the tip, which is longer than a pitch: some whole number of turns always agrees with it.
  const most = Math.floor((stickOut - mouth) / pitch)
  return Math.max(Math.ceil((stickOut - mouth - tip) / pitch), most - draw.whole(0, 1))
}

/** When a bench would stop measuring. */
type Goal = { words: string; weigh: Weigh; reached(answer: FaceAnswer): boolean }

const GOALS: Goal[] = [
  {
    words: 'Until every hole is settled, all placements weighed alike',
    weigh: { habit: false, asFound: false },
    reached: ({ holes }) => Object.values(holes).every(({ verdict }) => verdict === 'settled'),
  },
  {
    words: 'Until every hole is settled or one kind in it is likely to 0.999, design habit and as found weighed in',
    weigh: { habit: true, asFound: true },
    reached: ({ holes }) => Object.values(holes).every(({ likely }) => Math.max(0, ...Object.values(likely)) >= 0.999),
  },
]

export async function measuringOrder(print: (line: string) => void): Promise<void> {
  const solve = await loadSolver()
  const ask = async (unit: Unit) => (await place(unit, { solver: async () => solve })).faces[0]!
  for (const goal of GOALS) await pursue(goal, ask, print)
}

async function pursue(
  goal: Goal,
  ask: (unit: Unit) => Promise<FaceAnswer>,
  print: (line: string) => void,
): Promise<void> {
  const advised: number[] = []
  const inOrder: number[] = []
  const everything: number[] = []
  let never = 0
  let silent = 0
  let failed = 0
  let holes = 0
  let wrong = 0
  for (let seed = 1; seed <= UNITS; seed += 1) {
    const generated = generateUnit(seed, { holes: random(seed).whole(6, 14), unread: 1, coupled: false, stated: true })
    const start: Unit = { ...generated.unit, faces: [{ ...generated.unit.faces[0]!, trials: [], weigh: goal.weigh }] }
    const list = unread(start.faces[0]!)
    const all = list.reduce((unit, wanted) => taken(generated, unit, wanted, seed) ?? unit, start)
    if (!goal.reached(await ask(all))) {
      never += 1
      continue
    }
    const course = await asAdvised(goal, ask, generated, start, seed)
    failed += course.failed
    if (course.silent) silent += 1
    const truth = Object.entries(generated.truth)
    holes += truth.length
    wrong += truth.filter(([hole, kind]) => course.answer.holes[hole]!.best !== kind).length
    advised.push(course.count)

    let unit = start
    let count = 0
    for (const wanted of list) {
      if (goal.reached(await ask(unit))) break
      unit = taken(generated, unit, wanted, seed)!
      count += 1
    }
    inOrder.push(count)
    everything.push(list.length)
  }
  print(`${goal.words}:`)
  print('')
  if (advised.length > 0) {
    const rows = [row('as advised', advised), row('hole by hole', inOrder), row('everything', everything)]
    print(table(['order', 'mean', 'median', 'nine in ten within', 'most'], rows))
    print('')
  }
  print(
    `Readings, over ${advised.length} of ${UNITS} generated units of 6 to 14 holes; the other ${never} do not come there with everything read. ` +
      `In ${silent} units the advice fell silent before, and the holes still in doubt were measured one by one. ` +
      `Turn counts advised that could not be taken because the bolt would not seat, counted as readings all the same: ${failed}. ` +
      `Holes with a wrong bolt as best at the end: ${wrong} of ${holes}.`,
  )
  print('')
}

/** A course of readings at the bench that takes the reading advised; where none is, or it cannot be taken, the next unread one of a hole in doubt. */
async function asAdvised(
  goal: Goal,
  ask: (unit: Unit) => Promise<FaceAnswer>,
  generated: GeneratedUnit,
  start: Unit,
  seed: number,
) {
  let unit = start
  let answer = await ask(unit)
  let count = 0
  let failed = 0
  let silent = false
  const tried = new Set<string>()
  while (!goal.reached(answer)) {
    const wanted = answer.next?.reading
    silent ||= wanted === undefined
    let more: Unit | null = null
    if (wanted !== undefined && !tried.has(named(wanted))) {
      tried.add(named(wanted))
      count += 1
      more = taken(generated, unit, wanted, seed)
      // The bolt stops before its head seats, which no turn count can say: the hole is measured as well.
      if (more === null) failed += 1
    }
    if (more === null) {
      const left = unread(unit.faces[0]!)
      const doubtful = (id: string) =>
        id === wanted?.of || (wanted === undefined && answer.holes[id]!.verdict !== 'settled')
      const instead = left.find(({ of }) => doubtful(of)) ?? left[0]
      if (instead === undefined) break
      more = taken(generated, unit, instead, seed)!
      count += 1
    }
    unit = more
    answer = await ask(unit)
  }
  return { answer, count, failed, silent }
}

function row(name: string, counts: readonly number[]): (string | number)[] {
  const mean = counts.reduce((sum, count) => sum + count, 0) / counts.length
  const sorted = [...counts].sort((a, b) => a - b)
  return [name, short(mean), median(counts), sorted[Math.ceil(0.9 * sorted.length) - 1]!, sorted.at(-1)!]
}
