import {
  type CameToRest,
  type Interval,
  intervalOf,
  lengthTolerance,
  readTorque,
  type Thread,
  type TurnsWanted,
  type UsedBolt,
  type Wrench,
  wrenchFitness,
} from '@gripbook/engine'
import { lengthOption, OptionFault, type OptionName, quantityOption, RESTS } from './jointOptionFault.ts'

type Values = ReadonlyMap<string, string>

/** How a bolt is turned in beside its torque: what the bench knows of it. Lengths in mm, angles in degrees. */
export type BenchAsked = {
  wrench?: Wrench
  swivel?: number
  angle?: { angle: Interval; clamped: Interval; shank?: Interval }
  turns?: TurnsWanted & { bottom?: Interval; stopped?: { counted: number; rest: CameToRest } }
  used?: UsedBolt
  /** Size across flats of a socket. */
  socket?: number
}

/** No bolt of a gearbox is longer, in mm: a figure above it is a slip. */
const MOST_LENGTH = 500
const MOST_SOCKET = 60
const MOST_TURNS = 500
/** A swivel beyond this turns no bolt at the bench: common practice, no source. */
const MOST_SWIVEL = 60
/** A certificate that states more is no wrench's, or it is written as a share. */
const MOST_DEVIATION = 25
const MOST_MONTHS = 60

/** What the options beside the torque ask. `thread` is absent where only a socket is asked for. Throws `OptionFault` for the first that cannot be used. */
export function benchAsked(values: Values, thread: Thread | undefined): BenchAsked {
  const wrench = wrenchOption(values)
  const swivel = values.get('--swivel')
  const angle = angleOption(values)
  const turns = turnsOption(values, thread)
  const used = usedOption(values)
  const socket = values.get('--socket')
  return {
    ...(wrench ? { wrench } : {}),
    ...(swivel === undefined ? {} : { swivel: degrees('--swivel', swivel, 0, MOST_SWIVEL).hi }),
    ...(angle ? { angle } : {}),
    ...(turns ? { turns } : {}),
    ...(used ? { used } : {}),
    ...(socket === undefined ? {} : { socket: socketOption(socket) }),
  }
}

function wrenchOption(values: Values): Wrench | undefined {
  const text = values.get('--wrench')
  const deviation = values.get('--deviation')
  const calibrated = values.get('--calibrated')
  const months = values.get('--calibrated-for')
  if (text === undefined) {
    needs(values, ['--deviation', '--calibrated', '--calibrated-for'], '--wrench')
    return undefined
  }
  const range = intervalOf(quantityOption('--wrench', text, readTorque(text)), 'torque')
  if (!(range.lo > 0 && range.hi > range.lo && range.hi <= 2000))
    throw new OptionFault('--wrench', text, 'must have both ends, above 0 and at most 2000 N·m')
  if (calibrated === undefined) needs(values, ['--calibrated-for'], '--calibrated')
  if (
    calibrated !== undefined &&
    wrenchFitness({ range, calibrated }, range.hi, calibrated).findings.includes('calibration date not readable')
  )
    throw new OptionFault('--calibrated', calibrated, 'is no day of the calendar')
  return {
    range,
    ...(deviation === undefined ? {} : { deviation: deviationOption(deviation) }),
    ...(calibrated === undefined ? {} : { calibrated }),
    ...(months === undefined ? {} : { calibrationMonths: monthsOption(months) }),
  }
}

function deviationOption(text: string): number {
  const percent = number(/^(?:±|\+\/?-)?\s*(\d+(?:[.,]\d+)?)\s*%?$/.exec(text.trim())?.[1])
  if (percent === undefined) throw new OptionFault('--deviation', text)
  if (!(percent > 0 && percent <= MOST_DEVIATION))
    throw new OptionFault('--deviation', text, `must be above 0 and at most ${MOST_DEVIATION} %`)
  // a share such as 0.04 would be read as hardly any deviation at all
  if (percent < 0.5) throw new OptionFault('--deviation', text, 'is too small for a wrench, it is read as per cent')
  return percent / 100
}

function monthsOption(text: string): number {
  const months = number(/^(\d+)(?:\s*months?)?$/.exec(text.trim())?.[1])
  if (months === undefined) throw new OptionFault('--calibrated-for', text)
  if (!(months >= 1 && months <= MOST_MONTHS))
    throw new OptionFault('--calibrated-for', text, `must be 1 to ${MOST_MONTHS} months`)
  return months
}

function angleOption(values: Values): BenchAsked['angle'] {
  const text = values.get('--angle')
  const clamped = values.get('--clamped')
  const shank = values.get('--shank')
  if (text === undefined) {
    needs(values, ['--clamped', '--shank'], '--angle')
    return undefined
  }
  const angle = degrees('--angle', text, 1, 720)
  for (const needed of ['--clamped', '--material'] as const)
    if (!values.has(needed)) throw new OptionFault(needed, undefined, '--angle needs it')
  const length = above0('--clamped', clamped!)
  const plain = shank === undefined ? undefined : lengthOption('--shank', shank, MOST_LENGTH)
  if (plain && plain.lo > length.hi) throw new OptionFault('--shank', shank, 'is longer than what is clamped')
  return { angle, clamped: length, ...(plain ? { shank: plain } : {}) }
}

function turnsOption(values: Values, thread: Thread | undefined): BenchAsked['turns'] {
  const text = values.get('--stick-out')
  if (text === undefined || thread === undefined) {
    needs(values, ['--mouth', '--tip', '--bottom', '--turns', '--rest'], '--stick-out')
    return undefined
  }
  const { pitch } = thread
  const mouth = values.get('--mouth')
  const tip = values.get('--tip')
  const bottom = values.get('--bottom')
  const stopped = stoppedOption(values)
  const free = mouth === undefined ? { lo: 0, hi: 0 } : lengthOption('--mouth', mouth, MOST_LENGTH)
  const depth = bottom === undefined ? undefined : above0('--bottom', bottom)
  if (depth && depth.hi <= free.lo) throw new OptionFault('--bottom', bottom, 'is not deeper than the mouth')
  return {
    pitch,
    stickOut: above0('--stick-out', text),
    mouth: free,
    // as in a unit file: a tip that nobody measured has 1 to 2 pitches without full thread
    tip: tip === undefined ? { lo: pitch, hi: 2 * pitch } : lengthOption('--tip', tip, MOST_LENGTH),
    ...(depth ? { bottom: depth } : {}),
    ...(stopped ? { stopped } : {}),
  }
}

function stoppedOption(values: Values): { counted: number; rest: CameToRest } | undefined {
  const text = values.get('--turns')
  const how = values.get('--rest')
  if (text === undefined && how === undefined) return undefined
  if (text === undefined) throw new OptionFault('--turns', undefined, '--rest needs it')
  if (how === undefined) throw new OptionFault('--rest', undefined, '--turns needs it')
  const counted = number(/^(\d+(?:[.,]\d+)?|[.,]\d+)$/.exec(text.trim())?.[1])
  if (counted === undefined) throw new OptionFault('--turns', text)
  if (counted > MOST_TURNS) throw new OptionFault('--turns', text, `must be at most ${MOST_TURNS}`)
  const plain = how.trim().toLowerCase()
  const rest = RESTS.find((known) => known === plain)
  if (!rest) throw new OptionFault('--rest', how)
  return { counted, rest }
}

function usedOption(values: Values): UsedBolt | undefined {
  const asNew = values.get('--new-length')
  const now = values.get('--length-now')
  if (asNew === undefined && now === undefined) return undefined
  if (asNew === undefined) throw new OptionFault('--new-length', undefined, '--length-now needs it')
  if (now === undefined) throw new OptionFault('--length-now', undefined, '--new-length needs it')
  return { measured: above0('--length-now', now), asNew: newLength(asNew) }
}

/** "nominal 45 mm" is what a standard lets a new bolt of that length be. */
function newLength(text: string): Interval {
  const nominal = /^nominal(?:ly)?\s+(.+)$/i.exec(text.trim())?.[1]
  if (nominal === undefined) return above0('--new-length', text)
  const { lo, hi } = above0('--new-length', nominal)
  return { lo: Math.max(0, lo - lengthTolerance(lo)), hi: hi + lengthTolerance(hi) }
}

function socketOption(text: string): number {
  const { lo, hi } = lengthOption('--socket', text, MOST_SOCKET)
  if (lo !== hi) throw new OptionFault('--socket', text, 'must be one size')
  if (!(lo > 0)) throw new OptionFault('--socket', text, 'must be above 0')
  return lo
}

function above0(option: OptionName, text: string): Interval {
  const mm = lengthOption(option, text, MOST_LENGTH)
  if (!(mm.hi > 0)) throw new OptionFault(option, text, 'must be above 0')
  return mm
}

/** "20", "20°", "85-95", "85 to 95 degrees". */
function degrees(option: '--swivel' | '--angle', text: string, least: number, most: number): Interval {
  const figure = String.raw`(\d+(?:[.,]\d+)?)`
  const unit = String.raw`\s*(?:°|deg|degrees)?`
  const range = option === '--angle' ? String.raw`(?:${unit}\s*(?:-|–|to)\s*${figure})?` : ''
  const match = new RegExp(`^${figure}${range}${unit}$`).exec(text.trim().toLowerCase())
  if (!match) throw new OptionFault(option, text)
  const lo = number(match[1])!
  const hi = number(match[2]) ?? lo
  if (lo > hi) throw new OptionFault(option, text, 'has its ends crossed')
  if (!(lo >= least && hi <= most)) throw new OptionFault(option, text, `must be ${least} to ${most} degrees`)
  return { lo, hi }
}

function number(text: string | undefined): number | undefined {
  return text === undefined ? undefined : Number(text.replace(',', '.'))
}

/** An option that says more about another stands only with that one. */
function needs(values: Values, given: readonly OptionName[], needed: OptionName): void {
  const one = given.find((option) => values.has(option))
  if (one && !values.has(needed)) throw new OptionFault(needed, undefined, `${one} needs it`)
}
