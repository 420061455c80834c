/**
 * Is there a point inside all bounds of a set of variables and linear forms, and if not, which bounds clash?
 *
 * The general simplex method with bounds on both sides and explanations after B. Dutertre and L. de Moura, "A fast linear-arithmetic solver
 * for DPLL(T)", CAV 2006, section 3. Bounds come and go between checks while the tableau is kept, so that a check which differs little
 * from the one before costs little. Values are meant to be whole numbers of a small unit and coefficients small whole numbers: then every
 * true clash is far larger than the tolerance, and the answer is exact.
 */
import { must } from '../must.ts'

/** Who set a bound. Given back when bounds clash. */
export type Reason = number

const FREE: Reason = -1
const NEAR = 1e-3 // of the small unit: far under the least true clash, far over the rounding of doubles
const ZERO = 1e-9

export class LinearSystem {
  private readonly forms: [variable: number, factor: number][][] = []
  private readonly lo: number[] = []
  private readonly hi: number[] = []
  private readonly loReason: Reason[] = []
  private readonly hiReason: Reason[] = []
  private value: number[] = []
  /** basic[r]: the variable or form that row r defines; row r of `table` gives it by the others (`outside`). */
  private basic: number[] = []
  private outside: number[] = []
  private table: Float64Array[] = []
  private started = false

  /** A variable between `lo` and `hi` (either may be infinite). Returns its number. */
  addVariable(lo: number, hi: number, reason: Reason): number {
    must(!this.started, 'LinearSystem: variables come before the first check')
    const number = this.addBounds()
    this.outside.push(number)
    this.bound(number, lo, hi, reason)
    return number
  }

  /** A linear form of variables that have been added; unbounded until `bound` is called. Returns its number. */
  addForm(terms: [variable: number, factor: number][]): number {
    must(!this.started, 'LinearSystem: forms come before the first check')
    const number = this.addBounds()
    this.basic.push(number)
    this.forms.push(terms)
    return number
  }

  private addBounds(): number {
    this.lo.push(Number.NEGATIVE_INFINITY)
    this.hi.push(Number.POSITIVE_INFINITY)
    this.loReason.push(FREE)
    this.hiReason.push(FREE)
    return this.lo.length - 1
  }

  /** Narrows the bounds of a variable or form; a bound that is already tighter stays, with its reason. */
  bound(number: number, lo: number, hi: number, reason: Reason): void {
    if (lo > this.lo[number]!) {
      this.lo[number] = lo
      this.loReason[number] = reason
    }
    if (hi < this.hi[number]!) {
      this.hi[number] = hi
      this.hiReason[number] = reason
    }
  }

  /** The bounds as they stand, to come back to with `restore`. */
  save(): SavedBounds {
    return [this.lo.slice(), this.hi.slice(), this.loReason.slice(), this.hiReason.slice()]
  }

  restore([lo, hi, loReason, hiReason]: SavedBounds): void {
    for (let i = 0; i < lo.length; i++) {
      this.lo[i] = lo[i]!
      this.hi[i] = hi[i]!
      this.loReason[i] = loReason[i]!
      this.hiReason[i] = hiReason[i]!
    }
  }

  /** null when some point is inside all bounds; else the reasons of a set of bounds that no point can keep. */
  check(): Reason[] | null {
    if (!this.started) this.start()
    for (let i = 0; i < this.lo.length; i++)
      if (this.lo[i]! > this.hi[i]! + NEAR) return tidy([this.loReason[i]!, this.hiReason[i]!])
    this.settle()
    const calm = 20 * (this.basic.length + this.outside.length)
    for (let round = 0; ; round++) {
      const row = this.worstRow(round > calm)
      if (row < 0) return null
      const name = this.basic[row]!
      const below = this.value[name]! < this.lo[name]!
      const column = this.entering(row, below, round > calm)
      if (column < 0) return this.explain(row, below)
      this.pivot(row, column, below ? this.lo[name]! : this.hi[name]!)
    }
  }

  private start(): void {
    this.started = true
    const place = new Map(this.outside.map((number, column) => [number, column]))
    this.table = this.forms.map((terms) => {
      const row = new Float64Array(this.outside.length)
      for (const [variable, factor] of terms) row[place.get(variable)!]! += factor
      return row
    })
    this.value = new Array(this.lo.length).fill(0)
  }

  /** Moves the outside variables into their bounds and works the bounded basic ones out anew; nothing ever asks for the others. */
  private settle(): void {
    for (const number of this.outside)
      this.value[number] = Math.min(Math.max(this.value[number]!, this.lo[number]!), this.hi[number]!)
    for (let r = 0; r < this.basic.length; r++) {
      const name = this.basic[r]!
      if (this.lo[name] === Number.NEGATIVE_INFINITY && this.hi[name] === Number.POSITIVE_INFINITY) continue
      const row = this.table[r]!
      let sum = 0
      for (let c = 0; c < row.length; c++) if (row[c] !== 0) sum += row[c]! * this.value[this.outside[c]!]!
      this.value[name] = sum
    }
  }

  /** The row that is furthest out; once a run grows long, the one of lowest number, which cannot run in circles (Bland). */
  private worstRow(calm: boolean): number {
    let worst = -1
    let most = NEAR
    for (let r = 0; r < this.basic.length; r++) {
      const name = this.basic[r]!
      const out = Math.max(this.lo[name]! - this.value[name]!, this.value[name]! - this.hi[name]!)
      if (out <= NEAR) continue
      if (calm ? worst < 0 || name < this.basic[worst]! : out > most) {
        worst = r
        most = out
      }
    }
    return worst
  }

  private entering(row: number, below: boolean, calm: boolean): number {
    const factors = this.table[row]!
    let best = -1
    for (let c = 0; c < factors.length; c++) {
      const factor = below ? factors[c]! : -factors[c]!
      if (Math.abs(factor) < ZERO) continue
      const name = this.outside[c]!
      const room = factor > 0 ? this.hi[name]! - this.value[name]! : this.value[name]! - this.lo[name]!
      if (room <= 0) continue
      if (best < 0) best = c
      else if (calm ? name < this.outside[best]! : Math.abs(factors[c]!) > Math.abs(factors[best]!) + ZERO) best = c
    }
    return best
  }

  private explain(row: number, below: boolean): Reason[] {
    const name = this.basic[row]!
    const reasons = [below ? this.loReason[name]! : this.hiReason[name]!]
    const factors = this.table[row]!
    for (let c = 0; c < factors.length; c++) {
      const factor = below ? factors[c]! : -factors[c]!
      if (Math.abs(factor) < ZERO) continue
      const outside = this.outside[c]!
      reasons.push(factor > 0 ? this.hiReason[outside]! : this.loReason[outside]!)
    }
    return tidy(reasons)
  }

  private pivot(row: number, column: number, target: number): void {
    const pivotRow = this.table[row]!
    const factor = pivotRow[column]!
    const leaving = this.basic[row]!
    const entering = this.outside[column]!
    const step = (target - this.value[leaving]!) / factor
    for (let r = 0; r < this.basic.length; r++)
      if (this.table[r]![column] !== 0) this.value[this.basic[r]!]! += this.table[r]![column]! * step
    this.value[leaving] = target
    this.value[entering]! += step
    for (let c = 0; c < pivotRow.length; c++) pivotRow[c] = clean(-pivotRow[c]! / factor)
    pivotRow[column] = 1 / factor
    for (let r = 0; r < this.basic.length; r++) {
      if (r === row) continue
      const other = this.table[r]!
      const share = other[column]!
      if (share === 0) continue
      other[column] = 0
      for (let c = 0; c < other.length; c++) if (pivotRow[c] !== 0) other[c] = clean(other[c]! + share * pivotRow[c]!)
    }
    this.basic[row] = entering
    this.outside[column] = leaving
  }
}

export type SavedBounds = [number[], number[], Reason[], Reason[]]

function clean(x: number): number {
  return Math.abs(x) < ZERO ? 0 : x
}

function tidy(reasons: Reason[]): Reason[] {
  return [...new Set(reasons)].filter((reason) => reason !== FREE).sort((a, b) => a - b)
}
