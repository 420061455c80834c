import { expect, test } from 'vitest'
import type { Cover, Point } from '../../unit.ts'
import { condense } from './condense.ts'
import { rectangle } from './testing/plateChecks.ts'

test.each([
  [0.5, [1.747e-3, 1.4456e-4, 2.8171e-4, 1.15219e-3]],
  [20, [1.8576e-4, 1.2909e-5, 1.7625e-5, 1.24956e-4]],
])(
  'where the thickness jumps the figures are off by no more than is said, and a bolt on the rib by little of its own: bed of %s N/mm³',
  (stiffness, figures) => {
    // Calculated: conforming bicubic elements (Bogner, Fox and Schmit 1965) of 1.5 mm whose edges lie on those of the regions, by a program of its own; 3 mm gives the same to 0.06 %.
    const cover: Cover = {
      outline: rectangle(180, 110, 0).outline,
      thickness: 5,
      regions: [
        { outline: box(20, 45, 160, 65), thickness: 14 },
        { outline: box(0, 0, 40, 40), thickness: 3 },
      ],
      young: 70_000,
      poisson: 0.33,
    }
    const places: Point[] = [
      [6, 6],
      [90, 55],
      [30, 50],
      [174, 104],
    ]
    const { compliance, error } = condense(cover, { stiffness }, places)
    figures.forEach((figure, i) => {
      expect(Math.abs(compliance[i]![i]! - figure) / Math.max(...figures)).toBeLessThan(error)
      expect(Math.abs(compliance[i]![i]! - figure) / figure).toBeLessThan(0.025)
    })
  },
)

function box(left: number, low: number, right: number, high: number): Point[] {
  return [
    [left, low],
    [right, low],
    [right, high],
    [left, high],
  ]
}
