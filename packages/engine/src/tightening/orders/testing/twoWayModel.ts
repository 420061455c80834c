/**
 * A second, plain way to tighten bolts on a cover, to try orders on: bed and bolts act both ways, no bolt slips. M = C + S, with C the sink of bolt i per
 * load at j and S the bolts' own give. Bolts are loose until their turn, or all
 * run down by hand first, so that they take part from the start; the first turn of bolt i to the load T with B already tight changes the loads of
 * B by -(M_BB)^-1 C_Bi T; a later turn changes F_j by K_ji/K_ii of what i gains, K = (M_AA)^-1 of all tight ones. A wrench never loosens.
 */
import type { Random } from '../../../placement/testing/random.ts'
import { solved } from './solved.ts'

export class TwoWayModel {
  readonly count: number
  private readonly tightFirst: number
  private readonly sink: number[][]
  private readonly give: number[]
  private readonly firstTurns = new Map<number, number[]>()
  private readonly laterTurns = new Map<number, number[]>()

  constructor(sink: number[][], give: number[], runDown = false) {
    this.count = give.length
    this.tightFirst = runDown ? 2 ** give.length - 1 : 0
    this.sink = sink
    this.give = give
  }

  /** Loads after every step, the target being 1, for one or more passes at these shares of it. */
  steps(sequence: ArrayLike<number>, shares: number[]): number[][] {
    const after: number[][] = []
    this.passes(sequence, shares, (loads) => after.push([...loads]))
    return after
  }

  /** (greatest − least)/mean of the loads after the passes. */
  spread(sequence: ArrayLike<number>, shares: number[]): number {
    return spreadOf(this.passes(sequence, shares, () => {}))
  }

  private passes(sequence: ArrayLike<number>, shares: number[], turned: (loads: readonly number[]) => void): number[] {
    const loads = new Array<number>(this.count).fill(0)
    let tight = this.tightFirst
    for (const share of shares)
      for (let k = 0; k < sequence.length; k++) {
        tight = this.turn(loads, tight, sequence[k]!, share)
        turned(loads)
      }
    return loads
  }

  private turn(loads: number[], tight: number, bolt: number, target: number): number {
    const isFirst = (tight & (1 << bolt)) === 0
    const gain = target - loads[bolt]!
    if (!isFirst && gain <= 0) return tight
    const changes = isFirst ? this.firstTurn(tight, bolt) : this.laterTurn(tight, bolt)
    for (let j = 0; j < loads.length; j++) loads[j]! += gain * changes[j]!
    return tight | (1 << bolt)
  }

  /** Change of every load per unit load put into a bolt that was loose. */
  private firstTurn(tight: number, bolt: number): number[] {
    return kept(this.firstTurns, tight * this.count + bolt, () => {
      const others = this.boltsOf(tight)
      const answer = solved(
        this.stiffening(others),
        others.map((j) => -this.sink[j]![bolt]!),
      )
      return this.spreadOver(others, answer, bolt)
    })
  }

  /** Change of every load per unit load gained by a bolt that is tight. */
  private laterTurn(tight: number, bolt: number): number[] {
    return kept(this.laterTurns, tight * this.count + bolt, () => {
      const all = this.boltsOf(tight)
      const column = solved(
        this.stiffening(all),
        all.map((j) => (j === bolt ? 1 : 0)),
      )
      const own = column[all.indexOf(bolt)]!
      return this.spreadOver(
        all,
        column.map((one) => one / own),
        bolt,
      )
    })
  }

  private boltsOf(tight: number): number[] {
    return this.give.flatMap((_, j) => (tight & (1 << j) ? [j] : []))
  }

  private stiffening(bolts: number[]): number[][] {
    return bolts.map((i) => bolts.map((j) => this.sink[i]![j]! + (i === j ? this.give[i]! : 0)))
  }

  private spreadOver(bolts: number[], changes: number[], own: number): number[] {
    const all = this.give.map(() => 0)
    bolts.forEach((j, k) => {
      all[j] = changes[k]!
    })
    all[own] = 1
    return all
  }
}

export function spreadOf(loads: number[]): number {
  const mean = loads.reduce((sum, load) => sum + load, 0) / loads.length
  return (Math.max(...loads) - Math.min(...loads)) / mean
}

/** Any cover: bolts anywhere, a symmetric positive definite sink that fades with distance and may turn to a lift, soft or stiff bolts. */
export function anyModel(draw: Random, count: number, runDown = false): TwoWayModel {
  const places = Array.from({ length: count }, () => [draw.between(0, 120), draw.between(0, 80)] as const)
  const fade = draw.between(15, 60)
  const tilt = draw.between(0, 1)
  // Sums of positive definite kernels are positive definite: one that fades, one that tips like a stiff plate.
  const sink = places.map(([x, y]) =>
    places.map(
      ([u, v]) =>
        Math.exp(-(((x - u) / fade) ** 2) - ((y - v) / fade) ** 2) +
        tilt * (((x - 60) * (u - 60)) / 3600 + ((y - 40) * (v - 40)) / 1600),
    ),
  )
  return new TwoWayModel(
    sink,
    places.map(() => draw.between(0.03, 0.5)),
    runDown,
  )
}

function kept(store: Map<number, number[]>, key: number, make: () => number[]): number[] {
  const known = store.get(key)
  if (known) return known
  const made = make()
  store.set(key, made)
  return made
}
