import type { Fault, FaultPath, Read } from '../faults.ts'
import type { Interval } from './interval.ts'
import type { Figure, LengthUnit, Quantity, TorqueUnit, UnitName } from './quantity.ts'
import { type Dimension, sizeOf, unitsOf } from './units.ts'

/** Ways to write a unit, lower case, without blanks and dots in the middle. */
const SPELLINGS: Readonly<Record<string, UnitName>> = {
  mm: 'mm',
  millimetre: 'mm',
  millimetres: 'mm',
  millimeter: 'mm',
  millimeters: 'mm',
  in: 'in',
  inch: 'in',
  inches: 'in',
  '"': 'in',
  '″': 'in',
  nm: 'N·m',
  lbfft: 'lbf·ft',
  lbft: 'lbf·ft',
  lbsft: 'lbf·ft',
  ftlb: 'ft-lb',
  ftlbs: 'ft-lb',
  ftlbf: 'ft-lb',
  lbfin: 'lbf·in',
  lbin: 'lbf·in',
  lbsin: 'lbf·in',
  inlb: 'lbf·in',
  inlbs: 'lbf·in',
  inlbf: 'lbf·in',
  kgfm: 'kgf·m',
  kgm: 'kgf·m',
  mkgf: 'kgf·m',
  mkg: 'kgf·m',
}

/** The unit that a text means ("ft-lbs", "N.m", "inch"), or undefined. */
export function readUnit(text: string): UnitName | undefined {
  const spelling = text
    .trim()
    .toLowerCase()
    .replaceAll(/[\s.·⋅∙*-]/g, '')
  return Object.hasOwn(SPELLINGS, spelling) ? SPELLINGS[spelling] : undefined
}

/**
 * A length as it is written: "31.9", "31.9 ± 0.1 mm", "2.553 in", "1 1/4 in", "11 to 13 mm", "≥ 11", "at most 13 mm", "2.553 in (64.55 mm)". A comma
 * may stand for the point. Without a unit it is in `unit`. The answer keeps the unit as it was written.
 * Faults: `not-a-length`, `unknown-unit`, `wrong-dimension`, `negative`, `ends-crossed`, `two-figures-disagree`.
 */
export function readLength(text: string, unit: LengthUnit = 'mm'): Read<Quantity> {
  return readQuantity(text, 'length', unit)
}

/**
 * A torque as it is written: "10 Nm", "20 lbf·ft", "9 to 11 N·m", "90 in-lb". Without a unit it is in `unit`.
 * Faults: `not-a-torque` and those of `readLength`.
 */
export function readTorque(text: string, unit: TorqueUnit = 'N·m'): Read<Quantity> {
  return readQuantity(text, 'torque', unit)
}

const NUMBER = String.raw`[+-]?(?:\d+ \d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?|\.\d+)`
const TAIL = String.raw`\s*([^\d\s()][^\d()]*?)?\s*`
const WITH_ALSO = /^(.+?)\s*\(([^()]+)\)$/
const ONE = new RegExp(`^(${NUMBER})${TAIL}$`)
const PLUS_MINUS = new RegExp(String.raw`^(${NUMBER})\s*(?:±|\+\s*\/\s*-|\+-)\s*(${NUMBER})${TAIL}$`)
const FROM_TO = new RegExp(String.raw`^(${NUMBER})${TAIL}(?:–|-|to|\.\.\.?|…)\s*(${NUMBER})${TAIL}$`)
const AT_LEAST = new RegExp(`^(?:≥|>=|>|at least|min\\.?|minimum)\\s*(${NUMBER})${TAIL}$`)
const AT_MOST = new RegExp(`^(?:≤|<=|<|at most|max\\.?|maximum|up to)\\s*(${NUMBER})${TAIL}$`)

function readQuantity(text: string, dimension: Dimension, unit: UnitName): Read<Quantity> {
  const plain = text
    .trim()
    .toLowerCase()
    .replaceAll('−', '-')
    .replaceAll(/(\d),(\d)/g, '$1.$2')
    .replaceAll(/\s+/g, ' ')
  const both = WITH_ALSO.exec(plain)
  if (!both) return readOne(plain, text, dimension, unit)
  const first = readOne(both[1] as string, text, dimension, unit)
  const second = readOne(both[2] as string, text, dimension, unit)
  if (!first.ok) return first
  if (!second.ok) return second
  const value = asFigure(first.value)
  const also = asFigure(second.value)
  if (!value || !also) return fail(notOne(dimension, text))
  const disagree = checkTwoFigures({ ...value, also }, dimension)
  return disagree ? fail(disagree) : { ok: true, value: { ...value, also } }
}

function asFigure(quantity: Quantity): Figure | undefined {
  if (typeof quantity === 'number') return { value: quantity }
  return 'value' in quantity ? quantity : undefined
}

function readOne(plain: string, text: string, dimension: Dimension, unit: UnitName): Read<Quantity> {
  const plusMinus = PLUS_MINUS.exec(plain)
  if (plusMinus) {
    const value = numberOf(plusMinus[1] as string)
    const off = numberOf(plusMinus[2] as string)
    return inUnit(plusMinus[3], dimension, unit, [value, off], (u) => ({ value, plusMinus: off, ...u }))
  }
  const one = ONE.exec(plain)
  if (one) {
    const value = numberOf(one[1] as string)
    return inUnit(one[2], dimension, unit, [value], (u) => ('unit' in u ? { value, ...u } : value))
  }
  const range = FROM_TO.exec(plain)
  if (range) {
    const atLeast = numberOf(range[1] as string)
    const atMost = numberOf(range[3] as string)
    if (range[2] !== undefined && range[4] !== undefined && readUnit(range[2]) !== readUnit(range[4]))
      return fail(notOne(dimension, text))
    if (atLeast > atMost) return fail({ code: 'ends-crossed', path: [], atLeast, atMost })
    return inUnit(range[4] ?? range[2], dimension, unit, [atLeast, atMost], (u) => ({ atLeast, atMost, ...u }))
  }
  const least = AT_LEAST.exec(plain)
  if (least) {
    const atLeast = numberOf(least[1] as string)
    return inUnit(least[2], dimension, unit, [atLeast], (u) => ({ atLeast, ...u }))
  }
  const most = AT_MOST.exec(plain)
  if (most) {
    const atMost = numberOf(most[1] as string)
    return inUnit(most[2], dimension, unit, [atMost], (u) => ({ atMost, ...u }))
  }
  return fail(notOne(dimension, text))
}

/** "12.5", "3/8" and "1 1/4" as a number. */
function numberOf(written: string): number {
  const sign = written.startsWith('-') ? -1 : 1
  const parts = written.replace(/^[+-]/, '').split(' ')
  return (
    sign *
    parts.reduce((sum, part) => {
      const [over, under = '1'] = part.split('/')
      return sum + Number(over) / Number(under)
    }, 0)
  )
}

type WithUnit = { unit: UnitName } | Record<never, never>

function inUnit(
  written: string | undefined,
  dimension: Dimension,
  fallback: UnitName,
  numbers: readonly number[],
  make: (unit: WithUnit) => Quantity,
): Read<Quantity> {
  const unit = written === undefined ? fallback : readUnit(written)
  if (unit === undefined)
    return fail({ code: 'unknown-unit', path: [], found: written as string, expected: unitsOf(dimension) })
  if (sizeOf(unit, dimension) === undefined)
    return fail({ code: 'wrong-dimension', path: [], found: unit, expected: dimension })
  const bad = numbers.find((n) => !Number.isFinite(n))
  if (bad !== undefined) return fail(notOne(dimension, String(written ?? bad)))
  const negative = numbers.find((n) => n < 0)
  if (negative !== undefined) return fail({ code: 'negative', path: [], found: negative })
  // the unit that stands for itself is not repeated: 12.3 is 12.3 mm or 12.3 N·m
  return { ok: true, value: make(unit === 'mm' || unit === 'N·m' ? {} : { unit }) }
}

function notOne(dimension: Dimension, found: string): Fault {
  return dimension === 'length' ? { code: 'not-a-length', path: [], found } : { code: 'not-a-torque', path: [], found }
}

function fail(fault: Fault): { ok: false; faults: [Fault] } {
  return { ok: false, faults: [fault] }
}

/**
 * Do a figure and its `also` in another unit agree within the last digit printed? They may differ by no more than one unit of the coarser last decimal,
 * both converted. A trailing zero is not kept by a number, so "64.50" counts as 64.5, which is the lenient side.
 * Null when they agree or there is no second figure; else the fault `two-figures-disagree` with the difference in mm or N·m, or `wrong-dimension`.
 */
export function checkTwoFigures(
  figure: Figure & { also?: Figure },
  dimension: Dimension = 'length',
  path: FaultPath = [],
): Fault | null {
  const { also } = figure
  if (also === undefined) return null
  const own: UnitName = dimension === 'length' ? 'mm' : 'N·m'
  const unit = figure.unit ?? own
  const alsoUnit = also.unit ?? own
  const size = sizeOf(unit, dimension)
  const alsoSize = sizeOf(alsoUnit, dimension)
  if (size === undefined) return { code: 'wrong-dimension', path, found: unit, expected: dimension }
  if (alsoSize === undefined)
    return { code: 'wrong-dimension', path: [...path, 'also'], found: alsoUnit, expected: dimension }
  const off = Math.abs(figure.value * size - also.value * alsoSize)
  const allowed = Math.max(lastDigit(figure.value) * size, lastDigit(also.value) * alsoSize)
  if (off <= allowed * (1 + 1e-9)) return null
  return { code: 'two-figures-disagree', path, value: figure.value, unit, also: also.value, alsoUnit, off }
}

/** One unit of the last decimal of a number: 0.001 for 2.553, 1 for 20. */
function lastDigit(value: number): number {
  const text = String(value)
  const exponent = /e([+-]\d+)$/.exec(text)
  const decimals = /\.(\d+)/.exec(text)?.[1]?.length ?? 0
  return 10 ** (Number(exponent?.[1] ?? 0) - decimals)
}

/** A number as it is read at the bench: so many decimals at most, no trailing zeros. */
function figureText(value: number, decimals: number): string {
  const text = value.toFixed(decimals)
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text
}

/** A quantity as text, in the unit it was entered in: "31.9 ± 0.1 mm", "11 to 13 mm", "at least 11 mm", "20 lbf·ft (27 N·m)". */
export function writeQuantity(quantity: Quantity, dimension: Dimension = 'length'): string {
  const own = dimension === 'length' ? 'mm' : 'N·m'
  if (typeof quantity === 'number') return `${quantity} ${own}`
  const unit = quantity.unit ?? own
  if ('value' in quantity) {
    const off = quantity.plusMinus === undefined ? '' : ` ± ${quantity.plusMinus}`
    const also = quantity.also === undefined ? '' : ` (${writeQuantity(quantity.also, dimension)})`
    return `${quantity.value}${off} ${unit}${also}`
  }
  if ('nominal' in quantity) return `nominally ${quantity.nominal} ${unit}`
  const { atLeast, atMost } = quantity
  if (atLeast === undefined) return atMost === undefined ? 'unknown' : `at most ${atMost} ${unit}`
  return atMost === undefined ? `at least ${atLeast} ${unit}` : `${atLeast} to ${atMost} ${unit}`
}

/** An interval in mm or N·m as text in any unit of that dimension, with at most `decimals` decimals: "11 to 13 mm", "at least 11 mm", "unknown". */
export function writeInterval({ lo, hi }: Interval, unit: UnitName = 'mm', decimals = 2): string {
  const size = sizeOf(unit, 'length') ?? (sizeOf(unit, 'torque') as number)
  const least = figureText(lo / size, decimals)
  if (hi === Number.POSITIVE_INFINITY) return lo <= 0 ? 'unknown' : `at least ${least} ${unit}`
  const most = figureText(hi / size, decimals)
  return least === most ? `${least} ${unit}` : `${least} to ${most} ${unit}`
}
