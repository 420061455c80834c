import { must } from '../must.ts'
import { intervalOf, middleOf } from '../quantity/interval.ts'
import type { Quantity } from '../quantity/quantity.ts'
import type { Cover, Face } from '../unit.ts'

/** The cover of a face that has one as a plate in mm, each thickness in the middle of what is stated. A thickness has a figure above 0, or both ends of what it may be. */
export function coverOf({ cover }: Face): Cover {
  const { thickness, regions, ...stated } = cover!
  return {
    ...stated,
    thickness: inMm(thickness),
    ...(regions === undefined
      ? {}
      : { regions: regions.map((region) => ({ ...region, thickness: inMm(region.thickness) })) }),
  }
}

/** Whether a thickness is stated with a tolerance or as a range, so that the middle of it is taken. */
export function hasThicknessRange({ cover }: Face): boolean {
  const { thickness, regions = [] } = cover!
  return [thickness, ...regions.map((region) => region.thickness)].some((one) => {
    const { lo, hi } = intervalOf(one)
    return lo < hi
  })
}

function inMm(thickness: Quantity): number {
  const middle = middleOf(intervalOf(thickness))
  must(middle > 0 && middle < Number.POSITIVE_INFINITY, 'coverOf: a thickness without a figure', { thickness })
  return middle
}
