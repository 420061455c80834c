import { expect, test } from 'vitest'
import type { Hole, Kind } from '../unit.ts'
import { likelihood } from './likelihood.ts'
import { place } from './place.ts'
import { Stopped } from './solver.ts'
import { plainHole, plainKind, plainUnit } from './testing/plainFace.ts'

type More = Parameters<typeof plainUnit>[2]

async function faceOf(holes: Hole[], kinds: Kind[], more: More = {}) {
  return (await place(plainUnit(holes, kinds, more))).faces[0]!
}

/** What the answer says is likely, rounded to nine places, so that fractions can be written as they are. */
async function likely(holes: Hole[], kinds: Kind[], more: More = {}) {
  const face = await faceOf(holes, kinds, more)
  return Object.fromEntries(Object.entries(face.holes).map(([hole, answer]) => [hole, answer.likely]))
}

const close = (value: number) => expect.closeTo(value, 9)

// A ×30 takes grips from 18 to 24, a ×35 from 23 to 29, a ×40 from 28 to 34.
const a = (count?: number) => plainKind('a', 30, count)
const b = (count?: number) => plainKind('b', 35, count)
const c = (count?: number) => plainKind('c', 40, count)
const AS_FOUND = { habit: false, asFound: true }

test('with all weights off every complete placement counts the same', async () => {
  // One each: 1 takes a or b, 3 takes b or c, 2 any. The placements are a b c, a c b and b a c.
  expect(await likely([plainHole('1', 23.5), plainHole('2'), plainHole('3', 28.5)], [a(1), b(1), c(1)])).toEqual({
    1: { a: close(2 / 3), b: close(1 / 3) },
    2: { a: close(1 / 3), b: close(1 / 3), c: close(1 / 3) },
    3: { b: close(1 / 3), c: close(2 / 3) },
  })
})

test('with all weights off neither units before nor what was found count', async () => {
  const hole = plainHole('1', 23.5, { unitsBefore: { a: 9 }, asFound: 'a' })
  expect(await likely([hole], [a(), b()])).toEqual({ 1: { a: close(0.5), b: close(0.5) } })
})

test('bolts enough leave the holes independent', async () => {
  expect(await likely([plainHole('1', 23.5), plainHole('2', 23.5)], [a(2), b(2)])).toEqual({
    1: { a: close(0.5), b: close(0.5) },
    2: { a: close(0.5), b: close(0.5) },
  })
})

test('two of three: the kind of which there are two is twice as likely in each hole', async () => {
  // a a b in three orders.
  const holes = ['1', '2', '3'].map((id) => plainHole(id, 23.5))
  const each = { a: close(2 / 3), b: close(1 / 3) }
  expect(await likely(holes, [a(2), b(1)])).toEqual({ 1: each, 2: each, 3: each })
})

test('a settled hole takes its bolt out of the tray before the rest is shared', async () => {
  // The ×30 of hole 1 is one of two; the other and one ×35 are shared by 2 and 3.
  const holes = [plainHole('1', 20), plainHole('2', 23.5), plainHole('3', 23.5)]
  const each = { a: close(0.5), b: close(0.5) }
  expect(await likely(holes, [a(2), b(1)])).toEqual({ 1: { a: 1 }, 2: each, 3: each })
  // With a ×35 more there are three ways for 2 and 3 but not both a: a b, b a, b b.
  const less = { a: close(1 / 3), b: close(2 / 3) }
  expect(await likely(holes, [a(2), b(2)])).toEqual({ 1: { a: 1 }, 2: less, 3: less })
})

test('a hole that may stay empty has that as one more way', async () => {
  // Two holes, one bolt; no hole is better than the other.
  const face = await faceOf([plainHole('1', 20), plainHole('2', 20)], [a(1)])
  expect(face.holes['1']?.likely).toEqual({ a: close(0.5) })
  expect(face.holes['2']?.likely).toEqual({ a: close(0.5) })
})

test('as found counts by how far the history can be trusted', async () => {
  const hole = plainHole('1', 23.5, { asFound: 'a' })
  for (const [history, wrong] of [
    ['never opened', 0.01],
    ['unknown', 0.1],
    ['opened before', 0.25],
  ] as const) {
    // Two kinds in the tray: the other takes the whole of what is wrong.
    expect(await likely([hole], [a(), b()], { weigh: AS_FOUND, history })).toEqual({
      1: { a: close(1 - wrong), b: close(wrong) },
    })
    // Three: half each, and the ×40 does not fit.
    expect(await likely([hole], [a(), b(), c()], { weigh: AS_FOUND, history })).toEqual({
      1: { a: close((1 - wrong) / (1 - wrong / 2)), b: close(wrong / 2 / (1 - wrong / 2)) },
    })
  }
})

test('units before count with half a unit for what was never seen', async () => {
  const hole = (unitsBefore: Record<string, number>) => plainHole('1', 23.5, { unitsBefore })
  expect(await likely([hole({ a: 3, none: 1 })], [a(), b()], { weigh: AS_FOUND })).toEqual({
    1: { a: close(3.5 / 4), b: close(0.5 / 4) },
  })
  expect(await likely([hole({ a: 1, b: 4 })], [a(), b()], { weigh: AS_FOUND })).toEqual({
    1: { a: close(1.5 / 6), b: close(4.5 / 6) },
  })
})

test('units before of two holes multiply where one bolt of each is there', async () => {
  // a b weighs 3.5 × 0.5, b a weighs 0.5 × 1.5 (the common factors fall out).
  const holes = [plainHole('1', 23.5, { unitsBefore: { a: 3 } }), plainHole('2', 23.5, { unitsBefore: { b: 0, a: 1 } })]
  const [ab, ba] = [3.5 * 0.5, 0.5 * 1.5]
  expect(await likely(holes, [a(1), b(1)], { weigh: AS_FOUND })).toEqual({
    1: { a: close(ab / (ab + ba)), b: close(ba / (ab + ba)) },
    2: { a: close(ba / (ab + ba)), b: close(ab / (ab + ba)) },
  })
})

test('habit prefers the engagement nearest to what is usual', async () => {
  // In cast aluminium 1.9 diameters are usual: 11.4 of M6. At a grip of 23.5 the ×35 has 11.5 mm of thread and the ×30 has 6.5.
  const one = (
    await likely([plainHole('1', 23.5)], [a(), b()], { weigh: { asFound: false }, material: 'cast aluminium' })
  )['1']!
  expect(one.b).toBeGreaterThan(0.6)
  expect(one.a! + one.b!).toBeCloseTo(1, 12)
  // At 18.1 to 29 there is no choice; in grey iron 1.5 diameters are usual, 9 mm: both are as far.
  const iron = (await likely([plainHole('1', 23.5)], [a(), b()], { weigh: { asFound: false }, material: 'grey iron' }))[
    '1'
  ]!
  expect(iron.b).toBeLessThan(one.b!)
})

test('one habit for the whole face: what one hole tells of it counts in the other', async () => {
  // Worked out apart: each aim from 1 to 2.5 diameters in eighths, by its prior, over all placements of two holes.
  const thread = { a: 6.5, b: 11.5 }
  const aims = Array.from({ length: 13 }, (_, i) => 1 + i / 8)
  const prior = aims.map((aim) => Math.exp(-0.5 * ((aim - 1.9) / 0.4) ** 2))
  const weight = (mm: number, aim: number) => Math.exp(-0.5 * ((mm - 6 * aim) / 2.5) ** 2)
  let all = 0
  let long = 0
  aims.forEach((aim, t) => {
    // Hole 2 takes the ×30 alone, with 12 mm of thread.
    for (const first of ['a', 'b'] as const)
      for (const second of [12]) {
        const way = prior[t]! * weight(thread[first], aim) * weight(second, aim)
        all += way
        if (first === 'b') long += way
      }
  })
  const more = { weigh: { asFound: false }, material: 'cast aluminium' }
  const found = await likely([plainHole('1', 23.5), plainHole('2', 18)], [a(), b()], more)
  expect(found['1']!.b).toBeCloseTo(long / all, 9)
  // Alone, or beside a hole with little thread, the long bolt is less likely.
  const alone = await likely([plainHole('1', 23.5)], [a(), b()], more)
  const beside = await likely([plainHole('1', 23.5), plainHole('2', 24)], [a(), plainKind('b', 35)], more)
  expect(alone['1']!.b!).toBeLessThan(found['1']!.b!)
  expect(beside['1']!.b!).toBeLessThan(found['1']!.b!)
})

test('a rank line ties two holes: only the placements that keep it count', async () => {
  // Neither grip is known. 1 lies no higher than 2, so 1 with a ×40 and 2 with a ×30 cannot be.
  const holes = [plainHole('1'), plainHole('2')]
  const found = await likely(holes, [a(), c()], { ranks: [{ quantity: 'grip', less: '1', more: '2' }] })
  // a a, a c and c c are left.
  expect(found).toEqual({
    1: { a: close(2 / 3), c: close(1 / 3) },
    2: { a: close(1 / 3), c: close(2 / 3) },
  })
})

test('a kind of unknown length is one length in all its holes', async () => {
  // x serves 22 or 33 but not both; the other takes the one bolt made for it.
  const holes = [plainHole('1', 22), plainHole('2', 33)]
  const kinds = [plainKind('x', { atLeast: 30, atMost: 40 }, 2), a(1), c(1)]
  // x c, a x and a c.
  expect(await likely(holes, kinds)).toEqual({
    1: { x: close(1 / 3), a: close(2 / 3) },
    2: { x: close(1 / 3), c: close(2 / 3) },
  })
})

test('holes that only a settled hole’s bolt ties count with it', async () => {
  // x is settled in 1 (grip 22: length 28 to 34), so in 2 (grip 26) it still may be, and in 3 (grip 33) never: 39 is too long for 1.
  const holes = [plainHole('1', 22), plainHole('2', 26), plainHole('3', 33)]
  const kinds = [plainKind('x', { atLeast: 28, atMost: 40 }, 3), b(1), c(1)]
  const face = await faceOf(holes, kinds)
  expect(Object.entries(face.holes).map(([id, { may, verdict }]) => [id, may, verdict])).toEqual([
    ['1', ['x'], 'settled'],
    ['2', ['x', 'b'], 'open'],
    ['3', ['c'], 'settled'],
  ])
  expect(face.holes['2']?.likely).toEqual({ x: close(0.5), b: close(0.5) })
})

test('what is exact says so, and has no standard error', async () => {
  expect((await faceOf([plainHole('1', 23.5)], [a(), b()])).likelihood).toEqual({ method: 'exact' })
})

test('a face with too many ways to list is drawn from, and the error that is said holds', async () => {
  const holes = [plainHole('1'), plainHole('2'), ...Array.from({ length: 14 }, (_, i) => plainHole(`${i + 3}`, 23.5))]
  const ranks = [{ quantity: 'grip' as const, less: '1', more: '2' }]
  const face = await faceOf(holes, [a(8), b(8), c(2)], { ranks })
  expect(face.likelihood.method).toBe('sampled')
  const error = face.likelihood.standardError!
  expect(error).toBeGreaterThan(0.005)
  expect(error).toBeLessThan(0.1)
  // Counted apart: all bolts of 1 and 2 but a ×40 in 1 with a ×30 in 2, and for each the ways of the 14 others with what is left.
  const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n, k - 1) * (n - k + 1)) / k)
  const ways: Record<string, number> = {}
  let all = 0
  for (const first of 'abc')
    for (const second of 'abc') {
      if (first === 'c' && second === 'a') continue
      const left = (kind: string) => 8 - [first, second].filter((one) => one === kind).length
      let sum = 0
      for (let ofA = 14 - left('b'); ofA <= left('a'); ofA++) sum += choose(14, ofA)
      all += sum
      ways[`1${first}`] = (ways[`1${first}`] ?? 0) + sum
      ways[`2${second}`] = (ways[`2${second}`] ?? 0) + sum
    }
  for (const id of ['1', '2'])
    for (const kind of 'abc')
      expect(Math.abs(face.holes[id]!.likely[kind]! - ways[id + kind]! / all), id + kind).toBeLessThan(3 * error)
  for (const { likely: chance } of Object.values(face.holes))
    expect(Object.values(chance).reduce((x, y) => x + y)).toBeCloseTo(1, 9)
})

test('a group that is drawn from leaves the others exact', async () => {
  const m8 = { thread: 'M8' }
  const holes = [
    plainHole('1'),
    plainHole('2'),
    ...Array.from({ length: 14 }, (_, i) => plainHole(`${i + 3}`, 23.5)),
    plainHole('apart', 23.5, m8),
  ]
  const kinds = [a(8), b(8), c(2), plainKind('d', 30, undefined, m8), plainKind('e', 35, undefined, m8)]
  const face = await faceOf(holes, kinds, { ranks: [{ quantity: 'grip', less: '1', more: '2' }] })
  expect(face.likelihood.method).toBe('sampled')
  expect(face.holes.apart?.likely).toEqual({ d: close(0.5), e: close(0.5) })
})

test('a rank line ties holes that have no kind in common', async () => {
  const m8 = { thread: 'M8' }
  const kinds = [a(), c(), plainKind('d', 30, undefined, m8), plainKind('e', 40, undefined, m8)]
  const ranks = [{ quantity: 'grip' as const, less: '1', more: '2' }]
  // a d, a e and c e are left.
  expect(await likely([plainHole('1'), plainHole('2', undefined, m8)], kinds, { ranks })).toEqual({
    1: { a: close(2 / 3), c: close(1 / 3) },
    2: { d: close(1 / 3), e: close(2 / 3) },
  })
})

test('a hole that is tied by a count alone is weighed with those that a length ties', async () => {
  // x has one length, for 1 or for 2. 2 and 3 share the one c. The ways are x c d, a x c, a x d and a c d.
  const seal = { features: ['seal'] }
  const holes = [plainHole('1', 22), plainHole('2', 33), plainHole('3', 29, { needs: ['seal'] })]
  const kinds = [
    plainKind('x', { atLeast: 30, atMost: 40 }, 2),
    a(1),
    plainKind('c', 40, 1, seal),
    plainKind('d', 35, 1, seal),
  ]
  expect(await likely(holes, kinds)).toEqual({
    1: { x: close(1 / 4), a: close(3 / 4) },
    2: { x: close(1 / 2), c: close(1 / 2) },
    3: { c: close(1 / 4), d: close(3 / 4) },
  })
})

test('holes that share a kind of which there is enough are weighed apart, so that much stays exact', async () => {
  // Two groups of eight holes and six scarce kinds, two of each. One hole of either may take z too, of which there are three, one of
  // them settled. Counted together the states would be too many.
  const group = (name: string) => {
    const mark = { features: [name] }
    return {
      holes: Array.from({ length: 8 }, (_, i) =>
        plainHole(`${name}${i}`, 20, { needs: [name, ...(i > 0 ? [`plain ${name}`] : [])] }),
      ),
      kinds: Array.from({ length: 6 }, (_, i) =>
        plainKind(`${name}-${i}`, 30, 2, { features: [...mark.features, `plain ${name}`] }),
      ),
    }
  }
  const [p, q] = [group('p'), group('q')]
  const z = plainKind('z', 30, 3, { features: ['p', 'q', 'only z'] })
  const face = await faceOf(
    [...p.holes, ...q.holes, plainHole('z', 20, { needs: ['only z'] })],
    [...p.kinds, ...q.kinds, z],
  )
  expect(face.holes.z?.verdict).toBe('settled')
  expect(face.holes.p0?.may).toContain('z')
  expect(face.likelihood).toEqual({ method: 'exact' })
  // Kinds alike are alike in likelihood.
  const { 'p-0': one, 'p-5': other } = face.holes.p3!.likely
  expect(one).toBeCloseTo(1 / 6, 9)
  expect(other).toBeCloseTo(1 / 6, 9)
})

/** One hole and two kinds, both bolts at hand; −ln of each kind's weight for each of two aims. */
const twoAims = (first: [number, number], second: [number, number], stop = false) =>
  likelihood(
    { items: 1, bins: 3, cost: Float64Array.from([0, 0, Number.POSITIVE_INFINITY]), capacity: [1, 1, 0] },
    Uint8Array.from([1, 1, 0]),
    {
      targets: [0.5, 0.5],
      own: new Float64Array(3),
      habit: [Float64Array.from([...first, 0]), Float64Array.from([...second, 0])],
    },
    null,
    [],
    [],
    Int32Array.from([0]),
    { stop: { aborted: stop } },
  )

test('aims are weighed by how well the placements suit them, however small the weights', () => {
  // The first aim weighs 1 + 3, the second 2 + 2, all times e^−900.
  const near = (weight: number) => 900 - Math.log(weight)
  const found = twoAims([near(1), near(3)], [near(2), near(2)])
  expect(found.chance[0]).toBeCloseTo(0.5 * 0.25 + 0.5 * 0.5, 9)
  expect(found.chance[1]).toBeCloseTo(0.5 * 0.75 + 0.5 * 0.5, 9)
  expect(found).toMatchObject({ method: 'exact', standardError: 0 })
  // An aim that nothing suits counts for nothing.
  expect(twoAims([0, Math.log(3)], [5000, 5000]).chance[0]).toBeCloseTo(0.75, 9)
})

test('the weighing stops when told to', () => {
  expect(() => twoAims([0, 0], [0, 0], true)).toThrow(Stopped)
})
