import { expect, test } from 'vitest'
import { outlinesOf, turningArea } from './blocks.ts'
import { whyNoCalculix } from './calculix.ts'
import { bolts, lattice, oddCover } from './oddCover.ts'
import { compare, THIN_LIMIT } from './trial.ts'

/** About 5 mm: five hundred elements. Halving them moves CalculiX's own greatest term by 0.2 %. */
const SIZE = 5

test('the odd cover is what it is said to be: one outline, one opening, a thicker part, every bolt on the cover', () => {
  const [cover, whole] = [outlinesOf(lattice, () => true), Math.abs(turningArea(oddCover.outline))]
  expect(cover.length).toBe(2)
  expect(oddCover.openings?.length).toBe(1)
  expect(oddCover.regions?.length).toBe(1)
  expect(bolts.length).toBe(10)
  expect(Math.abs(turningArea(oddCover.openings![0]!))).toBeLessThan(whole / 10)
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
