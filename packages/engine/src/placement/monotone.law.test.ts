import { expect, test } from 'vitest'
import { intervalOf } from '../quantity/interval.ts'
import type { Quantity } from '../quantity/quantity.ts'
import type { Face, Unit } from '../unit.ts'
import type { FaceAnswer } from './answer.ts'
import { place } from './place.ts'
import { smallUnit } from './testing/generateFace.ts'
import { loadSolver } from './testing/highs.ts'
import { type Random, random } from './testing/random.ts'

/** What has no default: to state it is to know more. A tip or a thread length replaces its default, which need not hold it. */
const OF_HOLE = ['grip', 'threadDepth', 'bottomDepth', 'behind'] as const

const written = (lo: number, hi: number): Quantity => {
  const atLeast = Number(lo.toFixed(6))
  return hi === Number.POSITIVE_INFINITY ? { atLeast } : { atLeast, atMost: Number(hi.toFixed(6)) }
}

/** An interval inside the given one. */
function narrower(draw: Random, quantity: Quantity | undefined): Quantity {
  const { lo, hi } = intervalOf(quantity)
  const end = Math.min(hi, Math.max(lo, 60))
  const from = draw.chance(0.3) ? lo : draw.between(lo, end)
  if (draw.chance(0.3)) return written(from, hi)
  return written(from, draw.between(from, end))
}

/** An interval around the given one. */
function wider(draw: Random, quantity: Quantity): Quantity {
  const { lo, hi } = intervalOf(quantity)
  return written(
    Math.max(0, lo - draw.between(0, 3)),
    draw.chance(0.2) ? Number.POSITIVE_INFINITY : hi + draw.between(0, 3),
  )
}

function withChange(draw: Random, unit: Unit, change: (quantity: Quantity | undefined) => Quantity | undefined): Unit {
  const face: Face = unit.faces[0]!
  const kinds = unit.kinds ?? face.kinds!
  if (draw.chance(0.3)) {
    const at = draw.whole(0, kinds.length - 1)
    const length = change(kinds[at]!.length)
    const changed = kinds.map((kind, other) => (other === at && length !== undefined ? { ...kind, length } : kind))
    return unit.kinds ? { ...unit, kinds: changed } : { ...unit, faces: [{ ...face, kinds: changed }] }
  }
  const at = draw.whole(0, face.holes.length - 1)
  const quantity = draw.pick(OF_HOLE)
  const value = change(face.holes[at]![quantity])
  const holes = face.holes.map((hole, other) =>
    other === at && value !== undefined ? { ...hole, [quantity]: value } : hole,
  )
  return { ...unit, faces: [{ ...face, holes }] }
}

const grown = (small: FaceAnswer, large: FaceAnswer) =>
  Object.entries(small.holes).flatMap(([id, { may }]) =>
    may.filter((kind) => !large.holes[id]!.may.includes(kind)).map((kind) => `${id} ${kind}`),
  )

async function compare(
  seeds: number,
  pair: (draw: Random, unit: Unit) => { exacter: Unit; vaguer: Unit },
): Promise<{ compared: number; shrunk: number }> {
  const solve = await loadSolver()
  const tools = { solver: async () => solve }
  let compared = 0
  let shrunk = 0
  for (let seed = 1; seed <= seeds; seed += 1) {
    const { exacter, vaguer } = pair(random(seed), smallUnit(seed))
    const more = (await place(exacter, tools)).faces[0]!
    const less = (await place(vaguer, tools)).faces[0]!
    const said = `seed ${seed}: ${JSON.stringify({ exacter, vaguer })}`
    if (!more.feasible) continue
    expect(less.feasible, said).toBe(true)
    expect(grown(more, less), said).toEqual([])
    compared += 1
    if (grown(less, more).length > 0) shrunk += 1
  }
  return { compared, shrunk }
}

test('[PL3] a reading more never enlarges a may-set', async () => {
  const { compared, shrunk } = await compare(1200, (draw, unit) => ({
    vaguer: unit,
    exacter: withChange(draw, unit, (quantity) => narrower(draw, quantity)),
  }))
  expect(compared).toBeGreaterThan(300)
  expect(shrunk).toBeGreaterThan(30)
})

test('[PL4] a wider interval never shrinks a may-set', async () => {
  const { compared, shrunk } = await compare(1200, (draw, unit) => ({
    exacter: unit,
    vaguer: withChange(draw, unit, (quantity) => (quantity === undefined ? undefined : wider(draw, quantity))),
  }))
  expect(compared).toBeGreaterThan(300)
  expect(shrunk).toBeGreaterThan(15)
})
