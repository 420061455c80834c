import { expect, test } from 'vitest'
import { outlinesOf, turningArea } from './blocks.ts'
import { THIN_LIMIT } from './byCalculix.ts'
import { whyNoCalculix } from './calculix.ts'
import { oddCover } from './oddCover.ts'
import { compare } from './trial.ts'

/** About 5 mm: five hundred elements. Halving them moves CalculiX's own greatest term by 0.2 %. */
const SIZE = 5

test('the odd cover is what it is said to be: one outline, one opening, a thicker part, every bolt on the cover', () => {
  const { lattice, cover, bolts } = oddCover
  const [lines, whole] = [outlinesOf(lattice, () => true), Math.abs(turningArea(cover.outline))]
  expect(lines.length).toBe(2)
  expect(cover.openings?.length).toBe(1)
  expect(cover.regions?.length).toBe(1)
  expect(bolts.length).toBe(10)
  expect(Math.abs(turningArea(cover.openings![0]!))).toBeLessThan(whole / 10)
})

test.for([0.5, 5, 50])(
  'on a bed of %s N/mm³ CalculiX in the thin limit finds the same compliance for the odd cover within a hundredth of the largest term',
  (bed, context) => {
    const why = whyNoCalculix()
    if (why !== null) context.skip(why)
    expect(compare(bed, SIZE, THIN_LIMIT).worst).toBeLessThan(1)
  },
)

test('at its true thickness CalculiX finds the odd cover softer by its shear, and by no more than a doubt that ranks orders can bear', (context) => {
  const why = whyNoCalculix()
  if (why !== null) context.skip(why)
  const { worst, diagonal } = compare(5, SIZE, 1)
  expect(worst).toBe(diagonal)
  expect(worst).toBeGreaterThan(1)
  expect(worst).toBeLessThan(6)
})
