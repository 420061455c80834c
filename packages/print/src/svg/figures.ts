import { type Interval, type LengthUnit, MILLIMETRES_IN } from '@gripbook/engine'

const DIGITS: Record<LengthUnit, number> = { mm: 2, in: 3 }

/** A length in mm as figures of the reader's unit, without the unit: two decimals in mm, three in inches, no idle noughts. */
export function figure(mm: number, unit: LengthUnit): string {
  const rounded = Number((mm / MILLIMETRES_IN[unit]).toFixed(DIGITS[unit]))
  return String(rounded === 0 ? 0 : rounded).replace('-', '\u2212')
}

export function length(mm: number, unit: LengthUnit): string {
  return `${figure(mm, unit)}\u00a0${unit}`
}

/** "31.9 ± 0.1", "11 to 13", "at least 16", "? not known". Narrow intervals are told by their middle, wide ones by their ends. */
export function intervalFigures({ lo, hi }: Interval, unit: LengthUnit): string {
  if (!Number.isFinite(hi)) return lo > 0 ? `at least ${figure(lo, unit)}` : '? not known'
  const half = (hi - lo) / 2
  if (figure(half, unit) === '0') return figure((lo + hi) / 2, unit)
  if (half <= 0.75 && lo > 0) return `${figure((lo + hi) / 2, unit)}\u00a0±\u00a0${figure(half, unit)}`
  return `${figure(lo, unit)} to ${figure(hi, unit)}`
}
