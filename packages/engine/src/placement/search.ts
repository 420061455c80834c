/**
 * The cheapest placement that keeps what is tied: cheapest assignment by counts alone, and where its pairs clash, a branching on the
 * clash. Exact: a branch is left only when its cheapest assignment costs no less than a placement already found.
 */
import { type Assignment, type AssignmentTask, cheapestAssignment } from '../maths/assignment.ts'
import type { Clash, Coupling, PairNumber } from './coupling.ts'
import { type MixedIntegerSolver, Stopped, type Tools } from './solver.ts'

/** bin[hole]: number of the kind, or the last bin for an empty hole. */
export type Placement = Assignment

type Node = { cost: Float64Array; placement: Placement; age: number }

const PATIENCE = 2000
const SOONER = 100
const NEAR = 1e-9
const NONE = -1
const SEVERAL = -2

export class Search {
  private readonly coupling: Coupling | null
  private readonly tools: Tools
  private readonly clashes: Clash[]
  private solver: MixedIntegerSolver | null = null
  private patience: number

  /** `clashes`: sets of pairs already known to clash; more are learnt on the way. */
  constructor(coupling: Coupling | null, clashes: Clash[], tools: Tools) {
    this.coupling = coupling
    this.clashes = clashes
    this.tools = tools
    this.patience = tools.patience ?? PATIENCE
  }

  /** The cheapest placement of the task, or null. With `any`, the first one found. */
  async cheapest(task: AssignmentTask, any = false): Promise<Placement | null> {
    const start = this.node(task, task.cost, 0)
    if (!start || !this.coupling) return start?.placement ?? null
    const open: Node[] = [start]
    for (let age = 1; open.length > 0; ) {
      if (this.tools.stop?.aborted) throw new Stopped()
      const node = open.splice(open.length - 1, 1)[0]!
      const clash = this.clashIn(node.placement, task.bins)
      if (!clash) return node.placement
      if (age > this.patience && this.tools.solver) {
        // Questions about one face are alike: the next one is handed over sooner.
        this.patience = Math.min(this.patience, SOONER)
        return this.bySolver(task)
      }
      for (const cost of this.branches(node.cost, clash, task)) {
        const child = this.node(task, cost, age++)
        if (child) insert(open, child, any)
      }
    }
    return null
  }

  private node(task: AssignmentTask, cost: Float64Array, age: number): Node | null {
    if (!this.propagate(cost, task)) return null
    const placement = cheapestAssignment({ ...task, cost })
    return placement && { cost, placement, age }
  }

  /** The first clash among the placement's pairs: known, or found now and kept. */
  private clashIn(placement: Placement, bins: number): Clash | null {
    const { bin } = placement
    const known = this.clashes.find((clash) => clash.every((pair) => bin[Math.floor(pair / bins)] === pair % bins))
    if (known) return known
    const clash = this.coupling!.clash(pairsOf(placement, bins))
    if (clash) this.clashes.push(clash)
    return clash
  }

  /** For each pair of the clash: that pair forbidden, the ones before it held fast. Together they leave out just the clash. */
  private *branches(cost: Float64Array, clash: Clash, { bins }: AssignmentTask): Generator<Float64Array> {
    const held = cost.slice()
    for (const pair of clash) {
      const hole = Math.floor(pair / bins)
      const child = held.slice()
      child[pair] = Number.POSITIVE_INFINITY
      yield child
      for (let b = hole * bins; b < (hole + 1) * bins; b++) if (b !== pair) held[b] = Number.POSITIVE_INFINITY
    }
  }

  /** Forbids every pair that would complete a known clash whose other pairs are certain. False when a hole has nothing left. */
  private propagate(cost: Float64Array, { bins, items }: AssignmentTask): boolean {
    const certain = new Int32Array(items)
    const read = (hole: number) => {
      let count = 0
      let last = NONE
      for (let b = 0; b < bins; b++)
        if (cost[hole * bins + b]! < Number.POSITIVE_INFINITY) {
          count++
          last = b
        }
      certain[hole] = count > 1 ? SEVERAL : last
    }
    for (let hole = 0; hole < items; hole++) read(hole)
    for (let changed = true; changed; ) {
      changed = false
      for (const clash of this.clashes) {
        let loose: PairNumber = -1
        let looseCount = 0
        for (const pair of clash) {
          if (certain[Math.floor(pair / bins)] === pair % bins) continue
          loose = pair
          if (++looseCount > 1) break
        }
        if (looseCount === 0) return false
        if (looseCount === 1 && cost[loose]! < Number.POSITIVE_INFINITY) {
          cost[loose] = Number.POSITIVE_INFINITY
          read(Math.floor(loose / bins))
          changed = true
        }
      }
    }
    return !certain.includes(NONE)
  }

  /** The same question put to the solver: counts and known clashes as rows, and a new row for every clash that its answer shows. */
  private async bySolver(task: AssignmentTask): Promise<Placement | null> {
    this.solver ??= await this.tools.solver!()
    for (;;) {
      if (this.tools.stop?.aborted) throw new Stopped()
      const answer = this.solver(this.model(task))
      if (answer.status === 'infeasible') return null
      const placement = this.readModel(task, answer.values)
      const clash = this.clashIn(placement, task.bins)
      if (!clash) return placement
      this.learnMore(placement, clash, task.bins)
    }
  }

  /** Takes a pair of the clash out and asks again, so that one answer of the solver teaches all the clashes in it. */
  private learnMore(placement: Placement, clash: Clash, bins: number): void {
    let pairs = pairsOf(placement, bins)
    for (let next: Clash | null = clash; next && next.length > 0; ) {
      const out = next[0]
      pairs = pairs.filter((pair) => pair !== out)
      next = this.coupling!.clash(pairs)
      if (next && !this.clashes.some((known) => known.join() === next!.join())) this.clashes.push(next)
    }
  }

  private model({ items, bins, cost, capacity }: AssignmentTask): string {
    const name = (pair: PairNumber) => `x${pair}`
    const open = (pair: PairNumber) => cost[pair]! < Number.POSITIVE_INFINITY
    const pairs = Array.from({ length: items * bins }, (_, pair) => pair).filter(open)
    const rows: string[] = []
    for (let hole = 0; hole < items; hole++)
      rows.push(
        `${pairs
          .filter((pair) => Math.floor(pair / bins) === hole)
          .map(name)
          .join(' + ')} = 1`,
      )
    for (let b = 0; b < bins; b++) {
      const users = pairs.filter((pair) => pair % bins === b)
      if (capacity[b]! < users.length) rows.push(`${users.map(name).join(' + ')} <= ${capacity[b]}`)
    }
    for (const clash of this.clashes)
      if (clash.every(open)) rows.push(`${clash.map(name).join(' + ')} <= ${clash.length - 1}`)
    const priced = pairs.filter((pair) => cost[pair] !== 0)
    const objective = priced.map((pair) => `${cost[pair]! < 0 ? '-' : '+'} ${Math.abs(cost[pair]!)} ${name(pair)}`)
    const goal = objective.length > 0 ? objective.join(' ') : `0 ${name(pairs[0]!)}`
    return `Minimize\n obj: ${goal}\nSubject To\n${rows.map((row, i) => ` r${i}: ${row}`).join('\n')}\nBinaries\n ${pairs.map(name).join(' ')}\nEnd\n`
  }

  private readModel({ items, bins, cost }: AssignmentTask, values: Record<string, number>): Placement {
    const bin = new Int32Array(items)
    let total = 0
    for (let hole = 0; hole < items; hole++)
      for (let b = 0; b < bins; b++)
        if ((values[`x${hole * bins + b}`] ?? 0) > 0.5) {
          bin[hole] = b
          total += cost[hole * bins + b]!
        }
    return { bin, cost: total }
  }
}

export function pairsOf({ bin }: Placement, bins: number): PairNumber[] {
  return Array.from(bin, (b, hole) => hole * bins + b)
}

/** Keeps the cheapest node last; of equal ones the youngest, which is nearest to a whole placement. With `any`, the youngest alone. */
function insert(open: Node[], node: Node, any: boolean): void {
  let at = open.length
  if (!any) while (at > 0 && open[at - 1]!.placement.cost < node.placement.cost - NEAR) at--
  open.splice(at, 0, node)
}
