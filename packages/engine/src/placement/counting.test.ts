import { expect, test } from 'vitest'
import { cheapestAssignment } from '../maths/assignment.ts'
import { byCounting } from './counting.ts'
import { Coupling } from './coupling.ts'
import type { GroupTask } from './group.ts'
import { byListing, bySampling } from './listing.ts'
import { random } from './testing/random.ts'

/** A coupling that ties nothing, so that listing and drawing keep to the counts alone. */
const untied = new Coupling({ holes: [], kinds: [], ranks: [], trials: [] }, new Uint8Array(0))

/** A group of holes in which `open[hole]` names the bins, with a weight for each pair and each aim. */
function groupOf(
  open: number[][],
  capacity: number[],
  weightOf = (_pair: number, _target: number) => 1,
  targets = [1],
): GroupTask {
  const bins = capacity.length
  const size = open.length * bins
  const may = new Uint8Array(size)
  const cost = new Float64Array(size).fill(Number.POSITIVE_INFINITY)
  open.forEach((some, hole) => {
    for (const b of some) {
      may[hole * bins + b] = 1
      cost[hole * bins + b] = 0
    }
  })
  const task = { items: open.length, bins, cost, capacity }
  // The settled holes bring their bolts with them.
  const whole = [...capacity]
  for (const some of open) if (some.length === 1) whole[some[0]!]!++
  const witness = cheapestAssignment({ ...task, capacity: whole })!.bin
  return {
    task,
    may,
    weights: {
      targets,
      own: new Float64Array(size),
      habit: targets.map((_, t) => Float64Array.from({ length: size }, (_, pair) => -Math.log(weightOf(pair, t)))),
    },
    coupling: untied,
    clashes: [],
    holes: open.map((_, hole) => hole),
    witness,
  }
}

const rounded = (values: Float64Array) => Array.from(values, (value) => Number(value.toFixed(9)) + 0)

test('counted by hand: three holes, two bolts of one kind and one of the other', () => {
  // 0 0 1, 0 1 0, 1 0 0.
  const group = byCounting(
    groupOf(
      [
        [0, 1],
        [0, 1],
        [0, 1],
      ],
      [2, 1],
    ),
  )!
  const each = [Number((2 / 3).toFixed(9)), Number((1 / 3).toFixed(9))]
  expect(rounded(group.share[0]!)).toEqual([...each, ...each, ...each])
  expect(Math.exp(group.logSum[0]!)).toBeCloseTo(3, 12)
  expect(group).toMatchObject({ error: 0, sampled: false, holes: [0, 1, 2] })
})

test('counted by hand: more bolts than holes', () => {
  // All of 0 0, 0 1, 1 0 but not 1 1.
  const group = byCounting(
    groupOf(
      [
        [0, 1],
        [0, 1],
      ],
      [2, 1],
    ),
  )!
  expect(Math.exp(group.logSum[0]!)).toBeCloseTo(3, 12)
  expect(rounded(group.share[0]!)).toEqual([0.666666667, 0.333333333, 0.666666667, 0.333333333])
})

test('no shortage: every hole has its own choice', () => {
  const group = byCounting(
    groupOf(
      [
        [0, 1],
        [0, 1, 2],
      ],
      [2, Number.POSITIVE_INFINITY, 1],
    ),
  )!
  expect(Math.exp(group.logSum[0]!)).toBeCloseTo(6, 12)
  expect(rounded(group.share[0]!)).toEqual([0.5, 0.5, 0, 0.333333333, 0.333333333, 0.333333333])
})

test('a settled hole has its bolt already and takes none of what is left', () => {
  const group = byCounting(groupOf([[0], [0, 1], [0, 1]], [1, 1]))!
  expect(Math.exp(group.logSum[0]!)).toBeCloseTo(2, 12)
  expect(rounded(group.share[0]!)).toEqual([1, 0, 0.5, 0.5, 0.5, 0.5])
})

test('weights multiply along a placement, and each aim is summed apart', () => {
  // Pairs 0 to 3 weigh 1, 2, 3, 4 for the first aim, and all 1 for the second. 0 then 1: 1 × 4; 1 then 0: 2 × 3.
  const group = byCounting(
    groupOf(
      [
        [0, 1],
        [0, 1],
      ],
      [1, 1],
      (pair, t) => (t === 0 ? pair + 1 : 1),
      [0.5, 0.5],
    ),
  )!
  expect(rounded(group.share[0]!)).toEqual([0.4, 0.6, 0.6, 0.4])
  expect(rounded(group.share[1]!)).toEqual([0.5, 0.5, 0.5, 0.5])
  expect(Array.from(group.logSum, (log) => Number(Math.exp(log).toFixed(9)))).toEqual([10, 2])
})

test('very small weights do not run out of range', () => {
  const open = Array.from({ length: 40 }, () => [0, 1])
  const group = byCounting(groupOf(open, [20, 20], (pair) => (pair % 2 === 0 ? 1e-30 : 3e-30)))!
  // 40 over 20 ways, each of weight (1e-30)^20 × (3e-30)^20.
  const ways = Math.log(137_846_528_820)
  expect(group.logSum[0]! / (ways + 20 * Math.log(3) + 40 * Math.log(1e-30))).toBeCloseTo(1, 12)
  for (const share of group.share[0]!) expect(share).toBeCloseTo(0.5, 9)
})

test('too many states are refused, and a little fewer are not', () => {
  const even = (holes: number, bins: number) =>
    groupOf(
      Array.from({ length: holes }, () => Array.from({ length: bins }, (_, b) => b)),
      new Array<number>(bins).fill(2),
    )
  // Two of each kind: 3 to the power of the kinds.
  expect(byCounting(even(22, 11))).toBeNull()
  expect(byCounting(even(16, 8))).not.toBeNull()
})

const DRAWN = Array.from({ length: 40 }, (_, i) => i + 1)

/** A random group that can be filled: holes with 1 to 3 kinds of 4, counts that are just enough for one way or a little more. */
function drawnGroup(seed: number): GroupTask {
  const draw = random(seed)
  const holes = draw.whole(2, 6)
  const bins = 4
  const way = Array.from({ length: holes }, () => draw.whole(0, bins - 1))
  const open = way.map((b) => [...new Set([b, ...draw.shuffled([0, 1, 2, 3]).slice(0, draw.whole(0, 2))])].sort())
  const capacity = Array.from(
    { length: bins },
    (_, b) => way.filter((one, hole) => one === b && open[hole]!.length > 1).length + draw.whole(0, 1),
  )
  const weights = Array.from({ length: holes * bins * 2 }, () => draw.between(0.2, 3))
  return groupOf(open, capacity, (pair, t) => weights[pair * 2 + t]!, [0.5, 0.5])
}

test('counting and listing give the same sums and shares', () => {
  for (const seed of DRAWN) {
    const counted = byCounting(drawnGroup(seed))!
    const listed = byListing(drawnGroup(seed))!
    for (const t of [0, 1]) {
      expect(counted.logSum[t], `seed ${seed}`).toBeCloseTo(listed.logSum[t]!, 9)
      expect(rounded(counted.share[t]!), `seed ${seed}`).toEqual(rounded(listed.share[t]!))
    }
    expect(listed).toMatchObject({ error: 0, sampled: false })
  }
})

test('drawing comes near to counting, within the standard error that it says', () => {
  let within = 0
  let all = 0
  for (const seed of DRAWN) {
    const counted = byCounting(drawnGroup(seed))!
    const drawn = bySampling(drawnGroup(seed))
    expect(drawn.sampled).toBe(true)
    for (const t of [0, 1]) {
      expect(drawn.logSum[t], `seed ${seed}`).toBeCloseTo(counted.logSum[t]!, 0)
      drawn.share[t]!.forEach((share, pair) => {
        const away = Math.abs(share - counted.share[t]![pair]!)
        expect(away, `seed ${seed}`).toBeLessThanOrEqual(4.5 * drawn.error + 1e-9)
        if (away <= 2 * drawn.error + 1e-9) within++
        all++
      })
    }
  }
  expect(within / all).toBeGreaterThan(0.95)
})

test('kinds of which there are enough make no states, settled holes left aside', () => {
  // A ring of 18 kinds, two of each, in which each hole may have its own or the next: two users of each kind. Half a million ways.
  const ring = Array.from({ length: 18 }, (_, i) => [i, (i + 1) % 18])
  const two = new Array<number>(18).fill(2)
  expect(byCounting(groupOf(ring, two))!.logSum[0]).toBeCloseTo(18 * Math.log(2), 9)
  const settled = Array.from({ length: 18 }, (_, i) => [i])
  expect(byCounting(groupOf([...ring, ...settled], two))!.logSum[0]).toBeCloseTo(18 * Math.log(2), 9)
})

test('listing keeps weights far apart in range', () => {
  // 1e-200 twice against 1.
  const weight = (pair: number) => (pair === 0 || pair === 2 ? 1e-200 : 1)
  const listed = byListing(
    groupOf(
      [
        [0, 1],
        [0, 1],
      ],
      [2, 2],
      weight,
    ),
  )!
  expect(rounded(listed.share[0]!)).toEqual([0, 1, 0, 1])
  expect(listed.logSum[0]).toBeCloseTo(0, 9)
})

test('a clash counts only where all of its pairs are chosen now, not where one was chosen before', () => {
  const group = groupOf(
    [
      [0, 1],
      [0, 1],
    ],
    [2, 2],
  )
  group.clashes.push([1, 3])
  // 0 0, 0 1 and 1 0.
  expect(Math.exp(byListing(group)!.logSum[0]!)).toBeCloseTo(3, 9)
  const turned = {
    ...groupOf(
      [
        [0, 1],
        [0, 1],
      ],
      [2, 2],
    ),
    holes: [1, 0],
    clashes: [[1, 2]],
  }
  expect(Math.exp(byListing(turned)!.logSum[0]!)).toBeCloseTo(3, 9)
})

test('drawing needs nothing that ties', () => {
  const drawn = bySampling({
    ...groupOf(
      [
        [0, 1],
        [0, 1],
      ],
      [1, 1],
    ),
    coupling: null,
  })
  expect(rounded(drawn.share[0]!)[0]).toBeCloseTo(0.5, 0)
  expect(drawn.logSum[0]).toBeCloseTo(Math.log(2), 1)
})

test('the standard error is that of the draws that count', () => {
  // Each aim has its own kind, so half of the 500 draws count for it: p(1 − p) is 0.001, over 250.
  const group = groupOf([[0, 1]], [1, 1], (pair, t) => (pair === t ? 1 : 0.001), [0.5, 0.5])
  const drawn = bySampling({ ...group, may: Uint8Array.from([1, 1]) })
  expect(drawn.error).toBeGreaterThan(0.0017)
  expect(drawn.error).toBeLessThan(0.0024)
})

test('where every draw clashes the known placement is told, whichever it is', () => {
  const group = groupOf(
    [
      [0, 1],
      [0, 1],
    ],
    [2, 2],
  )
  group.clashes.push([0], [1])
  const found = bySampling({ ...group, witness: Int32Array.from([1, 1]) })
  expect(Array.from(found.share[0]!)).toEqual([0, 1, 0, 1])
  expect(found).toMatchObject({ error: 0.5, sampled: true })
})

test('listing ends after ten thousand placements, and after fifty thousand steps that lead to few', () => {
  const free = (holes: number) => Array.from({ length: holes }, () => [0, 1])
  const enough = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  expect(byListing(groupOf(free(13), enough))!.logSum[0]).toBeCloseTo(13 * Math.log(2), 9)
  expect(byListing(groupOf(free(14), enough))).toBeNull()
  // The last hole is settled and clashes with one kind in each of four holes: of 32,768 ways to come there 2,048 go on.
  const clashing = (holes: number) => {
    const group = groupOf([...free(holes), [0]], enough)
    for (const hole of [0, 1, 2, 3]) group.clashes.push([hole * 2, holes * 2])
    return byListing(group)
  }
  expect(clashing(14)!.logSum[0]).toBeCloseTo(10 * Math.log(2), 9)
  expect(clashing(15)).toBeNull()
})
