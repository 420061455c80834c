import type { Read } from '../faults.ts'
import { coarsePitch, METRIC_SERIES } from './metricSeries.ts'
import type { Thread } from './thread.ts'
import { inchesOf, UNIFIED_SIZES, type UnifiedSeries } from './unifiedSeries.ts'

const MM_PER_INCH = 25.4

// M, diameter, perhaps a pitch, perhaps a tolerance class such as 6g, 5g6g or 6H/6g, which changes no size of the designation
const METRIC =
  /^M ?(\d+(?:\.\d+)?)(?: ?[X*-] ?(\d*\.?\d+))?(?: ?-? ?\d[EFGH](?:\d[EFGH])?(?: ?\/ ?\d[EFGH](?:\d[EFGH])?)?)?$/
// size, perhaps inch marks, threads per inch, perhaps a series, perhaps a class 1A to 3B
const UNIFIED = /^(#? ?[\d/ .-]*?\d)(?: ?")?(?: ?[-X] ?(\d{1,2}))?(?: ?-? ?(UNC|UNF|UNEF))?(?: ?-? ?[123][AB])?$/

/**
 * A thread from its designation: "M6", "M8x1", "M8×1.25", "M10 x 1.25", "5/16-18 UNC", "1/4-20", "#10-24 UNC", "7/16 UNF".
 * The coarse pitch is filled in where a metric designation gives none; a tolerance class (6g, 6H, 2A, 2B) may follow and is not kept.
 * Left-hand threads are not read: taken for right-hand ones they would be wrong.
 * Faults: `not-a-thread` for anything that is no size of ISO 261 or of the UNC, UNF or UNEF series, wrong combinations included.
 * @example readThread('M8x1.25') // { ok: true, value: { profile: 'metric', diameter: 8, pitch: 1.25, name: 'M8' } }
 */
export function readThread(text: string): Read<Thread> {
  const plain = text
    .trim()
    .toUpperCase()
    .replaceAll('×', 'X')
    .replaceAll(',', '.')
    .replaceAll(/\s+/g, ' ')
    .replaceAll('–', '-')
  const thread = readMetric(plain) ?? readUnified(plain)
  return thread ? { ok: true, value: thread } : { ok: false, faults: [{ code: 'not-a-thread', path: [], found: text }] }
}

function readMetric(plain: string): Thread | undefined {
  const match = METRIC.exec(plain)
  if (!match) return undefined
  const diameter = Number(match[1])
  const size = METRIC_SERIES.find(([d]) => d === diameter)
  if (!size) return undefined
  const coarse = size[1]
  const pitch = match[2] === undefined ? coarse : Number(match[2])
  if (pitch === null || (pitch !== coarse && !size[2].includes(pitch))) return undefined
  return metricThread(diameter, pitch)
}

/** A metric thread from its sizes in mm, named as the series names it. */
export function metricThread(diameter: number, pitch: number): Thread {
  const name = pitch === coarsePitch(diameter) ? `M${diameter}` : `M${diameter}×${pitch}`
  return { profile: 'metric', diameter, pitch, name }
}

function readUnified(plain: string): Thread | undefined {
  const match = UNIFIED.exec(plain.replace(/^(?:NO\.?|NR\.?) ?/, '#'))
  if (!match) return undefined
  const written = match[1]?.replaceAll(' ', '').startsWith('#') ? match[1].replaceAll(' ', '') : (match[1] ?? '')
  const perInch = match[2] === undefined ? undefined : Number(match[2])
  const series = match[3] as UnifiedSeries | undefined
  if (perInch === undefined && series === undefined) return undefined
  for (const size of sizesMeant(written)) {
    const row = UNIFIED_SIZES.find(([name]) => name === size)
    if (!row) continue
    const [, unc, unf, unef] = row
    const known: [UnifiedSeries, number | null][] = [
      ['UNC', unc],
      ['UNF', unf],
      ['UNEF', unef],
    ]
    const found = known.find(
      ([name, n]) =>
        n !== null && (series === undefined || series === name) && (perInch === undefined || perInch === n),
    )
    if (!found) continue
    const threads = found[1] as number
    return {
      profile: 'unified',
      diameter: inchesOf(size) * MM_PER_INCH,
      pitch: MM_PER_INCH / threads,
      name: `${size}-${threads} ${found[0]}`,
    }
  }
  return undefined
}

/** A bare number can be a number size or whole inches ("10-24", "1-8"), a decimal is the diameter in inches, "1-1/8" is "1 1/8". */
function sizesMeant(written: string): string[] {
  if (written.includes('.')) {
    const inches = Number(written)
    return UNIFIED_SIZES.filter(([size]) => Math.abs(inchesOf(size) - inches) < 0.0006).map(([size]) => size)
  }
  if (/^\d+$/.test(written)) return [`#${written}`, written]
  return [written.replace(/^(\d+)[ -](?=\d+\/)/, '$1 ')]
}
