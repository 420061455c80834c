/**
 * What ties pairs together beyond counts: one length, tip and thread length per kind, one grip and depth per hole, rank lines and trials.
 *
 * A kind all of whose possible holes can be served by one and the same bolt ties nothing, and a hole without a rank line or trial is
 * private to its bolt: its readings come down to what it asks of the bolt (`demandOf`). What is left goes into one linear system, which is
 * asked about sets of pairs, and which names the fewest pairs that clash.
 */
import { LinearSystem, type SavedBounds } from '../maths/linearSystem.ts'
import { must } from '../must.ts'
import type { Face } from '../unit.ts'
import { A, B, type Differences, demandOf, KIND_LEVELS, kindLevels, L, together } from './pair.ts'
import type { HoleSpans, KindSpans, Problem, RankLine, TrialLine } from './problem.ts'
import type { Span } from './span.ts'

/** hole * bins + kind. The last bin stands for an empty hole. */
export type PairNumber = number
/** Pairs that cannot all stand in one placement; none of them left out without the rest being possible. */
export type Clash = PairNumber[]

/** A sum of variables; what is certain stands in it as a number of nanometres, by the name FIXED. */
type Terms = [variable: number, factor: number][]
const FIXED = -1
type HoleVariables = { grip: Terms; joint: Terms; mouth: Terms; threadDepth: Terms; bottomDepth: Terms; behind: Terms }
type KindVariables = { tip: Terms; fullThread: Terms; shank: Terms; length: Terms; forms: number[] }

const OF_READINGS = -1

export class Coupling {
  readonly bins: number
  private readonly problem: Problem
  /** What filling each hole asks of its bolt, readings alone; null where nothing could. */
  readonly demands: readonly (Differences | null)[]
  private readonly tiedHoles = new Set<number>()
  private readonly tiedKinds = new Set<number>()
  private readonly system = new LinearSystem()
  private readonly holes = new Map<number, HoleVariables>()
  private readonly gaskets = new Map<Face, Terms>()
  private readonly kinds = new Map<number, KindVariables>()
  private readonly pairForms = new Map<PairNumber, number[]>()
  /** What is certain in each form, by its number. */
  private readonly fixed = new Map<number, number>()
  private readonly readings: SavedBounds
  private readonly known = new Map<string, Clash | null>()

  /** `possible[pair]`: the pairs that readings alone leave. */
  constructor(problem: Problem, possible: Uint8Array) {
    this.problem = problem
    this.bins = problem.kinds.length + 1
    this.demands = problem.holes.map(demandOf)
    const ranks = problem.ranks.filter((rank) => !holdsAnyway(problem, rank))
    this.findTies(possible, ranks)
    for (const hole of this.tiedHoles) this.holes.set(hole, this.addHole(problem.holes[hole]!))
    for (const kind of this.tiedKinds) this.kinds.set(kind, this.addKind(problem.kinds[kind]!))
    const base: (() => void)[] = []
    for (const hole of this.tiedHoles) base.push(...this.holeRows(hole))
    for (const kind of this.tiedKinds) base.push(...this.kindRows(kind))
    for (const rank of ranks) base.push(this.rankRow(rank))
    for (const trial of problem.trials) base.push(...this.trialRows(trial))
    for (let pair = 0; pair < possible.length; pair++) if (possible[pair] && this.binds(pair)) this.addPair(pair)
    for (const row of base) row()
    this.readings = this.system.save()
  }

  /** Whether anything is tied at all. */
  get ties(): boolean {
    return this.tiedHoles.size > 0 || this.tiedKinds.size > 0
  }

  /** Whether the pair has a part in what is tied. */
  binds(pair: PairNumber): boolean {
    const kind = pair % this.bins
    if (kind === this.bins - 1) return false
    return this.tiedKinds.has(kind) || this.tiedHoles.has(Math.floor(pair / this.bins))
  }

  /** Whether the hole is tied to other holes, or the kind to other kinds, by a rank line or a trial. */
  isTiedHole(hole: number): boolean {
    return this.tiedHoles.has(hole)
  }
  isTiedKind(kind: number): boolean {
    return this.tiedKinds.has(kind)
  }

  /** null when one value of every quantity lets all of these pairs stand; else the fewest of them that clash. Empty: the readings alone do. */
  clash(pairs: PairNumber[]): Clash | null {
    const bound = pairs.filter((pair) => this.binds(pair)).sort((a, b) => a - b)
    const key = bound.join()
    const known = this.known.get(key)
    if (known !== undefined) return known
    let clash = this.ask(bound)
    for (const pair of clash ?? []) {
      const fewer = this.ask(clash!.filter((other) => other !== pair))
      if (fewer) clash = fewer
    }
    this.known.set(key, clash)
    return clash
  }

  private ask(pairs: PairNumber[]): Clash | null {
    this.system.restore(this.readings)
    for (const pair of pairs) this.assert(pair)
    return this.system.check()?.filter((reason) => reason >= 0) ?? null
  }

  private findTies(possible: Uint8Array, ranks: RankLine[]): void {
    for (const rank of ranks)
      for (const number of [rank.less, rank.more])
        (rank.quantity === 'length' ? this.tiedKinds : this.tiedHoles).add(number)
    for (const trial of this.problem.trials) {
      this.tiedHoles.add(trial.hole)
      this.tiedKinds.add(trial.kind)
    }
    const { holes, kinds } = this.problem
    for (const [a, b] of gasketTies(this.problem)) this.tiedHoles.add(a).add(b)
    kinds.forEach((kind, k) => {
      const served = holes.map((_, h) => h).filter((h) => possible[h * this.bins + k])
      if (served.some((h) => this.tiedHoles.has(h))) this.tiedKinds.add(k)
      else if (kind.count > 1 && !together(kindLevels(kind), ...served.map((h) => this.demands[h]!)))
        this.tiedKinds.add(k)
    })
  }

  private variable({ lo, hi }: Span): Terms {
    return lo === hi ? [[FIXED, lo]] : [[this.system.addVariable(lo, hi, OF_READINGS), 1]]
  }

  /** One variable for a sheet that several holes share. */
  private gasketOf({ gasket, sharesGasket, face }: HoleSpans): Terms {
    if (!sharesGasket) return this.variable(gasket)
    const sheet = this.gaskets.get(face) ?? this.variable(gasket)
    this.gaskets.set(face, sheet)
    return sheet
  }

  private addHole(hole: HoleSpans): HoleVariables {
    const grip = this.variable(hole.grip)
    return {
      grip,
      joint: [...grip, ...this.variable(hole.bracket), ...this.gasketOf(hole)],
      mouth: this.variable(hole.mouth),
      threadDepth: this.variable(hole.threadDepth),
      bottomDepth: this.variable(hole.bottomDepth),
      behind: hole.behind ? this.variable(hole.behind) : [],
    }
  }

  /** The kind's levels as sums of its own quantities, measured from the face of its washer. */
  private addKind(kind: KindSpans): KindVariables {
    const length = this.variable(kind.length)
    const washer = this.variable(kind.washer)
    const tip = [...length, ...minus(washer)]
    const shank = kind.threadLength
      ? [...tip, ...minus(this.variable(kind.threadLength))]
      : [...this.variable(kind.runOut), ...minus(washer)]
    return { tip, fullThread: [...tip, ...minus(this.variable(kind.tip))], shank, length, forms: [] }
  }

  /** The first sum less the second. */
  private form(more: Terms, less: Terms): number {
    const factors = new Map<number, number>()
    for (const [variable, factor] of [...more, ...minus(less)])
      factors.set(variable, (factors.get(variable) ?? 0) + factor)
    const form = this.system.addForm([...factors].filter(([variable, factor]) => variable !== FIXED && factor !== 0))
    this.fixed.set(form, factors.get(FIXED) ?? 0)
    return form
  }

  private bound(form: number, lo: number, hi: number, reason: number): void {
    const fixed = this.fixed.get(form)!
    this.system.bound(form, lo - fixed, hi - fixed, reason)
  }

  private levelsOf(kind: KindVariables): Terms[] {
    return [[], kind.tip, kind.fullThread, kind.shank]
  }

  private hole(number: number) {
    const { joint, mouth, threadDepth, bottomDepth, behind } = this.holes.get(number)!
    const first = [...joint, ...mouth]
    const last = [...first, ...threadDepth]
    return { joint, first, last, bottom: [...joint, ...bottomDepth], passage: [...last, ...behind] }
  }

  private holeRows(number: number): (() => void)[] {
    const hole = this.problem.holes[number]!
    // A hole whose own figures contradict each other takes no bolt; its figures must not drag the others down with it.
    if (!hole.blind || hole.bottomDepth.hi < hole.mouth.lo + hole.threadDepth.lo) return []
    const { bottom, last } = this.hole(number)
    const room = this.form(bottom, last)
    return [() => this.bound(room, 0, Number.POSITIVE_INFINITY, OF_READINGS)]
  }

  private kindRows(number: number): (() => void)[] {
    const kind = this.problem.kinds[number]!
    const own = this.kinds.get(number)!
    const levels = this.levelsOf(own)
    for (let i = 0; i < KIND_LEVELS; i++) for (let j = 0; j < i; j++) own.forms.push(this.form(levels[i]!, levels[j]!))
    if ((kind.threadLength?.lo ?? 0) > kind.length.hi) return []
    const rows = [() => this.boundLevels(own, L, B, 0, OF_READINGS)]
    if (kind.threadLength) {
      // The thread is no longer than the bolt: length − thread length, which the washer leaves as it is.
      const plain = this.form([...own.length, ...own.shank], own.tip)
      rows.push(() => this.bound(plain, 0, Number.POSITIVE_INFINITY, OF_READINGS))
    }
    return rows
  }

  /** Level `deep` lies at least `least` below `high`. */
  private boundLevels(kind: KindVariables, deep: number, high: number, least: number, reason: number): void {
    if (deep > high) this.bound(formOf(kind, deep, high), least, Number.POSITIVE_INFINITY, reason)
    else this.bound(formOf(kind, high, deep), Number.NEGATIVE_INFINITY, -least, reason)
  }

  private rankRow({ quantity, less, more }: RankLine): () => void {
    const of = (number: number) =>
      quantity === 'length' ? this.kinds.get(number)!.length : this.holes.get(number)![quantity]
    const row = this.form(of(more), of(less))
    return () => this.bound(row, 0, Number.POSITIVE_INFINITY, OF_READINGS)
  }

  private trialRows(trial: TrialLine): (() => void)[] {
    const { joint, first } = this.hole(trial.hole)
    const kind = this.kinds.get(trial.kind)!
    const spans = trial.spans
    if ('stickOut' in spans) {
      const row = this.form(kind.tip, joint)
      return [() => this.bound(row, spans.stickOut.lo, spans.stickOut.hi, OF_READINGS)]
    }
    const tip = this.form(kind.tip, first)
    const fullThread = this.form(kind.fullThread, first)
    return [
      () => this.bound(tip, spans.pastMouth.lo, Number.POSITIVE_INFINITY, OF_READINGS),
      () => this.bound(fullThread, Number.NEGATIVE_INFINITY, spans.pastMouth.hi, OF_READINGS),
    ]
  }

  private addPair(pair: PairNumber): void {
    const number = Math.floor(pair / this.bins)
    if (!this.tiedHoles.has(number)) return
    const kind = this.kinds.get(pair % this.bins)
    must(kind !== undefined, 'Coupling: a tied hole has a kind that is not')
    const hole = this.hole(number)
    const forms = [
      this.form(kind.fullThread, hole.first),
      this.form(hole.first, kind.shank),
      this.form(hole.last, kind.shank),
      this.form(hole.last, hole.first),
    ]
    const spans = this.problem.holes[number]!
    if (spans.blind) forms.push(this.form(hole.bottom, kind.tip), this.form(hole.last, kind.fullThread))
    else if (spans.behind) forms.push(this.form(hole.passage, kind.tip))
    this.pairForms.set(pair, forms)
  }

  /** Adds the lines of a fit for the pair, with the least engagement that the hole may need. */
  private assert(pair: PairNumber): void {
    const number = Math.floor(pair / this.bins)
    const kind = this.kinds.get(pair % this.bins)!
    const hole = this.problem.holes[number]!
    const forms = this.pairForms.get(pair)
    if (forms) {
      const least = [hole.engagement.lo, 0, hole.engagement.lo, hole.engagement.lo, 0, 0]
      forms.forEach((form, i) => {
        this.bound(form, least[i]!, Number.POSITIVE_INFINITY, pair)
      })
      this.boundLevels(kind, A, B, hole.engagement.lo, pair)
      return
    }
    const demand = this.demands[number]!
    for (let i = 0; i < KIND_LEVELS; i++)
      for (let j = 0; j < i; j++)
        this.bound(formOf(kind, i, j), -demand[j * KIND_LEVELS + i]!, demand[i * KIND_LEVELS + j]!, pair)
  }
}

function minus(terms: Terms): Terms {
  return terms.map(([variable, factor]) => [variable, -factor])
}

/** Number of the form "level i below level j", i > j, in the order in which kindRows adds them. */
function formOf(kind: KindVariables, i: number, j: number): number {
  return kind.forms[(i * (i - 1)) / 2 + j]!
}

/** Pairs of holes under one gasket sheet whose thickness is not certain. */
export function gasketTies({ holes }: Problem): [number, number][] {
  const ties: [number, number][] = []
  const first = new Map<Face, number>()
  holes.forEach(({ sharesGasket, gasket, face }, h) => {
    if (!sharesGasket || gasket.lo === gasket.hi) return
    const other = first.get(face)
    if (other === undefined) first.set(face, h)
    else ties.push([other, h])
  })
  return ties
}

/** A rank line that the readings keep by themselves ties nothing. */
function holdsAnyway(problem: Problem, { quantity, less, more }: RankLine): boolean {
  const span = (number: number) =>
    quantity === 'length' ? problem.kinds[number]!.length : problem.holes[number]![quantity]
  return span(less).hi <= span(more).lo
}

/**
 * Pairs of holes that no single bolt of a kind can serve, for the kinds that are tied by nothing but their own length: known beforehand
 * they save the search from finding them one by one.
 */
export function clashesWithinKinds(problem: Problem, possible: Uint8Array, coupling: Coupling): Clash[] {
  const clashes: Clash[] = []
  const { demands } = coupling
  problem.kinds.forEach((kind, k) => {
    if (!coupling.isTiedKind(k)) return
    const served = problem.holes.map((_, h) => h).filter((h) => possible[h * coupling.bins + k] && demands[h])
    const own = kindLevels(kind)
    for (const a of served)
      for (const b of served)
        if (a < b && !together(own, demands[a]!, demands[b]!))
          clashes.push([a * coupling.bins + k, b * coupling.bins + k])
  })
  return clashes
}
