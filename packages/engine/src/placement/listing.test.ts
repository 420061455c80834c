import { expect, test } from 'vitest'
import type { Face, Hole, Kind } from '../unit.ts'
import type { GroupTask } from './group.ts'
import { byListing, bySampling } from './listing.ts'
import { problemsOf } from './problem.ts'
import { plainHole, plainKind, plainUnit } from './testing/plainFace.ts'
import { fewestEmpty, mayPairs, openTray, taskOf } from './tray.ts'
import { weightsOf } from './weights.ts'

/** The whole face as one group, with what ties it, and every complete placement of the same weight unless `more` says otherwise. */
async function groupOf(holes: Hole[], kinds: Kind[], more: Partial<Face> = {}): Promise<GroupTask> {
  const [problem] = problemsOf(plainUnit(holes, kinds, more))
  const tray = openTray(problem!, {})
  const { empty, placement } = (await fewestEmpty(tray))!
  const may = await mayPairs(tray, empty, placement)
  const task = taskOf(tray, empty, () => 0)
  const capacity = Float64Array.from(task.capacity)
  for (let hole = 0; hole < task.items; hole++) {
    const open = [...Array(task.bins).keys()].filter((b) => may[hole * task.bins + b])
    if (open.length === 1) capacity[open[0]!]!--
  }
  return {
    task: { ...task, capacity },
    may,
    weights: weightsOf(problem!, tray.judged, tray.bins),
    coupling: tray.coupling,
    clashes: [],
    holes: holes.map((_, hole) => hole),
    witness: placement.bin,
  }
}

const a = (count?: number) => plainKind('a', 30, count)
const c = (count?: number) => plainKind('c', 40, count)
const ranks = [{ quantity: 'grip' as const, less: '1', more: '2' }]
const rounded = (values: Float64Array) => Array.from(values, (value) => Number(value.toFixed(9)))

test('the placements that keep a rank line are listed, and the clash of the others is learnt', async () => {
  const group = await groupOf([plainHole('1'), plainHole('2')], [a(), c()], { ranks })
  const found = byListing(group)!
  // a a, a c and c c; the last bin, left empty, never.
  expect(rounded(found.share[0]!)).toEqual([0.666666667, 0.333333333, 0, 0.333333333, 0.666666667, 0])
  expect(Math.exp(found.logSum[0]!)).toBeCloseTo(3, 12)
  expect(found).toMatchObject({ holes: [0, 1], error: 0, sampled: false })
  // c (1) in hole 0 with a (0) in hole 1.
  expect(group.clashes).toEqual([[1, 3]])
})

test('counts hold too: with one of each the rank line leaves one way', async () => {
  const found = byListing(await groupOf([plainHole('1'), plainHole('2')], [a(1), c(1)], { ranks }))!
  expect(rounded(found.share[0]!)).toEqual([1, 0, 0, 0, 1, 0])
  expect(found.logSum[0]).toBeCloseTo(0, 12)
})

test('a settled hole does not take what is left for the others', async () => {
  // The first ×30 is settled in 3; one more and one ×40 are left for 1 and 2.
  const holes = [plainHole('1'), plainHole('2'), plainHole('3', 20)]
  const found = byListing(await groupOf(holes, [a(2), c(2)], { ranks }))!
  // a c and c c (a a would need three).
  expect(rounded(found.share[0]!)).toEqual([0.5, 0.5, 0, 0, 1, 0, 1, 0, 0])
})

test('known clashes are kept to without asking again', async () => {
  const group = await groupOf([plainHole('1'), plainHole('2')], [a(), c()], { ranks })
  // Told beforehand that a (0) and a (3) clash as well: a c and c c are left.
  group.clashes.push([0, 3])
  expect(rounded(byListing(group)!.share[0]!)).toEqual([0.5, 0.5, 0, 0, 1, 0])
  group.clashes.push([4])
  expect(group.clashes).toContainEqual([1, 3])
})

test('more than ten thousand placements are not listed', async () => {
  const many = (count: number) => [
    plainHole('1'),
    plainHole('2'),
    ...Array.from({ length: count }, (_, i) => plainHole(`${i + 3}`, 28.5)),
  ]
  const kinds = [plainKind('b', 35), plainKind('c', 40)]
  // Two ways for each hole of known grip, three for the two that the line ties.
  expect(byListing(await groupOf(many(8), [a(1), ...kinds], { ranks }))).not.toBeNull()
  expect(byListing(await groupOf(many(13), [a(1), ...kinds], { ranks }))).toBeNull()
})

test('drawing keeps to counts, rank lines and settled bolts, and comes near to listing', async () => {
  const holes = [
    plainHole('1'),
    plainHole('2'),
    plainHole('3', 20),
    plainHole('4', 31),
    plainHole('5', 28.5),
    plainHole('6', 23.5),
  ]
  const kinds = [a(3), plainKind('b', 35, 2), c(3)]
  const listed = byListing(await groupOf(holes, kinds, { ranks }))!
  const group = await groupOf(holes, kinds, { ranks })
  const drawn = bySampling(group)
  expect(drawn.sampled).toBe(true)
  expect(drawn.error).toBeGreaterThan(0)
  expect(drawn.error).toBeLessThan(0.04)
  drawn.share[0]!.forEach((share, pair) => {
    expect(Math.abs(share - listed.share[0]![pair]!)).toBeLessThan(4 * drawn.error)
    if (listed.share[0]![pair] === 0) expect(share).toBe(0)
  })
  // The clash of the rank line is learnt on the way, and the sum of the ways is near.
  expect(group.clashes.length).toBeGreaterThan(0)
  expect(drawn.logSum[0]!).toBeCloseTo(listed.logSum[0]!, 0)
  expect(Math.abs(drawn.logSum[0]! - listed.logSum[0]!)).toBeLessThan(0.15)
})

test('drawing is the same every time', async () => {
  const face = [[plainHole('1'), plainHole('2')], [a(), c()], { ranks }] as const
  const once = bySampling(await groupOf([...face[0]], [...face[1]], face[2]))
  const again = bySampling(await groupOf([...face[0]], [...face[1]], face[2]))
  expect(once).toEqual(again)
})

test('drawing by weight: a hole that is nearly certain is drawn nearly always, and its share is right', async () => {
  const more = { ranks, weigh: { habit: false } }
  const holes = [plainHole('1', undefined, { unitsBefore: { a: 99 } }), plainHole('2')]
  const listed = byListing(await groupOf(holes, [a(), c()], more))!
  const drawn = bySampling(await groupOf(holes, [a(), c()], more))
  expect(drawn.error).toBeLessThan(0.03)
  drawn.share[0]!.forEach((share, pair) => {
    expect(Math.abs(share - listed.share[0]![pair]!)).toBeLessThan(4 * drawn.error)
  })
})

test('where every draw clashes the one placement that is known is all that can be said', async () => {
  const group = await groupOf([plainHole('1'), plainHole('2')], [a(), c()], { ranks })
  group.clashes.push([0], [1])
  const found = bySampling(group)
  const known = new Float64Array(6)
  known[group.witness[0]!] = 1
  known[3 + group.witness[1]!] = 1
  expect(found).toMatchObject({ error: 0.5, sampled: true })
  expect(found.share[0]).toEqual(known)
})
