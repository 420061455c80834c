import { must } from '../../must.ts'

/** Σ coefficient · variable ≤ atMost, all whole numbers. */
export type Row = { terms: readonly (readonly [variable: number, coefficient: number])[]; atMost: number }

/** Ends of a variable, whole numbers; `lo` finite, `hi` may be Infinity. */
export type Bounds = { lo: number; hi: number }

/**
 * A linear program decided without rounding. The tableau holds whole numbers over one common denominator (Edmonds' integer pivoting: every
 * entry is a minor of the first tableau, so each division leaves no remainder); a number past 2^53 throws instead of rounding. Bland's
 * rule (smallest index first) makes both phases end.
 */
class Tableau {
  readonly #entries: number[][]
  readonly #basic: number[]
  readonly #free: number[]
  #denominator = 1

  constructor(variables: readonly Bounds[], rows: readonly Row[], objective: Row['terms']) {
    const width = variables.length
    const line = (terms: Row['terms'], atMost: number) => {
      const entries = new Array<number>(width + 1).fill(0)
      let shift = 0
      for (const [variable, coefficient] of terms) {
        entries[variable]! += coefficient
        shift += coefficient * variables[variable]!.lo
      }
      entries[width] = atMost - shift
      return entries
    }
    this.#entries = rows.map((row) => line(row.terms, row.atMost))
    for (const [index, { lo, hi }] of variables.entries()) {
      must(Number.isSafeInteger(lo), 'a variable starts at a whole number', lo)
      if (hi !== Number.POSITIVE_INFINITY) this.#entries.push(line([[index, 1]], hi))
    }
    for (const entries of this.#entries)
      for (const entry of entries) must(Number.isSafeInteger(entry), 'whole numbers only', entry)
    this.#basic = this.#entries.map((_, index) => width + index)
    this.#free = variables.map((_, index) => index)
    const goal = line(
      objective.map(([variable, coefficient]) => [variable, -coefficient] as const),
      0,
    )
    this.#entries.push(goal)
  }

  #pivot(row: number, column: number): void {
    const from = this.#entries[row]!
    const pivot = from[column]!
    const old = this.#denominator
    const turn = pivot < 0 ? -1 : 1
    for (const [index, entries] of this.#entries.entries()) {
      if (index === row) continue
      const factor = entries[column]!
      for (let at = 0; at < entries.length; at += 1) {
        if (at === column) continue
        if (factor === 0) {
          const kept = entries[at]! * pivot
          must(Number.isSafeInteger(kept), 'the tableau stays within whole numbers')
          entries[at] = (turn * kept) / old
          continue
        }
        const left = entries[at]! * pivot
        const right = factor * from[at]!
        must(Number.isSafeInteger(left) && Number.isSafeInteger(right), 'the tableau stays within whole numbers')
        const difference = left - right
        must(Number.isSafeInteger(difference) && difference % old === 0, 'an integer pivot leaves no remainder')
        entries[at] = (turn * difference) / old
      }
      entries[column] = -turn * factor
    }
    for (let at = 0; at < from.length; at += 1) from[at] = at === column ? turn * old : turn * from[at]!
    this.#denominator = turn * pivot
    const kept = this.#basic[row]!
    this.#basic[row] = this.#free[column]!
    this.#free[column] = kept
  }

  /** Dual simplex from the slack basis; with no objective yet every column is as good as another. */
  makeFeasible(): boolean {
    const last = this.#free.length
    for (;;) {
      let row = -1
      for (const [index, variable] of this.#basic.entries())
        if (this.#entries[index]![last]! < 0 && (row < 0 || variable < this.#basic[row]!)) row = index
      if (row < 0) return true
      let column = -1
      for (const [index, variable] of this.#free.entries())
        if (this.#entries[row]![index]! < 0 && (column < 0 || variable < this.#free[column]!)) column = index
      if (column < 0) return false
      this.#pivot(row, column)
    }
  }

  /** Primal simplex; the greatest value of the objective, Infinity when nothing holds it. */
  maximise(): number {
    const last = this.#free.length
    const goal = this.#entries[this.#basic.length]!
    for (;;) {
      let column = -1
      for (const [index, variable] of this.#free.entries())
        if (goal[index]! < 0 && (column < 0 || variable < this.#free[column]!)) column = index
      if (column < 0) return goal[last]! / this.#denominator
      let row = -1
      for (const [index, variable] of this.#basic.entries()) {
        const entry = this.#entries[index]![column]!
        if (entry <= 0) continue
        if (row < 0) {
          row = index
          continue
        }
        const here = this.#entries[index]![last]! * this.#entries[row]![column]!
        const there = this.#entries[row]![last]! * entry
        must(Number.isSafeInteger(here) && Number.isSafeInteger(there), 'the tableau stays within whole numbers')
        if (here < there || (here === there && variable < this.#basic[row]!)) row = index
      }
      if (row < 0) return Number.POSITIVE_INFINITY
      this.#pivot(row, column)
    }
  }
}

/** True when some values within the bounds make every row hold. A tie holds. */
export function canHold(variables: readonly Bounds[], rows: readonly Row[]): boolean {
  if (variables.some(({ lo, hi }) => lo > hi)) return false
  return new Tableau(variables, rows, []).makeFeasible()
}

/** The greatest value of the objective over all values that make every row hold; null when none do. Its sign is exact. */
export function greatest(variables: readonly Bounds[], rows: readonly Row[], objective: Row['terms']): number | null {
  if (variables.some(({ lo, hi }) => lo > hi)) return null
  const tableau = new Tableau(variables, rows, objective)
  return tableau.makeFeasible() ? tableau.maximise() : null
}
