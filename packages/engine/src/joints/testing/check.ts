import type { PublishedTable } from '../../../published/table.ts'
import type { Interval } from '../../quantity/interval.ts'
import { readThread, type Thread } from '../../threads/index.ts'

/**
 * One printed figure beside what Gripbook makes of it. `allowed` is how far they may differ, in the figure's unit. Where Gripbook has a range instead
 * of a figure, `range` is that, the printed figure must lie in it, and `ours` is the nearest value of the range.
 */
export type Check = {
  what: string
  source: string
  basis: PublishedTable['basis']
  unit: string
  published: string
  ours: number
  allowed: number
  range?: Interval
}

/** How near is near for a printed figure: so many units of its last digit, or so many percent. */
export type Near = (printed: string) => number

/** So many units of the last printed digit; half of one is plain rounding. */
export function digits(units: number): Near {
  return (printed) => units * 10 ** -(/\.(\d+)/.exec(printed)?.[1]?.length ?? 0) * (1 + 1e-9)
}

/** So many percent of the printed figure. */
export function percent(share: number): Near {
  return (printed) => (Math.abs(Number(printed)) * share) / 100
}

/** The more lenient of several ways. */
export function either(...ways: Near[]): Near {
  return (printed) => Math.max(...ways.map((way) => way(printed)))
}

/** Checks of a whole table: its last column is the printed figure, the columns before it say of what. */
export function checksOf(table: PublishedTable, near: Near, ours: (cells: string[]) => number): Check[] {
  return table.rows.map((row) => {
    const cells = row.slice(0, -1)
    const published = row[row.length - 1] as string
    return {
      what: `${table.columns[table.columns.length - 1]} ${cells.join(' ')}`.trim(),
      source: `${table.source}, ${table.table}`,
      basis: table.basis,
      unit: table.unit,
      published,
      ours: ours(cells),
      allowed: near(published),
    }
  })
}

/** How far ours is from the printed figure. */
export function deviationOf({ published, ours }: Check): number {
  return ours - Number(published)
}

export function holds(check: Check): boolean {
  return Math.abs(deviationOf(check)) <= check.allowed
}

export function thread(name: string): Thread {
  const read = readThread(name)
  if (!read.ok) throw new Error(`published table names no thread: ${name}`)
  return read.value
}

/** Checks of a table whose printed figures must each lie in a range of Gripbook's. */
export function containedIn(table: PublishedTable, rangeOf: (cells: string[]) => Interval): Check[] {
  return table.rows.map((row) => {
    const range = rangeOf(row.slice(0, -1))
    const [check] = checksOf(
      { ...table, rows: [row] },
      () => 0,
      () => nearest(Number(row[row.length - 1]), range),
    )
    return { ...(check as Check), range }
  })
}

function nearest(value: number, { lo, hi }: Interval): number {
  return Math.min(hi, Math.max(lo, value))
}

/** The checks under the name of their source, with how it is known. */
export function bySource(checks: readonly Check[]): [string, Check[]][] {
  const groups = new Map<string, Check[]>()
  for (const check of checks) {
    const name = `${check.source} (${check.basis})`
    groups.set(name, [...(groups.get(name) ?? []), check])
  }
  return [...groups]
}

/** What does not hold, as a person reads it: an empty list is what a test wants. */
export function failures(checks: readonly Check[]): string[] {
  return checks
    .filter((check) => !holds(check))
    .map((check) => `${check.what}: printed ${check.published}, ours ${check.ours}, off ${deviationOf(check)}`)
}
