/**
 * How many readings it takes until every hole is settled: taken in the order that the answer advises, in the order of the holes, or all of
 * them. The tray has been measured, nothing of the holes is known but their threads and mouths; a reading comes out within its instrument's
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
import type { Face, Hole, Kind, Unit } from '../packages/engine/src/unit.ts'
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

const settled = (answer: FaceAnswer) => Object.values(answer.holes).every(({ verdict }) => verdict === 'settled')

export async function measuringOrder(print: (line: string) => void): Promise<void> {
  const solve = await loadSolver()
  const ask = async (unit: Unit) => (await place(unit, { solver: async () => solve })).faces[0]!
  const advised: number[] = []
  const inOrder: number[] = []
  const everything: number[] = []
  let never = 0
  let stoppedEarly = 0
  let wrong = 0
  for (let seed = 1; seed <= UNITS; seed += 1) {
    const generated = generateUnit(seed, { holes: random(seed).whole(6, 14), unread: 1, coupled: false, stated: true })
    const start: Unit = { ...generated.unit, faces: [{ ...generated.unit.faces[0]!, trials: [] }] }
    const list = unread(start.faces[0]!)
    const all = list.reduce((unit, wanted) => taken(generated, unit, wanted, seed) ?? unit, start)
    if (!settled(await ask(all))) {
      never += 1
      continue
    }
    let unit = start
    let answer = await ask(unit)
    let count = 0
    const done = new Set<string>()
    while (!settled(answer) && answer.next !== null && !done.has(named(answer.next.reading))) {
      const more = taken(generated, unit, answer.next.reading, seed)
      if (more === null) break
      done.add(named(answer.next.reading))
      unit = more
      count += 1
      answer = await ask(unit)
    }
    if (!settled(answer)) {
      stoppedEarly += 1
      continue
    }
    if (Object.entries(generated.truth).some(([hole, kind]) => answer.holes[hole]!.best !== kind)) wrong += 1
    advised.push(count)

    unit = start
    answer = await ask(unit)
    count = 0
    for (const wanted of list) {
      if (settled(answer)) break
      unit = taken(generated, unit, wanted, seed)!
      count += 1
      answer = await ask(unit)
    }
    inOrder.push(count)
    everything.push(list.length)
  }
  const row = (name: string, counts: readonly number[]) => {
    const mean = counts.reduce((sum, count) => sum + count, 0) / counts.length
    const sorted = [...counts].sort((a, b) => a - b)
    return [name, short(mean), median(counts), sorted[Math.ceil(0.9 * sorted.length) - 1]!, sorted.at(-1)!]
  }
  if (advised.length > 0)
    print(
      table(
        ['order', 'mean', 'median', 'nine in ten within', 'most'],
        [row('as advised', advised), row('hole by hole', inOrder), row('everything', everything)],
      ),
    )
  print('')
  print(
    `Readings until every hole is settled, over ${advised.length} of ${UNITS} generated units of 6 to 14 holes. Left out: ${never} that stay open with everything read, ` +
      `${stoppedEarly} in which the advice ended before every hole was settled. Settled on a wrong bolt: ${wrong}.`,
  )
}
