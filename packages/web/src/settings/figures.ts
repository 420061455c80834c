/** Times and sizes as they are read out on the screens of sending and of the shop. */
import { language } from '../words/index.ts'

const STEPS: readonly [Intl.RelativeTimeFormatUnit, number][] = [
  ['day', 86_400_000],
  ['hour', 3_600_000],
  ['minute', 60_000],
]

/** "3 minutes ago", "in 2 days"; below a minute "now". Both in ms since 1970. */
export function fromNow(at: number, now: number): string {
  const say = new Intl.RelativeTimeFormat(language, { numeric: 'auto' })
  const apart = at - now
  for (const [unit, size] of STEPS) if (Math.abs(apart) >= size) return say.format(Math.trunc(apart / size), unit)
  return say.format(0, 'second')
}

/** "3 min", "2 h": how far apart, in ms. */
export function spanWords(span: number): string {
  const [unit, size] = STEPS.find(([, size]) => Math.abs(span) >= size) ?? (['second', 1000] as const)
  const value = Math.round(Math.abs(span) / size)
  return new Intl.NumberFormat(language, { style: 'unit', unit, unitDisplay: 'long' }).format(value)
}

const SIZES = ['byte', 'kilobyte', 'megabyte', 'gigabyte', 'terabyte'] as const

/** "1.2 MB", by thousands. */
export function bytesWords(bytes: number): string {
  let at = 0
  let value = bytes
  // Not 1000: what would be written as 1,000 kB is 1 MB.
  while (value >= 999.5 && at < SIZES.length - 1) {
    value /= 1000
    at++
  }
  return new Intl.NumberFormat(language, {
    style: 'unit',
    unit: SIZES[at]!,
    unitDisplay: 'short',
    maximumFractionDigits: at > 0 && value < 10 ? 1 : 0,
  }).format(value)
}

/** "9:07" until a code is void; "0:00" from then on. In ms. */
export function countdown(left: number): string {
  const seconds = Math.max(0, Math.ceil(left / 1000))
  return `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`
}
