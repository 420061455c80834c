/** Figures that are no lengths of holes: what was read before teardown, beside the same after, against the manual's limit. */
import { readUnit } from '@gripbook/engine'
import { type FoldedUnit, readBeforeOpening, sizeIn } from '@gripbook/record'
import { standingOf } from '../unit/standing.ts'

export type Stage = 'before' | 'during' | 'after'
export const STAGES = ['before', 'during', 'after'] as const

export type Figure = { value: number; unit: string; plusMinus?: number }
export type Limit = { least?: number; most?: number; unit: string; source: string }

export type Row = {
  reading: string
  unit: string
  /** Face that it was read at last. */
  face: string | null
  limit: Limit | null
  waived: { reason: string; who: string } | null
  /** Read at the end before this face was opened again, after the unit came back: it counts no more, and `after` is null. */
  old: { figure: Figure; face: string } | null
} & Record<Stage, Figure | null>

/** How a figure lies to its limit. `edge`: inside as it was read, but its ± reaches over. */
export type Lies = 'inside' | 'edge' | 'outside' | 'other unit'

/** Every figure of the unit that was read or has a limit, in the order in which they first came up. */
export function rowsOf(folded: FoldedUnit): Row[] {
  const { things, entries, undone } = folded
  const faces = new Map<string, string | null>()
  for (const { type, body } of standingOf({ entries, undone })) {
    if (type !== 'figure-taken' && type !== 'limit-stated' && type !== 'reading-waived') continue
    const reading = String(body.reading)
    const face = type === 'figure-taken' && typeof body.face === 'string' ? body.face : (faces.get(reading) ?? null)
    faces.set(reading, face)
  }
  const known = [...faces.keys()].filter((reading) => reading in things.reading || reading in things.limit)
  return known.map((reading): Row => {
    const at = (stage: Stage) => (things.reading[reading]?.[stage]?.value ?? null) as Figure | null
    const limit = (things.limit[reading]?.limit?.value ?? null) as Limit | null
    const waived = things.reading[reading]?.waived
    const end = at('after')
    const opened = end === null ? undefined : readBeforeOpening(folded, reading)
    const first = end ?? at('during') ?? at('before')
    return {
      reading,
      unit: first?.unit ?? limit?.unit ?? '',
      face: faces.get(reading) ?? null,
      before: at('before'),
      during: at('during'),
      after: opened === undefined ? end : null,
      old: end === null || opened === undefined ? null : { figure: end, face: opened },
      limit,
      waived: waived === undefined ? null : { reason: String(waived.value), who: waived.who },
    }
  })
}

/** Null without a limit. Lengths and torques are held against each other in any of their units; whatever else must be in the limit's own. */
export function lies(figure: Figure, limit: Limit | null): Lies | null {
  if (limit === null) return null
  const size = sizeIn(figure.unit, limit.unit)
  if (size === undefined) return 'other unit'
  const { least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY } = limit
  const value = figure.value * size
  if (value < least || value > most) return 'outside'
  const off = (figure.plusMinus ?? 0) * size
  return value - off < least || value + off > most ? 'edge' : 'inside'
}

/** By how much it changed, in the unit of the reading after; null where one is not there or the units do not go together. */
export function changeOf({ before, after }: Pick<Row, 'before' | 'after'>): number | null {
  const size = before === null || after === null ? undefined : sizeIn(before.unit, after.unit)
  return size === undefined ? null : Number((after!.value - before!.value * size).toPrecision(6))
}

const FIGURE = /^([+-]?(?:\d+\.?\d*|\.\d+))(?:\s*(?:±|\+\/-|\+-)\s*(\d+\.?\d*|\.\d+))?\s*([^\d\s.±+-][^\d]*)?$/

/** "0.35", "0,35 ± 0.01", "12 Ω": a figure from what a gauge or a person types; the unit is that of the text, else `unit`. Null: it is none. */
export function figureOf(text: string, unit: string): Figure | null {
  const plain = text.normalize('NFC').replaceAll('−', '-').replaceAll(',', '.').trim()
  const found = FIGURE.exec(plain)
  if (found === null) return null
  const [, value, plusMinus, named] = found
  const figure = { value: Number(value), ...(plusMinus === undefined ? {} : { plusMinus: Number(plusMinus) }) }
  if (Math.abs(figure.value) > 1e9 || (figure.plusMinus ?? 0) > 1e9) return null
  return { ...figure, unit: named === undefined ? unit : (readUnit(named) ?? named) }
}

const OUT = new Set(['part-came-out', 'face-opened', 'bolt-found'])
const IN = new Set(['bolt-placed', 'hand-started', 'run-down', 'pass-torqued', 'face-closed'])

/** What is read now: before anything came out it is before teardown, and after once every face that has bolts has one back in since it was opened. */
export function stageOf({ entries, undone, faces }: FoldedUnit): Stage {
  const standing = standingOf({ entries, undone })
  const back = new Set<unknown>()
  for (const { type, body } of standing) {
    if (IN.has(type)) back.add(body.face)
    if (type === 'face-opened') back.delete(body.face)
  }
  const withBolts = Object.keys(faces).filter((face) => Object.keys(faces[face]!.holes).length > 0)
  if (withBolts.length > 0 && withBolts.every((face) => back.has(face))) return 'after'
  return back.size > 0 || standing.some(({ type }) => OUT.has(type)) ? 'during' : 'before'
}

/** The one to read next at that stage: the first after this one that lacks it, round the end; null when all have it. */
export function nextToTake(rows: readonly Row[], stage: Stage, after: string | null): string | null {
  const from = rows.findIndex(({ reading }) => reading === after) + 1
  const round = [...rows.slice(from), ...rows.slice(0, from)]
  return round.find((row) => row[stage] === null && row.reading !== after)?.reading ?? null
}

/** What most shops read before teardown; common practice, no source. `of` says in which unit of the person's own. */
export const USUAL = [
  'end play',
  'rotating torque',
  'coil resistance',
  'flatness',
  'backlash',
  'fluid drained',
] as const
export type Usual = (typeof USUAL)[number]

export const UNITS = ['mm', 'in', 'N·m', 'lbf·in', 'Ω', 'bar', 'psi', 'L', '°C'] as const

export function usualUnit(usual: Usual, { length, torque }: { length: string; torque: string }): string {
  if (usual === 'rotating torque') return torque
  if (usual === 'coil resistance') return 'Ω'
  return usual === 'fluid drained' ? 'L' : length
}

/** A name that no figure of the unit has yet: "End play", then "End play 2". */
export function freeName(name: string, rows: readonly Pick<Row, 'reading'>[]): string {
  const taken = new Set(rows.map(({ reading }) => reading.toLowerCase()))
  if (!taken.has(name.toLowerCase())) return name
  for (let number = 2; ; number++) if (!taken.has(`${name} ${number}`.toLowerCase())) return `${name} ${number}`
}

/** A figure with its unit: "0.35 ± 0.01 mm". */
export function figureText({ value, plusMinus, unit }: Figure): string {
  return `${value}${plusMinus === undefined ? '' : ` ± ${plusMinus}`} ${unit}`
}
