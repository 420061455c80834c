import { describe, expect, test } from 'vitest'
import { thinPlate } from '../../published/easy-cover.ts'
import type { Quantity } from '../quantity/quantity.ts'
import type { Face, Point, Unit } from '../unit.ts'
import type { TighteningAnswer, TighteningAsked, TighteningProgress } from './answer.ts'
import { coverUnder } from './coverUnder.ts'
import { planTightening } from './planTightening.ts'

const EASY: Point[] = [
  [10, 10],
  [60, 10],
  [110, 10],
  [110, 70],
  [60, 70],
  [10, 70],
]
const holes = EASY.map((at, i) => ({ id: String(i), thread: 'M6', at }))
const easy = (more: Partial<Face> = {}): Unit => ({
  gripbook: 'unit/1',
  faces: [
    { id: 'other', holes: [{ id: '1', thread: 'M6' }] },
    {
      id: 'easy',
      holes,
      cover: {
        outline: [
          [0, 0],
          [120, 0],
          [120, 80],
          [0, 80],
        ],
        thickness: 8,
        young: 110_000,
        poisson: 0.25,
      },
      bed: { stiffness: 5 },
      boltStiffness: 200_000,
      snug: true,
      clamp: 8_000,
      ...more,
    },
  ],
})

const square = (x: number, y: number, side: number): Point[] => [
  [x, y],
  [x + side, y],
  [x + side, y + side],
  [x, y + side],
]

function planned(unit: Unit, asked?: TighteningAsked): TighteningAnswer {
  const read = planTightening(unit, 'easy', asked)
  if (!read.ok) throw new Error(JSON.stringify(read.faults))
  return read.value
}

test('the stated order comes first as it was stated, and rules; the compliance is that of other programs', () => {
  const order = [
    { share: 0.5, sequence: ['0', '3', '2', '5', '1', '4'] },
    { share: 1, sequence: ['0', '3', '2', '5', '1', '4'] },
  ]
  const answer = planned(easy({ order }))
  const stated = answer.orders[0]!
  expect(stated.kind).toBe('stated')
  expect(stated.steps.map(({ hole, share, pass }) => [hole, share, pass])).toEqual(
    order.flatMap(({ share, sequence }, p) => sequence.map((hole) => [hole, share, p + 1])),
  )
  expect(answer.advice).toEqual({ why: 'stated', order: 0 })
  const largest = Math.max(...thinPlate.rows.map(([, , value]) => Number(value)))
  for (const [i, j, value] of thinPlate.rows)
    expect(Math.abs(answer.compliance[Number(i)]![Number(j)]! - Number(value)) / largest).toBeLessThan(1e-3)
  const { loads } = stated.steps[stated.steps.length - 1]!
  const mean = loads.reduce((sum, load) => sum + load, 0) / loads.length
  expect(stated.spread).toBeCloseTo((Math.max(...loads) - Math.min(...loads)) / mean, 9)
  expect(stated.spreads[1]).toBe(stated.spread)
})

test('without a stated order the found one is advised where it is truly better, and no order is better than it', () => {
  const answer = planned(easy())
  const found = answer.orders.findIndex(({ kind }) => kind === 'found')
  const { spread } = answer.orders[answer.advice.order]!
  expect(found).toBe(answer.orders.length - 1)
  for (const order of answer.orders) expect(answer.orders[found]!.spread).toBeLessThanOrEqual(order.spread)
  expect(spread).toBeLessThan(1.12 * answer.orders[found]!.spread)
  for (const { steps, passes, lastRounds } of answer.orders) {
    expect(passes.map(({ share }) => share)).toEqual([0.3, 0.6, 1])
    for (const { sequence } of passes) expect([...sequence].sort()).toEqual(['0', '1', '2', '3', '4', '5'])
    expect(steps).toHaveLength(18)
    expect(lastRounds.still).toBe(true)
    for (const load of lastRounds.loads) expect(load).toBeGreaterThan(0.99 * 8_000)
  }
})

test('the same question gets the same answer; shares are the ones that were asked; without a search there is none', () => {
  expect(planned(easy())).toEqual(planned(easy()))
  const answer = planned(easy(), { shares: [0.5, 1], search: false })
  expect(answer.orders.some(({ kind }) => kind === 'found')).toBe(false)
  expect(answer.orders[0]!.passes.map(({ share }) => share)).toEqual([0.5, 1])
})

test('a bed that is a range is tried at its ends, and the search counts the worst', () => {
  const answer = planned(easy({ bed: { stiffness: { atLeast: 2, atMost: 32 } } }))
  expect(answer.bed).toEqual({ soft: 2, middle: 8, stiff: 32 })
  for (const { overBed } of answer.orders) expect(overBed).toHaveLength(3)
  const worst = answer.orders.map(({ overBed }) => Math.max(...overBed))
  expect(worst[worst.length - 1]).toBeLessThanOrEqual(Math.min(...worst.slice(0, -1)) * 1.001)
})

test('bolts of a later visit hold nothing before it and come onto what is tight', () => {
  const late = holes.map((hole, i) => (i === 1 || i === 4 ? { ...hole, visit: 2 } : hole))
  const answer = planned(easy({ holes: late }), { search: false })
  const { steps, passes } = answer.orders[0]!
  expect(passes.map(({ visit }) => visit)).toEqual([1, 1, 1, 2, 2, 2])
  for (const { pass, loads } of steps) if (pass <= 3) expect([loads[1], loads[4]]).toEqual([0, 0])
  const last = steps[steps.length - 1]!.loads
  expect(Math.min(last[1]!, last[4]!)).toBeGreaterThan(0)
})

describe('targets', () => {
  test('come from the clamp, else from each bolt’s torque, else from the usual torque of the size, and say so', () => {
    const what = (unit: Unit) => {
      const { bolts, assumptions } = planned(unit, { search: false })
      return { targets: bolts.map(({ target }) => Math.round(target)), said: assumptions.map((one) => one.what) }
    }
    expect(what(easy()).targets).toEqual(Array(6).fill(8_000))
    const { clamp: _, ...rest } = easy().faces[1]!
    const groups = holes.map((hole, i) => (i < 2 ? { ...hole, torque: 5 } : hole))
    const torqued = what({ ...easy(), faces: [{ ...rest, holes: groups, torque: 10 }] })
    expect(torqued.targets[0]! * 2).toBeCloseTo(torqued.targets[3]!, -1)
    expect(torqued.said).toContain('torque')
    expect(what({ ...easy(), faces: [rest] }).said).toContain('usual torque')
  })

  test('groups of different torque are even when each holds its own share', () => {
    const { clamp: _, ...rest } = easy().faces[1]!
    const groups = holes.map((hole, i) => (i % 2 === 0 ? { ...hole, torque: 5 } : hole))
    const answer = planned({ ...easy(), faces: [{ ...rest, holes: groups, torque: 10, bed: { stiffness: 100_000 } }] })
    for (const { spread } of answer.orders) expect(spread).toBeLessThan(0.02)
  })
})

test('stated lines are judged each by its name, and the greatest is the bow', () => {
  const lines = [
    { name: 'valve', from: [20, 40] as Point, to: [100, 40] as Point },
    { name: 'edge', from: [2, 2] as Point, to: [118, 2] as Point },
  ]
  const cover = { ...easy().faces[1]!.cover!, lines }
  for (const { bow, bows } of planned(easy({ cover }), { search: false }).orders) {
    expect(bows.map(({ name }) => name)).toEqual(['valve', 'edge'])
    expect(bow).toBe(Math.max(...bows.map((one) => one.bow)))
    expect(bow).toBeGreaterThan(0)
  }
})

test('surfaces that settle leave less', () => {
  const [plain] = planned(easy(), { search: false }).orders
  const [rough] = planned(easy({ embedment: { roughness: 25, interfaces: 2 } }), { search: false }).orders
  const sum = (loads: readonly number[]) => loads.reduce((all, load) => all + load, 0)
  expect(plain!.settled).toBeUndefined()
  expect(sum(rough!.settled!.loads)).toBeLessThan(sum(rough!.steps[rough!.steps.length - 1]!.loads))
})

test('what is assumed is said: an estimate, a flat cover, holes that the stated order leaves out, a bed too stiff for a plate', () => {
  const said = planned(easy({ order: [{ share: 1, sequence: ['0', '1', '2', '3'] }], bed: { stiffness: 20_000 } }), {
    search: false,
  }).assumptions
  expect(said).toContainEqual({ what: 'estimate' })
  expect(said).toContainEqual({ what: 'flat' })
  expect(said).toContainEqual({ what: 'left out', holes: ['4', '5'] })
  expect(said.map(({ what }) => what)).toContain('thick')
})

test('a thickness in inches is the same in mm, and of a range the middle is taken and said', () => {
  const { outline, young, poisson } = easy().faces[1]!.cover!
  const thick = (thickness: Quantity, region: Quantity) => {
    const regions = [{ outline: square(20, 20, 30), thickness: region }]
    const answer = planned(easy({ cover: { outline, young: young!, poisson: poisson!, thickness, regions } }), {
      search: false,
    })
    return { ...answer, assumptions: answer.assumptions.map(({ what }) => what) }
  }
  const inMm = thick(6.35, 12)
  expect(inMm.assumptions).not.toContain('thickness')
  expect(thick({ value: 0.25, unit: 'in' }, 12)).toEqual(inMm)
  const ranges = thick({ value: 6.35, plusMinus: 0.1 }, { atLeast: 11, atMost: 13 })
  expect(ranges).toEqual({
    ...inMm,
    assumptions: ['estimate', 'flat', 'thickness', ...inMm.assumptions.slice(2)],
  })
})

test('a cover that lifts off says by how much that changes the loads', () => {
  const said = planned(easy({ snug: false, order: [{ share: 1, sequence: ['0', '1', '2', '3', '4', '5'] }] }), {
    search: false,
  }).assumptions
  expect(said.find(({ what }) => what === 'lift-off')).toMatchObject({
    share: expect.toSatisfy((share: number) => share > 0.3),
  })
})

test('before the search all that is known without it is told, once', () => {
  const heard: TighteningAnswer[] = []
  const read = planTightening(easy(), 'easy', {}, (_, soFar) => {
    if (soFar !== undefined) heard.push(soFar)
  })
  expect(read.ok).toBe(true)
  expect(heard).toEqual([planned(easy(), { search: false })])
})

test('progress only goes on, and faults come back with the place of the face', () => {
  const heard: TighteningProgress[] = []
  planTightening(easy(), 'easy', {}, (progress) => heard.push(progress))
  expect(new Set(heard.map(({ what }) => what))).toEqual(new Set(['plate', 'orders', 'search']))
  for (const { done } of heard) expect(done >= 0 && done <= 1).toBe(true)
  expect(planTightening(easy({ clamp: 1, holes: holes.slice(0, 1) }), 'easy')).toMatchObject({
    ok: false,
    faults: [{ path: ['faces', 1, 'holes'], code: 'tightening-needs' }],
  })
})

describe('the cover under its bolts', () => {
  const map = (loads: number[], more: Partial<Face> = {}) => {
    const read = coverUnder(easy(more), 'easy', loads)
    if (!read.ok) throw new Error(JSON.stringify(read.faults))
    return read.value
  }

  test('presses all that the bolts hold, mostly where they are', () => {
    const { pressure, step, columns, rows, from } = map(Array(6).fill(8_000))
    expect(pressure).toHaveLength(columns * rows)
    const sum = pressure.reduce<number>((all, p) => all + (p ?? 0), 0) * step ** 2
    expect(sum / 48_000).toBeCloseTo(1, 1)
    const at = ([x, y]: Point) =>
      pressure[Math.round((y - from[1]) / step) * columns + Math.round((x - from[0]) / step)]!
    expect(at([10, 10])).toBeGreaterThan(at([60, 40]))
  })

  test('lifts off where nothing holds it', () => {
    const { gap, pressure, columns } = map([8_000, 0, 0, 0, 0, 0])
    expect(Math.max(...gap.map((one) => one ?? 0))).toBeGreaterThan(0.001)
    expect(pressure[pressure.length - 1]).toBe(0)
    expect(gap[columns - 1]).toBeGreaterThan(0)
  })

  test('is blank over openings and hollows', () => {
    const hollow: Point[] = [
      [40, 30],
      [80, 30],
      [80, 50],
      [40, 50],
    ]
    const { pressure, columns, rows } = map(Array(6).fill(8_000), { bed: { stiffness: 5, hollows: [hollow] } })
    expect(pressure[Math.floor(rows / 2) * columns + Math.floor(columns / 2)]).toBeNull()
    expect(pressure[0]).not.toBeNull()
  })
})
