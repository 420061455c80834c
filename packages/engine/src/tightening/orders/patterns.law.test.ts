import fc from 'fast-check'
import { expect, test } from 'vitest'
import { random } from '../../placement/testing/random.ts'
import type { Point } from '../../unit.ts'
import { crossPattern } from './crossPattern.ts'
import { patternsFor } from './patterns.ts'
import { distance, numbered, type Places, reflected } from './places.ts'
import { placed, ring } from './testing/bolts.ts'

const runs = (seed: number, numRuns = 300) => ({ seed, numRuns })
const coordinate = fc.double({ min: -200, max: 200, noNaN: true, noDefaultInfinity: true })
const anywhere = fc.array(fc.tuple(coordinate, coordinate), { minLength: 1, maxLength: 30 }).map(placed)
/** On a coarse grid many are in line, at equal distances or in the same place. */
const whole = fc.integer({ min: -3, max: 3 }).map((at) => 20 * at)
const inRows = fc.array(fc.tuple(whole, whole), { minLength: 1, maxLength: 30 }).map(placed)
const inLine = fc
  .tuple(fc.array(coordinate, { minLength: 1, maxLength: 12 }), coordinate)
  .map(([along, slope]) => placed(along.map((x): Point => [x, (x * slope) / 100])))

const sorted = (sequence: number[]) => sequence.toSorted((a, b) => a - b)
const moved = (places: Places, move: (at: Point) => Point): Places => places.map(({ at }) => ({ at: move(at) }))
const orders = (places: Places) => Object.fromEntries(patternsFor(places).map(({ kind, sequence }) => [kind, sequence]))

test('every pattern of any bolts comes to every bolt once, and no two patterns are the same', () => {
  fc.assert(
    fc.property(fc.oneof(anywhere, inRows, inLine), (places) => {
      const patterns = patternsFor(places)
      expect(patterns.length).toBeGreaterThan(0)
      for (const { sequence } of patterns) expect(sorted(sequence)).toEqual(numbered(places.length))
      expect(new Set(patterns.map(({ sequence }) => sequence.join())).size).toBe(patterns.length)
    }),
    runs(1, 600),
  )
})

test('the cross pattern of any number comes to every position once', () => {
  for (let count = 1; count <= 130; count++) expect(sorted(crossPattern(count))).toEqual(numbered(count))
})

test('on a round flange with an even number of bolts every second bolt is straight across from the one before', () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 23 }), fc.double({ min: 0, max: 6, noNaN: true }), (half, from) => {
      const places = ring(2 * half, 60, from)
      const [{ kind, sequence }] = patternsFor(places) as [{ kind: string; sequence: number[] }]
      expect(kind).toBe('cross')
      for (let i = 0; i < sequence.length; i += 2) {
        const there = reflected(places[sequence[i]!]!.at, [7, -3])
        expect(distance(places[sequence[i + 1]!]!.at, there)).toBeLessThan(1e-9)
      }
    }),
    runs(2),
  )
})

test('a round flange that is turned is crossed in the same figure, turned', () => {
  fc.assert(
    fc.property(fc.integer({ min: 3, max: 30 }), fc.double({ min: 0, max: 6, noNaN: true }), (count, from) => {
      const sequence = orders(ring(count, 60, from)).cross!
      const figure = sequence.map((bolt) => (bolt - sequence[0]! + count) % count)
      expect(figure).toEqual(crossPattern(count))
    }),
    runs(3),
  )
})

test('a cover that is turned, mirrored, moved or enlarged is tightened in the same order, save that a round starts elsewhere or runs the other way', () => {
  fc.assert(
    fc.property(fc.integer(), fc.integer({ min: 5, max: 30 }), fc.boolean(), (seed, count, isMirrored) => {
      const draw = random(seed)
      const places = placed(numbered(count).map((): Point => [draw.between(-90, 90), draw.between(-60, 60)]))
      const turn = draw.between(0, 7)
      const [c, s] = [Math.cos(turn), Math.sin(turn)]
      const side = isMirrored ? -1 : 1
      const move = ([x, y]: Point): Point => [30 + 2 * side * (c * x - s * y), 5 + 2 * (s * x + c * y)]
      const { round: _, ...before } = orders(places)
      const { round: __, ...after } = orders(moved(places, move))
      expect(after).toEqual(before)
    }),
    runs(4),
  )
})

test('a round of bolts that all sit on the edge is the same ring of neighbours however the cover lies', () => {
  fc.assert(
    fc.property(fc.integer({ min: 5, max: 20 }), fc.double({ min: 0, max: 6, noNaN: true }), (count, turn) => {
      const oval = placed(
        numbered(count).map((i): Point => {
          const angle = (2 * Math.PI * i) / count
          const [x, y] = [100 * Math.sin(angle), 60 * Math.cos(angle)]
          return [Math.cos(turn) * x + Math.sin(turn) * y, Math.cos(turn) * y - Math.sin(turn) * x]
        }),
      )
      const { round } = orders(oval)
      expect(round!.map((bolt) => (bolt - round![0]! + count) % count)).toEqual(numbered(count))
    }),
    runs(5),
  )
})
