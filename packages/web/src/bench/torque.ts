/** A torque at the bench: what the bolt is to get, what to set on the wrench for it, what a figure from the wrench means at the bolt. */
import {
  type Extension,
  type Interval,
  intervalOf,
  NEWTON_METRES_IN,
  type Quantity,
  readTorque,
  type TorqueUnit,
  torqueAtBolt,
  type Wrench as WrenchLabel,
  wrenchFitness,
  wrenchSetting,
} from '@gripbook/engine'
import type { Wrench } from '../device/settings.ts'
import { words } from '../words/bench.ts'

/** The middle of a torque in N·m; its only end where there is one; null without a figure. */
export function newtonMetres(torque: Quantity | undefined): number | null {
  if (torque === undefined) return null
  const { lo, hi } = intervalOf(torque, 'torque')
  if (!Number.isFinite(hi)) return lo > 0 ? lo : null
  return lo === 0 && typeof torque === 'object' && 'atMost' in torque ? hi : (lo + hi) / 2
}

/** Ten turns. */
const MOST_DEGREES = 3_600

/** A figure in N·m, in a unit: to a tenth, large ones to a whole. */
export function figureIn(torque: number, unit: TorqueUnit): string {
  const value = torque / NEWTON_METRES_IN[unit]
  return String(Number(value.toFixed(value >= 100 ? 0 : 1)))
}

/** N·m as a quantity in the unit of the page, with no more digits than a wrench has. */
export function quantityIn(torque: number, unit: TorqueUnit): Quantity {
  const value = Number(figureIn(torque, unit))
  return unit === 'N·m' ? value : { value, unit }
}

/** What to set on the wrench so that the bolt gets `torque`, N·m; null where the extension reaches the hand. */
export function toSet(torque: number, extension: Extension | null): number | null {
  return extension === null ? torque : (wrenchSetting(torque, extension) ?? null)
}

export type Reached =
  | { ok: true; torque: Quantity; newtonMetres: number }
  | { ok: false; why: 'empty' | 'not a torque' }

/** What a figure that the wrench shows is at the bolt. Stated in `unit` unless the text names another. */
export function reachedBy(text: string, unit: TorqueUnit, extension: Extension | null): Reached {
  if (text.trim() === '') return { ok: false, why: 'empty' }
  const read = readTorque(text.trim().replace(/^\+/, ''), unit)
  const middle = read.ok ? newtonMetres(read.value) : null
  if (!read.ok || middle === null || middle <= 0) return { ok: false, why: 'not a torque' }
  if (extension === null) return { ok: true, torque: read.value, newtonMetres: middle }
  const atBolt = torqueAtBolt(middle, extension)
  return { ok: true, torque: quantityIn(atBolt, unit), newtonMetres: atBolt }
}

/** The next figure up or down from what stands in the field; from an empty or unreadable one, `base` (N·m). A tenth, a half or a whole at a time, by its size. */
export function stepped(text: string, base: number | null, by: 1 | -1, unit: TorqueUnit): string {
  const start = base === null ? '0' : figureIn(base, unit)
  const now = /^\d+([.,]\d+)?$/.test(text.trim()) ? Number(text.trim().replace(',', '.')) : null
  if (now === null) return start
  const size = now < 10 ? 0.1 : now < 30 ? 0.5 : 1
  return String(Number(Math.max(0, now + by * size).toFixed(1)))
}

export type OffBand = 'below' | 'above' | null

/** Where a torque lies to its band, N·m. */
export function against(torque: number, band: { atLeast: number; atMost: number }): OffBand {
  if (torque < band.atLeast) return 'below'
  return torque > band.atMost ? 'above' : null
}

export type WrenchDoubt = 'below its range' | 'above its range' | 'lowest fifth' | 'no date' | 'out of date'

/** What is to be said of a wrench for these torques (N·m) on this day; nothing: it may be used. A range that nobody stated is not judged. */
export function doubtsOf(wrench: Wrench, torques: readonly number[], today: string): WrenchDoubt[] {
  if (wrench.tells === 'nothing') return []
  const doubts = new Set<WrenchDoubt>()
  const [lo, hi] = wrench.range ?? [0, Number.POSITIVE_INFINITY]
  const label: WrenchLabel = { range: { lo, hi } satisfies Interval }
  for (const torque of torques)
    for (const finding of wrenchFitness(label, torque, today).findings) {
      if (finding === 'below its range' || finding === 'above its range') doubts.add(finding)
      // Of a range without an end there is no fifth.
      else if (finding.startsWith('in the lowest fifth') && Number.isFinite(hi)) doubts.add('lowest fifth')
    }
  if (wrench.calibratedUntil === undefined) doubts.add('no date')
  else if (wrench.calibratedUntil < today) doubts.add('out of date')
  return [...doubts]
}

/**
 * The tool as it stands in an entry: with it the record judges the figure by itself, and another device knows the wrench. `extension`: it is part of the
 * name, so that the record tells how the figure came about; the figure is then the bolt's, which the wrench's own range does not bound.
 */
export function toolOf(wrench: Wrench, extension: string | null) {
  const { name, number, calibratedUntil, range, deviation, tells } = wrench
  return {
    name: extension === null ? name : `${name}, ${extension}`,
    ...(number === undefined ? {} : { number }),
    ...(calibratedUntil === undefined ? {} : { calibratedUntil }),
    ...(range === undefined || extension !== null ? {} : { range }),
    ...(deviation === undefined ? {} : { deviation }),
    ...(tells === 'nothing' ? { byFeel: true } : {}),
  }
}

/** The tool of a step: the wrench and what sits on it. */
export function toolAt({ wrench, extension }: { wrench: Wrench | null; extension: Extension | null }) {
  if (wrench === null) return undefined
  return toolOf(wrench, extension === null ? null : words.extensionName(`${extension.reach} mm`))
}

/** Degrees as they were typed: above 0, to as many turns as a bolt can be turned; null: none. */
export function readDegrees(text: string): number | null {
  const figure = text.trim().replace(/\s*°$/, '').replace(',', '.')
  if (!/^\d{1,4}(\.\d+)?$/.test(figure)) return null
  const degrees = Number(figure)
  return degrees > 0 && degrees <= MOST_DEGREES ? degrees : null
}
