import { describe, expect, test } from 'vitest'
import type { Point } from '../../unit.ts'
import { condense } from '../plate/condense.ts'
import { coverOnBed, sinksOnSeat } from '../plate/contact.ts'
import { chainOf } from './chain.ts'
import { drawnCover, shuffled } from './testing/covers.ts'
import { type Bolt, embedded, lastRounds, linearCover, spreadOf, tighten, untouched } from './tighten.ts'

const SHARES = [0.3, 0.6, 1]
const seeds = Array.from({ length: 40 }, (_, i) => i + 1)
const passesOf = (sequence: number[], shares = SHARES) => shares.map((share) => ({ share, visit: 1, sequence }))

describe('[TI7] many orders the fast way', () => {
  test.each([
    ['run down by hand', true],
    ['loose', false],
  ])('bolts %s hold what one equilibrium after another gives', (_, snug) => {
    let loose = 0
    for (const seed of seeds) {
      const { compliance, bolts } = drawnCover(seed)
      const gaps = bolts.map(() => (snug ? 0 : Number.POSITIVE_INFINITY))
      const chain = chainOf(compliance, bolts, SHARES, { loads: bolts.map(() => 0), gaps })
      for (let k = 0; k < 5; k++) {
        const sequence = shuffled(bolts.length, 100 * seed + k)
        const standing = untouched(bolts)
        tighten(passesOf(sequence), bolts, snug, linearCover(compliance), standing)
        const fast = chain.loadsAfter(sequence)
        standing.loads.forEach((load, j) => {
          expect(
            Math.abs(fast[j]! - load) / bolts[j]!.target,
            `seed ${seed}, order ${sequence}, bolt ${j}`,
          ).toBeLessThan(1e-9)
        })
        loose += [...standing.loads].filter((load) => load === 0).length
      }
    }
    expect(loose).toBeGreaterThan(10)
  })

  test('24 bolts on a soft gasket, where bolts come loose all the time, hold what one equilibrium after another gives', () => {
    const points = Array.from({ length: 24 }, (_, k): Point => {
      const along = 6 * ((k % 12) + (k < 12 ? 0 : 0.4))
      return k < 12 ? [10 + 2.6 * along, 8 + (k % 3)] : [12 + 2.5 * along, 130 - (k % 2)]
    })
    const outline: Point[] = [
      [0, 0],
      [200, 0],
      [200, 140],
      [0, 140],
    ]
    const bolts = points.map((_, j): Bolt => ({ target: 6_000 + 100 * j, compliance: 1 / 200_000, visit: 1 }))
    for (const stiffness of [0.5, 5]) {
      const { compliance } = condense({ outline, thickness: 8 }, { stiffness }, points, 10)
      const none = bolts.map(() => 0)
      const chain = chainOf(compliance, bolts, SHARES, { loads: none, gaps: none })
      let loose = 0
      for (let k = 0; k < 12; k++) {
        const sequence = shuffled(bolts.length, k)
        const standing = untouched(bolts)
        for (const { loads } of tighten(passesOf(sequence), bolts, true, linearCover(compliance), standing))
          loose += loads.filter((load) => load === 0).length
        const fast = chain.loadsAfter(sequence)
        standing.loads.forEach((load, j) => {
          expect(Math.abs(fast[j]! - load) / bolts[j]!.target).toBeLessThan(1e-11)
        })
      }
      expect(loose / (12 * 72 * 24)).toBeGreaterThan(0.2)
    }
  })

  test('what was asked before changes nothing, however much of it the next order begins with', () => {
    const { compliance, bolts } = drawnCover(2)
    const none = bolts.map(() => 0)
    const fresh = () => chainOf(compliance, bolts, SHARES, { loads: none, gaps: none })
    const asked = fresh()
    expect(bolts.length).toBeGreaterThan(8)
    for (let k = 0; k < 60; k++) {
      const end = shuffled(bolts.length, k)
      const begin = shuffled(bolts.length, k % 3).slice(0, k % bolts.length)
      const sequence = [...begin, ...end.filter((j) => !begin.includes(j))]
      expect([...asked.loadsAfter(sequence)]).toEqual([...fresh().loadsAfter(sequence)])
    }
  })

  test('a later visit starts from what is tight', () => {
    for (const seed of seeds.slice(0, 15)) {
      const { compliance, bolts: all } = drawnCover(seed)
      const bolts = all.map((bolt, j) => ({ ...bolt, visit: j % 3 === 0 ? 2 : 1 }))
      const of = (visit: number) => shuffled(bolts.length, seed).filter((j) => bolts[j]!.visit === visit)
      const standing = untouched(bolts)
      tighten(passesOf(of(1)), bolts, true, linearCover(compliance), standing)
      const gaps = bolts.map(({ visit, compliance: own }, j) =>
        visit === 2 || standing.loads[j]! > 0 ? 0 : standing.sinks[j]! + own * standing.loads[j]! - standing.travel[j]!,
      )
      const chain = chainOf(compliance, bolts, SHARES, { loads: standing.loads, gaps })
      tighten(
        SHARES.map((share) => ({ share, visit: 2, sequence: of(2) })),
        bolts,
        true,
        linearCover(compliance),
        standing,
      )
      const fast = chain.loadsAfter(of(2))
      standing.loads.forEach((load, j) => {
        expect(Math.abs(fast[j]! - load) / bolts[j]!.target).toBeLessThan(1e-9)
      })
    }
  })
})

describe('[TI3] one-sided', () => {
  test('a stiff block pressed at its very edge tips up and is computed all the same: the bed carries the load, nothing is adrift', () => {
    for (const off of [0.5, 1e-2, 1e-5]) {
      const outline: Point[] = [
        [0, 0],
        [40, 0],
        [40, 40],
        [0, 40],
      ]
      const points: Point[] = [
        [20, off],
        [20, 20],
      ]
      const { lie, plate } = coverOnBed(
        { outline, thickness: 35, young: 70_000, poisson: 0.33 },
        { stiffness: 7 },
        points,
      )
      const { field, sinks } = lie(() => Float64Array.of(1000, 0))
      const down = sinksOnSeat(plate, field).reduce(
        (sum, sink, q) => sum + 7 * plate.seat.area[q]! * Math.max(0, sink),
        0,
      )
      expect(down / 1000).toBeCloseTo(1, 2)
      expect(sinks[0]!).toBeGreaterThan(0)
    }
  })

  test('no load is ever negative, a wrench never loosens, and the bolt that was turned holds its share', () => {
    for (const seed of seeds.slice(0, 12)) {
      const { cover, stiffness, points, bolts } = drawnCover(seed)
      const { lie } = coverOnBed(cover, { stiffness }, points)
      const standing = untouched(bolts)
      for (const { bolt, share, loads } of tighten(
        passesOf(shuffled(bolts.length, seed)),
        bolts,
        seed % 2 === 0,
        lie,
        standing,
      )) {
        expect(Math.min(...loads)).toBeGreaterThanOrEqual(0)
        expect(loads[bolt]!).toBeGreaterThanOrEqual(share * bolts[bolt]!.target * (1 - 1e-12))
      }
    }
  })

  test('the bed pushes and never pulls, and carries what the bolts press', () => {
    for (const seed of seeds.slice(0, 12)) {
      const { cover, stiffness, points, bolts } = drawnCover(seed)
      const { lie, plate } = coverOnBed(cover, { stiffness }, points)
      const loads = Float64Array.from(bolts, ({ target }, j) => (j % 3 === seed % 3 ? target : 0))
      const sinks = sinksOnSeat(plate, lie(() => loads).field)
      const carried = sinks.reduce((sum, sink, q) => sum + Math.max(0, sink) * stiffness * plate.seat.area[q]!, 0)
      const pressed = loads.reduce((sum, load) => sum + load, 0)
      // the search for what touches ends when three parts in ten thousand of the load stand at points of the wrong state
      expect(Math.abs(carried - pressed) / pressed, `seed ${seed}`).toBeLessThan(4e-4)
    }
  })

  test('a stiff cover pressed out of its middle third touches over 3·(L/2 − e), as a footing does (any text on foundations: from memory)', () => {
    const [length, width, stiffness, load] = [120, 60, 10, 1_000]
    for (const off of [30, 40, 50]) {
      const { lie, plate } = coverOnBed(
        {
          outline: [
            [0, 0],
            [length, 0],
            [length, width],
            [0, width],
          ],
          thickness: 10,
          young: 1e10,
        },
        { stiffness },
        [[length / 2 + off, width / 2]],
      )
      const sinks = sinksOnSeat(plate, lie(() => Float64Array.of(load)).field)
      const touched = sinks.reduce((sum, sink, q) => sum + (sink > 0 ? plate.seat.area[q]! : 0), 0) / width
      const contact = 3 * (length / 2 - off)
      expect(Math.abs(touched - contact) / contact).toBeLessThan(0.03)
      expect((Math.max(...sinks) * stiffness * width * contact) / (2 * load)).toBeCloseTo(1, 1)
    }
  })
})

test('[TI4] what the loads lack, weighed by the compliance, falls at every turn; the spread does not', () => {
  let rose = 0
  for (const seed of seeds) {
    const { compliance, bolts: drawn } = drawnCover(seed)
    const bolts = drawn.map((bolt): Bolt => ({ ...bolt, target: 1 }))
    const lacking = (loads: ArrayLike<number>) => {
      const r = bolts.map((_, j) => 1 - loads[j]!)
      return r.reduce(
        (sum, ri, i) =>
          sum + ri * (bolts[i]!.compliance * ri + compliance[i]!.reduce((inner, c, j) => inner + c * r[j]!, 0)),
        0,
      )
    }
    const standing = untouched(bolts)
    const turns = tighten(
      passesOf(shuffled(bolts.length, seed), [1, 1, 1]),
      bolts,
      false,
      linearCover(compliance),
      standing,
    )
    const later = turns.slice(bolts.length - 1)
    later.forEach((turn, k) => {
      if (k === 0 || Math.min(...turn.loads, ...later[k - 1]!.loads) <= 0) return
      expect(lacking(turn.loads)).toBeLessThanOrEqual(lacking(later[k - 1]!.loads) * (1 + 1e-9))
      if (spreadOf(turn.loads, bolts) > spreadOf(later[k - 1]!.loads, bolts)) rose++
    })
  }
  expect(rose).toBeGreaterThan(0)
})

test('[TI2] a symmetric order on a symmetric cover ends in a symmetric clamp', () => {
  const cover = {
    outline: [
      [-50, -30],
      [50, -30],
      [50, 30],
      [-50, 30],
    ] as [number, number][],
    thickness: 6,
  }
  const points: [number, number][] = [
    [0, 22],
    [0, -22],
    [40, 0],
    [-40, 0],
  ]
  const bolts = points.map((): Bolt => ({ target: 5_000, compliance: 1 / 150_000, visit: 1 }))
  const { lie } = coverOnBed(cover, { stiffness: 20 }, points)
  // The wrench goes to one side and then to the other: mirrored orders end in mirrored loads.
  const after = (sequence: number[]) => {
    const standing = untouched(bolts)
    tighten(passesOf(sequence), bolts, true, lie, standing)
    return standing.loads
  }
  const [one, mirrored] = [after([0, 1, 2, 3]), after([1, 0, 3, 2])]
  for (const [a, b] of [
    [0, 1],
    [1, 0],
    [2, 3],
    [3, 2],
  ] as const)
    expect(one[a]!).toBeCloseTo(mirrored[b]!, 3)
})

test('last rounds end with every bolt at its target or above, and say when nothing moves any more', () => {
  for (const seed of seeds.slice(0, 10)) {
    const { compliance, bolts } = drawnCover(seed)
    const cover = linearCover(compliance)
    const standing = untouched(bolts)
    const sequence = shuffled(bolts.length, seed)
    tighten(passesOf(sequence), bolts, true, cover, standing)
    const { still, count } = lastRounds(sequence, bolts, cover, standing, 30)
    expect(still).toBe(true)
    expect(count).toBeLessThan(30)
    standing.loads.forEach((load, j) => {
      expect(load / bolts[j]!.target).toBeGreaterThan(0.99)
    })
  }
})

test('surfaces that settle take load off every bolt that holds, more off a stiff one', () => {
  const { compliance, bolts } = drawnCover(7)
  const cover = linearCover(compliance)
  const standing = untouched(bolts)
  tighten(passesOf(shuffled(bolts.length, 7)), bolts, true, cover, standing)
  lastRounds([...bolts.keys()], bolts, cover, standing, 30)
  const before = standing.loads.slice()
  embedded(0.005, bolts, cover, standing)
  expect(standing.loads.reduce((sum, load) => sum + load, 0)).toBeLessThan(before.reduce((sum, load) => sum + load, 0))
  expect(Math.min(...standing.loads)).toBeGreaterThanOrEqual(0)
})
