import { expect, test } from 'vitest'
import type { Quantity } from '../quantity/quantity.ts'
import type { Face, Hole, Kind, Rank, Trial, Unit } from '../unit.ts'
import type { FaceAnswer } from './answer.ts'
import { place } from './place.ts'
import { smallUnit } from './testing/generateFace.ts'
import { loadSolver } from './testing/highs.ts'
import { type Random, random } from './testing/random.ts'

type Names = { hole: (id: string) => string; kind: (id: string) => string }
const asTheyAre: Names = { hole: (id) => id, kind: (id) => id }

/** What of an answer must stay when only names, order or units change: `best` and the moves may differ among equals. */
function lasting(answer: FaceAnswer, { hole, kind }: Names) {
  const sorted = (list: string[]) => list.map(kind).sort()
  return {
    feasible: answer.feasible,
    missing: answer.missing,
    changes: answer.changes.count,
    pairs: answer.pairs.map((pair) => `${hole(pair.hole)} ${kind(pair.kind)} ${pair.verdict} ${pair.line}`).sort(),
    // Which of several conflicts is told first is free; without one every hole is comparable.
    holes: answer.feasible
      ? Object.fromEntries(
          Object.entries(answer.holes).map(([id, one]) => [
            hole(id),
            {
              verdict: one.verdict,
              may: sorted(one.may),
              asFound: one.asFound?.verdict,
              likely: Object.entries(one.likely)
                .filter(([, likely]) => likely > 0)
                .map(([id2, likely]) => `${kind(id2)} ${answer.likelihood.method === 'exact' ? likely.toFixed(9) : ''}`)
                .sort(),
            },
          ]),
        )
      : null,
  }
}

function renamed(unit: Unit, { hole, kind }: Names, draw: Random): Unit {
  const kinds = (list: readonly Kind[]) => draw.shuffled(list).map((one) => ({ ...one, id: kind(one.id) }))
  const faces = unit.faces.map(
    (face): Face => ({
      ...face,
      holes: draw.shuffled(face.holes).map(
        (one): Hole => ({
          ...one,
          id: hole(one.id),
          ...(one.asFound === undefined ? {} : { asFound: one.asFound === 'none' ? 'none' : kind(one.asFound) }),
        }),
      ),
      ...(face.kinds ? { kinds: kinds(face.kinds) } : {}),
      ...(face.ranks
        ? {
            ranks: draw.shuffled(face.ranks).map((rank): Rank => {
              const name = rank.quantity === 'length' ? kind : hole
              return { ...rank, less: name(rank.less), more: name(rank.more) }
            }),
          }
        : {}),
      ...(face.trials
        ? { trials: face.trials.map((one): Trial => ({ ...one, hole: hole(one.hole), kind: kind(one.kind) })) }
        : {}),
    }),
  )
  return { ...unit, faces, ...(unit.kinds ? { kinds: kinds(unit.kinds) } : {}) }
}

/** The same length in the other unit. */
function turned(quantity: Quantity): Quantity {
  if (typeof quantity === 'number') return { value: quantity / 25.4, unit: 'in' }
  if ('nominal' in quantity) return quantity
  const toInch = quantity.unit !== 'in'
  const size = toInch ? 1 / 25.4 : 25.4
  const figures = Object.entries(quantity).flatMap(([name, figure]) =>
    typeof figure === 'number' ? [[name, figure * size]] : [],
  )
  return { ...Object.fromEntries(figures), unit: toInch ? 'in' : 'mm' } as Quantity
}

const LENGTHS = [
  'grip',
  'bracket',
  'gasket',
  'mouth',
  'threadDepth',
  'bottomDepth',
  'behind',
  'minimumEngagement',
  'length',
  'threadLength',
  'tip',
  'washer',
  'stickOut',
  'proud',
  'thickness',
]

/** Every length of a unit in the other unit. */
function inOtherUnits<T>(part: T): T {
  if (Array.isArray(part)) return part.map(inOtherUnits) as T
  if (typeof part !== 'object' || part === null) return part
  return Object.fromEntries(
    Object.entries(part).map(([name, value]) => [
      name,
      LENGTHS.includes(name) && !(typeof value === 'object' && 'thickness' in value)
        ? turned(value as Quantity)
        : inOtherUnits(value),
    ]),
  ) as T
}

test('[PL5] other names and another order change nothing but names and order', async () => {
  const solve = await loadSolver()
  const tools = { solver: async () => solve }
  for (let seed = 1; seed <= 600; seed += 1) {
    const unit = smallUnit(seed)
    const draw = random(seed)
    // Names sort the other way round afterwards.
    const names: Names = { hole: (id) => `z${9 - Number(id.slice(1))}`, kind: (id) => `a${9 - Number(id.slice(1))}` }
    const other = renamed(unit, names, draw)
    const before = lasting((await place(unit, tools)).faces[0]!, names)
    const after = lasting((await place(other, tools)).faces[0]!, asTheyAre)
    expect(after, `seed ${seed}: ${JSON.stringify(unit)}`).toEqual(before)
  }
})

test('[PL6] the same face in inches has the same answer', async () => {
  const solve = await loadSolver()
  const tools = { solver: async () => solve }
  for (let seed = 1; seed <= 600; seed += 1) {
    const unit = smallUnit(seed)
    const other = inOtherUnits(unit)
    const before = lasting((await place(unit, tools)).faces[0]!, asTheyAre)
    const after = lasting((await place(other, tools)).faces[0]!, asTheyAre)
    expect(after, `seed ${seed}: ${JSON.stringify(unit)} and ${JSON.stringify(other)}`).toEqual(before)
  }
})
