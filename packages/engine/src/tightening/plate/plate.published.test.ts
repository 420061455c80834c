import { expect, test } from 'vitest'
import * as easy from '../../../published/easy-cover.ts'
import * as beams from '../../../published/hetenyi-beams.ts'
import * as beds from '../../../published/plates-on-beds.ts'
import * as roark from '../../../published/roark-plates.ts'
import * as books from '../../../published/timoshenko-plates.ts'
import { failures } from '../../joints/testing/check.ts'
import type { Point } from '../../unit.ts'
import { condense } from './condense.ts'
import { bent, deflectionAt, type Hold, heldPlate } from './testing/heldPlate.ts'
import { easyCompliance, plateChecks, rectangle } from './testing/plateChecks.ts'

// the sums run inside the tests, once, and never while they are collected: a sum that breaks must fail a test
let made: ReturnType<typeof plateChecks> | undefined
const checks = () => {
  made ??= plateChecks()
  return made
}
const tables = [books, roark, beds, beams, easy]
  .flatMap((module): unknown[] => Object.values(module))
  .filter((value): value is typeof beds.infinite => typeof value === 'object' && value !== null && 'rows' in value)

test.each(tables.map(({ source, table, basis }) => [source, table, basis]))(
  '[TI1] figures of plates agree with %s, %s (%s)',
  (source, table, basis) => {
    const of = checks().filter((check) => check.source === `${source}, ${table}` && check.basis === basis)
    expect(of.length).toBeGreaterThan(0)
    expect(failures(of)).toEqual([])
  },
)

test('no published figure of a plate is left without its check', () => {
  expect(checks().length).toBe(tables.reduce((sum, { rows }) => sum + rows.length, 0))
})

test('on the grid that it chooses by itself the easy cover is within a twentieth of a percent of Argyris triangles of 1.25 mm', () => {
  const chosen = easyCompliance()
  const largest = Math.max(...chosen.flat())
  for (const [at, load, sink] of easy.thinPlate.rows)
    expect(Math.abs(chosen[Number(at)]![Number(load)]! - Number(sink))).toBeLessThan(0.0005 * largest)
})

test('a slot narrower than a cell parts the cover: two strips on a bed, 1 mm apart and joined at their far end, each sink at the free end by 2Pλ/κ, and the other not (Hetényi, half-infinite beam)', () => {
  const [length, wide, slot] = [400, 5, 1]
  const side = 2 * wide + slot
  const outline: Point[] = [
    [0, 0],
    [length, 0],
    [length, side],
    [0, side],
    [0, wide + slot],
    [length - wide, wide + slot],
    [length - wide, wide],
    [0, wide],
  ]
  const cover = { outline, thickness: 8, young: 110_000, poisson: 0 }
  const ends: Point[] = [
    [0, wide / 2],
    [0, side - wide / 2],
  ]
  for (const grid of [undefined, 10, 4, 1.3]) {
    const { compliance } = condense(cover, { stiffness: 5 }, ends, grid)
    // λ = (κ/(4EI))^¼, κ = 25 N/mm², I = 5·8³/12
    const beam = (2 * (25 / (4 * 110_000 * ((5 * 8 ** 3) / 12))) ** 0.25) / 25
    expect(compliance[0]![0]! / beam).toBeCloseTo(1, 2)
    expect(compliance[1]![1]! / beam).toBeCloseTo(1, 2)
    expect(Math.abs(compliance[0]![1]! / beam)).toBeLessThan(0.001)
  }
})

test('a cantilever strip sinks by P L³/(3 E I), and a wide one bent to a cylinder by D in place of E I (Timoshenko & Woinowsky-Krieger, art. 1)', () => {
  const [length, width] = [200, 40]
  const root: Hold = { from: [0, 0], to: [0, width], deflection: true, slope: true }
  const level: Hold[] = [0, width].map((y) => ({ from: [0, y], to: [length, y], deflection: false, slope: true }))
  const free = heldPlate(rectangle(length, width, 0), 10, [root])
  const cylinder = heldPlate(rectangle(length, width, 0.3), 10, [root, ...level])
  for (const held of [free, cylinder]) {
    const sink = deflectionAt(held, bent(held, [{ from: [length, 0], to: [length, width], force: 1 }]), [length, 15])
    expect((sink * 3 * held.rigidity * width) / length ** 3).toBeCloseTo(1, 4)
  }
  expect(cylinder.rigidity).toBeCloseTo(free.rigidity / (1 - 0.3 ** 2), 6)
})
