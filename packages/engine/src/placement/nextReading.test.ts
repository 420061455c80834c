import { expect, test } from 'vitest'
import type { Hole, Kind } from '../unit.ts'
import { place } from './place.ts'
import { plainHole, plainKind, plainUnit } from './testing/plainFace.ts'

type More = Parameters<typeof plainUnit>[2]
const next = async (holes: Hole[], kinds: Kind[], more: More = {}) =>
  (await place(plainUnit(holes, kinds, more))).faces[0]!.next

// A ×30 takes grips from 18 to 24, a ×35 from 23 to 29, a ×40 from 28 to 34.
const a = (count?: number) => plainKind('a', 30, count)
const b = (count?: number) => plainKind('b', 35, count)
const c = (count?: number) => plainKind('c', 40, count)

test('nothing is asked for when every hole is settled', async () => {
  expect(await next([plainHole('1', 20), plainHole('2', 26)], [a(1), b(1)])).toBeNull()
})

test('nothing is asked for where every quantity is as sure as a reading would make it', async () => {
  expect(await next([plainHole('1', { value: 23.5, plusMinus: 0.1 })], [a(), b()])).toBeNull()
})

test('an unknown grip is the reading that tells the kinds apart, with its bits worked by hand', async () => {
  // 60 mm in 24 cells of 2.5: three for either kind, one of them for both. Of six sixths, four tell the kind: 2/3 bit.
  expect(await next([plainHole('1')], [a(), b()])).toEqual({
    reading: { quantity: 'grip', of: '1', place: 'hole' },
    bits: expect.closeTo(2 / 3, 9),
    settles: ['1'],
    minutes: 1,
    why: 'measure the grip of hole 1: likely to settle 1',
  })
})

test('kinds that no cell has in common tell a whole bit', async () => {
  expect((await next([plainHole('1')], [a(), c()]))?.bits).toBeCloseTo(1, 9)
})

test('a kind that is unlikely is still worth excluding', async () => {
  const hole = plainHole('1', undefined, { unitsBefore: { a: 1e6 } })
  const found = await next([hole], [a(), c()], { weigh: { habit: false } })
  // Counted as 5 to 100: entropy of 1/21.
  const p = 0.05 / 1.05
  expect(found?.bits).toBeCloseTo(-p * Math.log2(p) - (1 - p) * Math.log2(1 - p), 4)
})

test('the hole whose reading tells most comes first', async () => {
  // Hole 1 is known to 4 mm, within which both fit nearly everywhere; hole 2 is not known at all.
  const found = await next([plainHole('1', { atLeast: 22.5, atMost: 24.5 }), plainHole('2')], [a(), b()])
  expect(found).toMatchObject({ reading: { quantity: 'grip', of: '2' }, settles: ['2'] })
})

test('of two holes alike the first is asked for', async () => {
  expect(await next([plainHole('1'), plainHole('2')], [a(), c()])).toMatchObject({
    reading: { of: '1' },
    settles: ['1'],
  })
})

test('one grip settles two holes where the counts leave one bolt of each', async () => {
  expect(await next([plainHole('1'), plainHole('2')], [a(1), c(1)])).toMatchObject({
    reading: { quantity: 'grip', of: '1' },
    settles: ['1', '2'],
    why: 'measure the grip of hole 1: likely to settle 1 and 2',
  })
})

test('the bottom depth is asked for where it decides', async () => {
  // 6.5 or 11.5 mm go in; how deep the hole is, is known from 8 to 20.
  const hole = plainHole('1', 23.5, {
    threadDepth: { atLeast: 6.5, atMost: 12 },
    bottomDepth: { atLeast: 6.5, atMost: 20 },
  })
  expect(await next([hole], [a(), b()])).toMatchObject({
    reading: { quantity: 'bottomDepth', of: '1', place: 'hole' },
    minutes: 0.5,
    why: expect.stringContaining('measure the bottom depth of hole 1'),
  })
})

test('the thread depth is asked for in a through hole, which has no bottom', async () => {
  const { bottomDepth: _, ...hole } = plainHole('1', 23.5, {
    ending: 'through',
    threadDepth: { atLeast: 5, atMost: 15 },
    behind: 0,
  })
  expect(await next([hole], [a(), b()])).toMatchObject({
    reading: { quantity: 'threadDepth', of: '1', place: 'hole' },
    minutes: 1.5,
  })
})

test('the length of a kind is asked for where it is what is not known', async () => {
  // x serves both holes by what is known; its length tells of both.
  const x = plainKind('x', { atLeast: 30, atMost: 42 })
  const found = await next([plainHole('1', 23.5), plainHole('2', 28.5)], [x, b()])
  expect(found).toMatchObject({
    reading: { quantity: 'length', of: 'x', place: 'kind' },
    minutes: 0.3,
    why: expect.stringContaining('measure the length of kind x'),
  })
  expect(found!.bits).toBeGreaterThan(0)
})

test('the bits of a length are summed over the holes that it may be in', async () => {
  const x = plainKind('x', { atLeast: 30, atMost: 42 })
  const one = await next([plainHole('1', 23.5)], [x, b()])
  const two = await next([plainHole('1', 23.5), plainHole('2', 23.5)], [x, b()])
  expect(one?.reading).toEqual({ quantity: 'length', of: 'x', place: 'kind' })
  expect(two!.bits).toBeCloseTo(2 * one!.bits, 9)
})

// Deep enough for a ×40 from a grip of 10 to one of 34; a ×20 takes grips from 0 to 14.
const deep = (grip: Hole['grip'], more: Partial<Hole> = {}) =>
  plainHole('1', grip, { threadDepth: 30, bottomDepth: 30, ...more })
const long = plainKind('long', 40, undefined, { threadLength: 30 })
const short = plainKind('short', 20, undefined, { threadLength: 20 })

test('turns are counted where a bolt is sure to seat: it is quicker than a caliper', async () => {
  expect(await next([deep({ atLeast: 11, atMost: 21 })], [short, long])).toEqual({
    reading: { quantity: 'turns', of: '1', place: 'hole', kind: 'long' },
    bits: expect.any(Number),
    settles: ['1'],
    minutes: 0.7,
    why: 'count the turns of a long in hole 1 until its head seats: likely to settle 1',
  })
})

test('turns are not asked for where no bolt is sure to seat, nor where they have been counted', async () => {
  expect((await next([deep({ atLeast: 9, atMost: 21 })], [short, long]))?.reading).toEqual({
    quantity: 'grip',
    of: '1',
    place: 'hole',
  })
  const trials = [{ hole: '1', kind: 'long', stickOut: { atLeast: 19, atMost: 29 } }]
  expect((await next([deep({ atLeast: 11, atMost: 21 })], [short, long], { trials }))?.reading).toEqual({
    quantity: 'grip',
    of: '1',
    place: 'hole',
  })
})

test('what half a turn, the tip and the length leave open makes a count of turns tell less than a caliper', async () => {
  const from12 = deep({ atLeast: 12, atMost: 18 })
  const asked = async (hole: Hole, length: Kind['length'], tip: number) =>
    (await next([hole], [short, plainKind('long', length!, undefined, { threadLength: 30, tip })]))?.reading.quantity
  expect(await asked(from12, 40, 0)).toBe('turns')
  expect(await asked(from12, 40, 2)).toBe('grip')
  expect(await asked(from12, { atLeast: 38.5, atMost: 40 }, 0)).not.toBe('turns')
  // Half a turn either way is 1 mm in all: as much as is known.
  expect(await asked(deep({ atLeast: 13.5, atMost: 14.5 }), 40, 0)).toBe('grip')
})

test('a reading that settles nothing by itself is told as a step', async () => {
  // 0.5 mm of grip in which both fit throughout: reading it closer tells nothing.
  expect(await next([plainHole('1', { atLeast: 23.2, atMost: 23.8 })], [a(), b()])).toMatchObject({
    reading: { quantity: 'grip', of: '1' },
    bits: 0,
    settles: [],
    why: 'measure the grip of hole 1: it is a step; no reading settles a hole by itself',
  })
})

test('where nothing settles anything the quickest reading is the way on', async () => {
  const found = await next(
    [plainHole('1', { atLeast: 23.2, atMost: 23.8 })],
    [a(), plainKind('b', { atLeast: 34.9, atMost: 35.2 })],
  )
  expect(found).toMatchObject({ reading: { quantity: 'length', of: 'b' }, minutes: 0.3, settles: [] })
})

test('a settled hole is not asked about, however little is known of it', async () => {
  // 3 takes the M8 alone, with no grip read.
  const found = await next(
    [plainHole('3', undefined, { thread: 'M8' }), plainHole('1')],
    [plainKind('m8', 30, 1, { thread: 'M8' }), a(), c()],
  )
  expect(found).toMatchObject({ reading: { of: '1' }, settles: ['1'] })
})

/**
 * Bits that a reading tells of two kinds as likely as each other, of which each lies evenly in cells of its own: 1 bit, less what stays
 * unknown on average once the cell is read.
 */
function told(first: [from: number, to: number], second: [from: number, to: number]): number {
  let left = 0
  for (let cell = 0; cell < 24; cell++) {
    const of = ([from, to]: [number, number]) => (cell >= from && cell <= to ? 0.5 / (to - from + 1) : 0)
    const [one, other] = [of(first), of(second)]
    for (const part of [one, other]) if (part > 0) left -= part * Math.log2(part / (one + other))
  }
  return 1 - left
}

test('bits of a grip: the range of a kind is widened by what a caliper leaves open, at its greater end and its less', async () => {
  // 12 to 18 in cells of 0.25: the ×20 goes to 14.1, eight cells. The bolt tip of 2 mm keeps turns out of it.
  const tipped = plainKind('long', 40, undefined, { threadLength: 30, tip: 2 })
  expect((await next([deep({ atLeast: 12, atMost: 18 })], [short, tipped]))?.bits).toBeCloseTo(told([0, 7], [0, 23]), 9)
  // 7 to 13: the ×40 starts at 9.9, twelve cells. The ×20, with a tip of 2 mm, ends at 12.1.
  const blunt = plainKind('short', 20, undefined, { threadLength: 20, tip: 2 })
  const found = await next([deep({ atLeast: 7, atMost: 13 })], [blunt, long])
  expect(found?.reading.quantity).toBe('grip')
  expect(found?.bits).toBeCloseTo(told([0, 19], [12, 23]), 9)
})

test('bits of a count of turns: half a turn either way, the tip and the spread of the length', async () => {
  const bits = async (length: Kind['length'], tip: number, more: Partial<Kind> = {}, hole: Partial<Hole> = {}) => {
    const found = await next(
      [deep({ atLeast: 12, atMost: 18 }, hole)],
      [{ ...short, ...more }, plainKind('long', length!, undefined, { threadLength: 30, tip, ...more })],
    )
    expect(found?.reading.quantity).toBe('turns')
    return found!.bits
  }
  // Half of 1 mm, 1.4 mm, 1.6 mm and 1.25 mm past the 14 mm at which the ×20 ends: 14.5, 14.7, 14.8 and 14.625.
  expect(await bits(40, 0)).toBeCloseTo(told([0, 9], [0, 23]), 9)
  expect(await bits(40, 0.4)).toBeCloseTo(told([0, 10], [0, 23]), 9)
  expect(await bits({ value: 40, plusMinus: 0.3 }, 0)).toBeCloseTo(told([0, 10], [0, 23]), 9)
  expect(await bits(40, 0, { thread: 'M8' }, { thread: 'M8' })).toBeCloseTo(told([0, 10], [0, 23]), 9)
})

test('bits of a bottom depth, of a thread depth and of a length', async () => {
  const bottom = plainHole('1', 23.5, {
    threadDepth: { atLeast: 6.5, atMost: 12 },
    bottomDepth: { atLeast: 6.5, atMost: 20 },
  })
  // Cells of 0.5625 from 6.5: the ×35, 11.5 mm in, from 11.4 on.
  expect((await next([bottom], [a(), b()]))?.bits).toBeCloseTo(told([0, 23], [9, 23]), 9)
  const { bottomDepth: _, ...wall } = plainHole('1', 23.5, {
    ending: 'through',
    threadDepth: { atLeast: 5, atMost: 15 },
    behind: 0,
  })
  // Cells of 0.4167 from 5: the ×30 from 6 on, the ×35 from 11 on, half a millimetre earlier than they could be.
  expect((await next([wall], [a(), b()]))?.bits).toBeCloseTo(told([2, 23], [14, 23]), 9)
  // Cells of 0.5 from 30: x up to 35.6; what the ×35 is says nothing of the length of x.
  expect((await next([plainHole('1', 23.5)], [plainKind('x', { atLeast: 30, atMost: 42 }), b()]))?.bits).toBeCloseTo(
    told([0, 10], [0, 23]),
    9,
  )
})

test('a reading is asked for only where it is closer than what is known', async () => {
  const grip = (spread: number) => next([plainHole('1', { value: 23.5, plusMinus: spread })], [a(), b()])
  expect(await grip(0.1)).toBeNull()
  expect((await grip(0.11))?.reading.quantity).toBe('grip')
  const bottom = (most: number) =>
    next([plainHole('1', 23.5, { threadDepth: 11.5, bottomDepth: { atLeast: 11.5, atMost: most } })], [a(), b()])
  expect(await bottom(11.7)).toBeNull()
  expect((await bottom(11.8))?.reading.quantity).toBe('bottomDepth')
  const wall = (most: number) => {
    const { bottomDepth: _, ...hole } = plainHole('1', 23.5, {
      ending: 'through',
      threadDepth: { atLeast: 11, atMost: most },
      behind: 0,
    })
    return next([hole], [a(), b()])
  }
  expect(await wall(12)).toBeNull()
  expect((await wall(12.1))?.reading.quantity).toBe('threadDepth')
  const length = (spread: number) =>
    next([plainHole('1', 23.5)], [a(), plainKind('b', { value: 35, plusMinus: spread })])
  expect(await length(0.1)).toBeNull()
  expect((await length(0.11))?.reading).toEqual({ quantity: 'length', of: 'b', place: 'kind' })
})

test('a bolt tried in another hole, or another bolt tried in this one, can be turned in all the same', async () => {
  const turns = { quantity: 'turns', of: '1', place: 'hole', kind: 'long' }
  const other = plainHole('2', 30, { threadDepth: 30, bottomDepth: 30 })
  const elsewhere = [{ hole: '2', kind: 'long', stickOut: 10 }]
  const hole = deep({ atLeast: 11, atMost: 21 })
  expect((await next([hole, other], [short, long], { trials: elsewhere }))?.reading).toEqual(turns)
  const shortTried = [{ hole: '1', kind: 'short', stickOut: { atLeast: 0, atMost: 9 } }]
  expect((await next([hole], [short, long], { trials: shortTried }))?.reading).toEqual(turns)
})

test('what a reading settles is told for the kind that is likeliest', async () => {
  // There is one ×30: if it is in 1, then 2 has a ×35; a ×35 in 1 leaves 2 open.
  const settles = async (unitsBefore: Record<string, number>) => {
    const holes = [plainHole('1', undefined, { unitsBefore }), plainHole('2', 23.5)]
    return (await next(holes, [a(1), b()], { weigh: { habit: false } }))?.settles
  }
  expect(await settles({ a: 9 })).toEqual(['1', '2'])
  expect(await settles({ b: 9 })).toEqual(['1'])
})

test('a length that is not asked of a settled hole', async () => {
  // x is settled in 2; nobody asks how long it is.
  const x = plainKind('x', { atLeast: 30, atMost: 36 }, undefined, { thread: 'M8' })
  const found = await next([plainHole('1'), plainHole('2', 24, { thread: 'M8' })], [a(), c(), x])
  expect(found?.reading).toEqual({ quantity: 'grip', of: '1', place: 'hole' })
})
