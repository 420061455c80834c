/** What the list shows of a unit, and which of them in what order. */
import type { FoldedUnit } from '@gripbook/record'
import { finds } from './search.ts'

export type UnitLine = {
  unit: string
  name: string | null
  model: string | null
  job: string | null
  complaint: string | null
  /** Null for one that is in the shop only: its faces are not known here. */
  faces: number | null
  released: boolean
  /** It came back and is not released since; what the customer says now stands as its complaint. Not known of one that is in the shop only. */
  back: boolean
  /** ISO 8601; null for one without entries. */
  lastAt: string | null
  /** Entries of it that this device has still to send. */
  waits: boolean
  where: 'here' | 'in the shop'
}

/** What the shop tells of a unit. */
export type ShopUnit = Pick<UnitLine, 'unit' | 'name' | 'model' | 'complaint' | 'released'> & { lastAt: string }

/** The line of a unit that is on this device. */
export function lineOf(folded: FoldedUnit): Omit<UnitLine, 'waits'> {
  const { unit, work, entries } = folded
  const back = work.released === undefined ? work.cameBack?.value : undefined
  return {
    unit: folded.id,
    name: unit.name ?? null,
    model: work.model?.value ?? null,
    job: work.job?.value ?? null,
    complaint: back ?? work.complaint?.value ?? null,
    faces: unit.faces.length,
    released: work.released !== undefined,
    back: back !== undefined,
    lastAt: entries.at(-1)?.at ?? null,
    where: 'here',
  }
}

/** Units on this device and, behind them by the same order, those that only the shop has; the one worked on last first. */
export function unitLines(
  here: readonly Omit<UnitLine, 'waits'>[],
  waiting: ReadonlySet<string>,
  inShop: readonly ShopUnit[],
): UnitLine[] {
  const known = new Set(here.map(({ unit }) => unit))
  const lines: UnitLine[] = [
    ...here.map((line) => ({ ...line, waits: waiting.has(line.unit) })),
    ...inShop
      .filter(({ unit }) => !known.has(unit))
      .map((unit): UnitLine => ({ ...unit, job: null, faces: null, back: false, waits: false, where: 'in the shop' })),
  ]
  return lines.sort((a, b) => byText(b.lastAt ?? '', a.lastAt ?? '') || byText(a.unit, b.unit))
}

export function found(lines: readonly UnitLine[], query: string): UnitLine[] {
  return lines.filter(({ name, model, job, complaint }) => finds(query, [name, model, job, complaint]))
}

function byText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0
}
