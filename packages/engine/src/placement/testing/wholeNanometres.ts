import { must } from '../../must.ts'
import { lengthTolerance } from '../../quantity/interval.ts'
import type { Quantity } from '../../quantity/quantity.ts'
import type { Bounds } from './exactLinear.ts'

/** mm as a whole number of nanometres. Decimal figures become exact, so that a tie in the file is a tie in the sums. */
export function nanometres(mm: number): number {
  const whole = Math.round(mm * 1e6)
  must(Math.abs(mm * 1e6 - whole) < 1e-3, 'a length is a whole number of nanometres', mm)
  return whole
}

/** The values that a length in the file may have, in nanometres; `otherwise` when it is absent. */
export function lengthBounds(quantity: Quantity | undefined, otherwise: Bounds): Bounds {
  if (quantity === undefined) return otherwise
  if (typeof quantity === 'number') return { lo: nanometres(quantity), hi: nanometres(quantity) }
  const size = quantity.unit === 'in' ? 25.4 : 1
  const read = (figure: number) => nanometres(figure * size)
  if ('nominal' in quantity) {
    const off = nanometres(lengthTolerance(quantity.nominal * size))
    return { lo: Math.max(0, read(quantity.nominal) - off), hi: read(quantity.nominal) + off }
  }
  if ('value' in quantity) {
    const off = read(quantity.plusMinus ?? 0)
    return { lo: Math.max(0, read(quantity.value) - off), hi: read(quantity.value) + off }
  }
  return {
    lo: quantity.atLeast === undefined ? 0 : read(quantity.atLeast),
    hi: quantity.atMost === undefined ? Number.POSITIVE_INFINITY : read(quantity.atMost),
  }
}
