import type { Interval } from '../quantity/interval.ts'

/**
 * Largest deviation of a setting torque wrench as a share: ±4 % above 10 N·m, ±6 % at or below.
 * @source ISO 6789, Type II class A (wording of the 2003 edition)
 */
export function wrenchDeviation(torque: number): number {
  return torque > 10 ? 0.04 : 0.06
}

/** A crow-foot or extension on the wrench's head: lengths in mm or any one unit, angle in degrees. */
export type Extension = {
  /** From the middle of the hand to the square, L. */
  lever: number
  /** From the square to the middle of the bolt, E. */
  reach: number
  /** Angle between the extension and the wrench's line, 0 in line, 90 square to it, 180 turned back. */
  angle?: number
}

/**
 * What to set on the wrench, in the unit of `torque`, so that the bolt gets `torque`: M·L/(L + E·cos φ). In line it is less, square to the wrench
 * nothing changes, turned back it is more. Undefined when the extension would reach the hand (L + E·cos φ not above 0).
 * @source TM 1-1500-204-23-9; TM 9-254
 */
export function wrenchSetting(torque: number, { lever, reach, angle = 0 }: Extension): number | undefined {
  const effective = lever + reach * cosine(angle)
  return effective > 0 && lever > 0 ? (torque * lever) / effective : undefined
}

/** What the bolt gets when the wrench is set to `setting`: the same the other way. */
export function torqueAtBolt(setting: number, { lever, reach, angle = 0 }: Extension): number {
  return (setting * (lever + reach * cosine(angle))) / lever
}

/** Exact at the right angle, where the cosine must vanish. */
function cosine(degrees: number): number {
  return Math.abs(degrees) === 90 ? 0 : Math.cos((degrees * Math.PI) / 180)
}

/**
 * Between what the torque at the bolt swings in each turn behind one universal joint at `angle` degrees: cos β and 1/cos β of `torque`.
 * A straight extension bar changes nothing and needs no sum.
 * @source kinematics of the single Cardan joint; no published loss for a socket joint was found
 */
export function swivelRange(torque: number, angle: number): Interval {
  const c = Math.cos((angle * Math.PI) / 180)
  return { lo: torque * c, hi: torque / c }
}

/** Which hand tool turns the bolt last, and what may be written down of its torque. */
export type LastTool =
  | 'torque wrench'
  | 'torque wrench with straight extension'
  | 'torque wrench with swivel'
  | 'ratchet wrench'
  | 'impact driver'

/** True when a torque may be entered in the record for this tool. A ratchet wrench and a driver have no reading: "by hand, no torque". */
export function hasReading(tool: LastTool): boolean {
  return tool !== 'ratchet wrench' && tool !== 'impact driver'
}

/** A torque wrench as its label says. Range in N·m, dates as year-month-day. */
export type Wrench = {
  range: Interval
  /** Deviation as a share, where its certificate states one. */
  deviation?: number
  calibrated?: string
  /** Months for which a calibration counts. */
  calibrationMonths?: number
}

export type WrenchFinding =
  | 'below its range'
  | 'above its range'
  | 'in the lowest fifth, where it is not checked'
  | 'no calibration date'
  | 'calibration date not readable'
  | 'calibrated after today'
  | 'out of calibration'

/** Whether a wrench may be used: no findings means yes. `deviation` is the share to reckon with. `due` is when its calibration ends. */
export type WrenchFitness = { fit: boolean; findings: WrenchFinding[]; deviation: number; due?: string }

/** A calibration counts 12 months where nothing else is stated. @source ISO 6789, 12 months or 5000 turns (from memory) */
const CALIBRATION_MONTHS = 12

/**
 * Is this wrench fit for this torque (N·m) on this day ("2026-03-31")? Outside its range and a lapsed, unreadable or missing calibration say no; the lowest
 * fifth of the range is a finding only, because a wrench is checked at 20, 60 and 100 %.
 * @source ISO 6789 (2003 wording)
 */
export function wrenchFitness(wrench: Wrench, torque: number, today: string): WrenchFitness {
  const findings: WrenchFinding[] = []
  if (torque < wrench.range.lo) findings.push('below its range')
  else if (torque > wrench.range.hi) findings.push('above its range')
  else if (torque < 0.2 * wrench.range.hi) findings.push('in the lowest fifth, where it is not checked')
  const due =
    wrench.calibrated === undefined
      ? undefined
      : monthsLater(wrench.calibrated, wrench.calibrationMonths ?? CALIBRATION_MONTHS)
  if (wrench.calibrated === undefined) findings.push('no calibration date')
  else if (due === undefined) findings.push('calibration date not readable')
  else if (wrench.calibrated > today) findings.push('calibrated after today')
  else if (today > due) findings.push('out of calibration')
  return {
    fit: findings.every((finding) => finding === 'in the lowest fifth, where it is not checked'),
    findings,
    deviation: wrench.deviation ?? wrenchDeviation(torque),
    ...(due === undefined ? {} : { due }),
  }
}

/** The same day so many months later, held to the end of a shorter month; undefined when it is no day of the calendar. */
function monthsLater(day: string, months: number): string | undefined {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(day)
  if (!match) return undefined
  const [year, month, date] = match.slice(1).map(Number) as [number, number, number]
  if (month < 1 || month > 12 || date < 1 || date > daysIn(year, month)) return undefined
  const index = year * 12 + month - 1 + months
  const y = Math.floor(index / 12)
  const m = (index % 12) + 1
  const d = Math.min(date, daysIn(y, m))
  return `${String(y).padStart(4, '0')}-${String(m).padStart(2, '0')}-${String(d).padStart(2, '0')}`
}

function daysIn(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28
  return [4, 6, 9, 11].includes(month) ? 30 : 31
}
