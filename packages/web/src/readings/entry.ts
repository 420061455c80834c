/** From what was typed and the instrument in the hand to the entry. */
import {
  type Fault,
  type Interval,
  intervalOf,
  type LengthUnit,
  MILLIMETRES_IN,
  type Quantity,
  readLength,
} from '@gripbook/engine'
import type { Instrument } from '../device/settings.ts'
import type { HoleQuantity, KindQuantity, ReadQuantity, Spot } from './quantities.ts'

/** The instrument as it stands in an entry. `errorLimit` in the unit of the reading. */
export type Noted = { name: string; number?: string; errorLimit: number; calibratedUntil?: string }

export type Taken = { value: Quantity; instrument: Noted }

export type ReadText = { ok: true; taken: Taken; mm: Interval } | { ok: false; fault: Fault }

/**
 * A reading from its text. The unit is that of the text, else `unit`; ± is that of the text, else the instrument's. Ends ("11 to 13", "at least
 * 11") stand as they are: whoever writes them has carried the doubt already.
 */
export function readingOf(text: string, unit: LengthUnit, instrument: Instrument): ReadText {
  // Some gauges send the sign of a positive figure.
  const read = readLength(text.trim().replace(/^\+/, ''), unit)
  if (!read.ok) return { ok: false, fault: read.faults[0] }
  const plain = typeof read.value === 'number' ? { value: read.value } : read.value
  const own: LengthUnit = plain.unit === 'in' ? 'in' : 'mm'
  const errorLimit = inUnit(instrument, own)
  const bare = 'value' in plain && plain.plusMinus === undefined
  const value: Quantity = bare ? { ...plain, plusMinus: errorLimit } : plain
  const { name, number, calibratedUntil } = instrument
  const noted = {
    name,
    ...(number === undefined ? {} : { number }),
    errorLimit,
    ...(calibratedUntil === undefined ? {} : { calibratedUntil }),
  }
  return {
    ok: true,
    taken: { value, instrument: noted },
    mm: intervalOf(value),
  }
}

/** The ± of an instrument in a unit, to a tenth of a micrometre or a hundred-thousandth of an inch, rounded up so that it is never narrower. */
export function inUnit({ plusMinus, unit }: Pick<Instrument, 'plusMinus' | 'unit'>, wanted: LengthUnit): number {
  if (unit === wanted) return plusMinus
  const exact = (plusMinus * MILLIMETRES_IN[unit]) / MILLIMETRES_IN[wanted]
  const step = wanted === 'mm' ? 1e4 : 1e5
  return Math.ceil(exact * step - 1e-6) / step
}

export type ReadingPlace =
  | { face: string; hole: string; quantity: HoleQuantity }
  | { face?: string; kind: string; quantity: KindQuantity }
  | { face: string; quantity: 'gasket' }

/** Of what a reading is, as the entry says it. */
export function placeOf(face: string, spot: Spot, quantity: ReadQuantity): ReadingPlace {
  if (spot.place === 'face') return { face, quantity: 'gasket' }
  if (spot.place === 'hole') return { face, hole: spot.id, quantity: quantity as HoleQuantity }
  return { ...(spot.shared ? {} : { face }), kind: spot.id, quantity: quantity as KindQuantity }
}

/** What is typed for most readings of a quantity, by common practice, no source: used until another was chosen for it. */
const USUAL: Record<string, string> = {
  bottomDepth: 'depth gauge',
  threadDepth: 'depth gauge',
  proud: 'depth gauge',
  behind: 'depth probe',
}

/** The instrument for a quantity: the one chosen last for it, else the usual one, else the first that there is. */
export function instrumentFor(
  quantity: string,
  { instruments, used }: { instruments: readonly Instrument[]; used: Readonly<Record<string, string>> },
): Instrument {
  const named = (name: string | undefined) => instruments.find((one) => one.name === name)
  return named(used[quantity]) ?? named(USUAL[quantity]) ?? instruments[0] ?? BY_EYE
}

/** Where every instrument was taken out of the list. */
const BY_EYE: Instrument = { name: 'no instrument', plusMinus: 1, unit: 'mm' }

/** A figure as it stands under a number: in the unit of the page, without its ±; "≥ 11" and "11–13" for ends. */
export function shortFigure(value: Quantity, unit: LengthUnit): string {
  const figure = (mm: number) => String(Number((mm / MILLIMETRES_IN[unit]).toFixed(unit === 'mm' ? 2 : 3)))
  const { lo, hi } = intervalOf(value)
  if (isFigure(value)) return figure(midOf(value))
  if (hi === Number.POSITIVE_INFINITY) return `≥ ${figure(lo)}`
  return lo === 0 ? `≤ ${figure(hi)}` : `${figure(lo)}–${figure(hi)}`
}

/** The middle of what a quantity stands for, mm; the end that there is where only one is stated. */
export function midOf(value: Quantity): number {
  if (typeof value === 'number') return value
  const size = MILLIMETRES_IN[value.unit === 'in' ? 'in' : 'mm']
  if ('value' in value) return value.value * size
  if ('nominal' in value) return value.nominal * size
  const { lo, hi } = intervalOf(value)
  return hi === Number.POSITIVE_INFINITY ? lo : (lo + hi) / 2
}

/** One figure, measured or marked, and not only ends. */
export function isFigure(value: Quantity): boolean {
  return typeof value === 'number' || 'value' in value || 'nominal' in value
}
