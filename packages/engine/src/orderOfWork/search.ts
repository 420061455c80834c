import { type Bits, hasBit, meet, setBit, within } from './bits.ts'
import { lowerBound } from './bounds.ts'
import { Heap } from './heap.ts'
import { beginOf, insideOf, isFree, NONE, runs, type WorkProblem } from './problem.ts'

/** Where the hands are: what is done, what they hold, how the unit lies, and at what cost. Times only where a window may be missed. */
type State = {
  done: Bits
  /** Not done, and all before it done. */
  next: number[]
  left: number
  tool: number
  side: number
  cost: number
  /** What is done and left to do together can cost at least. */
  atLeast: number
  time: number
  opened: number[]
  parent: State | undefined
  did: number[]
}

export type FoundOrder = { order: number[]; cost: number; atLeast: number; proven: boolean }

/** How far the search goes before it gives the best it has: states kept side by side in the first look, and states opened in the second. */
const PATIENCE = { beam: 150, states: 4_000 }

/**
 * An order with the fewest changes of tools and turns together that keeps what comes before what, the strict windows and, where it depends on the order, the
 * time of windows; undefined when none does, or none was found in time. Two looks: the best few states side by side give an order; then the states are
 * opened cheapest first, by what they have cost and what is left can cost at least, which ends with the proof.
 * What can be done without any change is done at once: to put it off never saves a change, since a job taken out of the rest leaves no change more there.
 */
export function fewestChanges(problem: WorkProblem): FoundOrder | undefined {
  const { first, from } = movesOf(problem)
  let best = lookAhead(first, from, new Seen(problem))
  const queue = new Heap<State>((a, b) => a.atLeast - b.atLeast || a.left - b.left || a.cost - b.cost)
  const seen = new Seen(problem)
  queue.push(first)
  let atLeast = first.atLeast
  for (let opened = 0; ; opened += 1) {
    const state = queue.pop()
    if (state === undefined || (best !== undefined && state.atLeast >= best.cost)) {
      return best && { order: orderOf(best), cost: best.cost, atLeast: best.cost, proven: true }
    }
    atLeast = Math.max(atLeast, state.atLeast)
    if (opened >= PATIENCE.states) return best && { order: orderOf(best), cost: best.cost, atLeast, proven: false }
    if (state.left === 0) {
      best = state
      continue
    }
    if (!seen.isBest(state)) continue
    for (const next of from(state)) {
      if (best !== undefined && next.atLeast >= best.cost) continue
      if (seen.enter(next)) queue.push(next)
    }
  }
}

/** The best complete order that a narrow look ahead comes to. */
function lookAhead(first: State, from: (state: State) => State[], seen: Seen): State | undefined {
  let best: State | undefined
  let front = [first]
  while (front.length > 0) {
    const next: State[] = []
    for (const state of front) {
      if (state.left > 0) next.push(...from(state).filter((child) => seen.enter(child)))
      else if (best === undefined || state.cost < best.cost) best = state
    }
    front = next
      .filter((state) => seen.isBest(state) && (best === undefined || state.atLeast < best.cost))
      .sort((a, b) => a.atLeast - b.atLeast || a.left - b.left)
      .slice(0, PATIENCE.beam)
  }
  return best
}

function orderOf(state: State): number[] {
  const parts: number[][] = []
  for (let at: State | undefined = state; at; at = at.parent) parts.unshift(at.did)
  return parts.flat()
}

const keyOf = ({ done, tool, side }: State): string => `${done.join()} ${tool} ${side}`

/** States met before. One that is dearer, and no better in its clocks, leads nowhere that the other does not. */
class Seen {
  readonly #met = new Map<string, State[]>()
  readonly #rules: WorkProblem['rules']
  readonly #timed: boolean
  constructor(problem: WorkProblem) {
    this.#rules = problem.rules
    this.#timed = isTimed(problem)
  }
  enter(state: State): boolean {
    const key = keyOf(state)
    const met = this.#met.get(key) ?? []
    if (met.some((other) => this.#isAsGood(other, state))) return false
    this.#met.set(key, [...met.filter((other) => !this.#isAsGood(state, other)), state])
    return true
  }
  isBest(state: State): boolean {
    return state.parent === undefined || (this.#met.get(keyOf(state))?.includes(state) ?? true)
  }
  #isAsGood(one: State, other: State): boolean {
    if (one.cost > other.cost) return false
    if (!this.#timed) return true
    return this.#rules.every((rule, w) => {
      if (!runs(rule, one.done)) return true
      const [mine, theirs] = [one.time - one.opened[w]!, other.time - other.opened[w]!]
      return (
        (rule.most === Number.POSITIVE_INFINITY || mine <= theirs) &&
        (rule.least === 0 || Math.min(mine, rule.least) >= Math.min(theirs, rule.least))
      )
    })
  }
}

const isTimed = ({ rules }: WorkProblem): boolean => rules.some(({ tight }) => tight)

/** The state at the start, and those that one change or one job leads to from any. */
function movesOf(problem: WorkProblem): { first: State; from: (state: State) => State[] } {
  const { rules, stages, sides, minutes, faces, start, before } = problem
  const timed = isTimed(problem)
  const bound = lowerBound(problem)
  const inside = stages.map(insideOf)
  const opensBlock = stages.map((_, job) =>
    rules.some(({ opens, strict, tight }) => opens === job && (strict || tight)),
  )
  const soaks = stages.map((_, job) => rules.some(({ opens, least }) => opens === job && least > 0))
  const tightRuns = (done: Bits) => timed && rules.some((rule) => rule.tight && runs(rule, done))
  const strict = rules.filter((rule) => rule.strict)
  const followers = before.map((_, job) =>
    before
      .flatMap((bits, later) => (hasBit(bits, job) ? [later] : []))
      .filter((later) => isDirect(problem, job, later)),
  )
  /** Jobs that may be done next: all before them done, and inside every strict window that runs. */
  const open = ({ next, done }: State): number[] => {
    const running = strict.filter((rule) => runs(rule, done))
    return running.length === 0 ? next : next.filter((job) => running.every(({ allowed }) => hasBit(allowed, job)))
  }

  /** Does a job in a state that is still being made; false when a window is missed by it. */
  const perform = (state: State, job: number): boolean => {
    state.did.push(job)
    setBit(state.done, job)
    state.left -= 1
    state.next = state.next.filter((other) => other !== job)
    for (const later of followers[job]!) if (within(before[later]!, state.done)) state.next.push(later)
    if (!timed) return true
    state.time = beginOf(problem, job, state.opened, state.time) + minutes[job]!
    return rules.every(({ opens, until, most, tight }, w) => {
      if (opens === job) state.opened[w] = state.time
      if (!tight || !hasBit(state.done, opens)) return true
      const closes = until.includes(job) || until.some((closer) => !hasBit(state.done, closer))
      return !closes || state.time - state.opened[w]! <= most + 1e-9
    })
  }
  /** Does all that is free. No window is missed by that: it stops where one runs whose time depends on the order, and opens none of these. */
  const absorb = (state: State): State => {
    let face = state.did.length > 0 ? faces[state.did.at(-1)!]! : NONE
    while (!tightRuns(state.done)) {
      let job = NONE
      let liked = 0
      for (const one of open(state)) {
        if (opensBlock[one] || !isFree(problem, one, state.tool, state.side)) continue
        const likes = soaks[one] ? 3 : faces[one] === face ? 2 : 1
        if (likes > liked || (likes === liked && one < job)) [job, liked] = [one, likes]
      }
      if (job === NONE) break
      face = faces[job]!
      perform(state, job)
    }
    state.atLeast = state.cost + bound(state.done, state.tool, state.side)
    return state
  }
  const child = (parent: State, tool: number, side: number, changes: number, job?: number): State | undefined => {
    const cost =
      parent.cost +
      changes +
      (parent.tool !== NONE && parent.tool !== tool && job === undefined ? 1 : 0) +
      (parent.side !== NONE && parent.side !== side ? 1 : 0)
    const state: State = {
      ...parent,
      done: parent.done.slice(),
      opened: timed ? parent.opened.slice() : parent.opened,
      tool,
      side,
      cost,
      parent,
      did: [],
    }
    return job === undefined || perform(state, job) ? absorb(state) : undefined
  }
  const from = (state: State): State[] => {
    const children: State[] = []
    const keep = (made: State | undefined) => {
      if (made !== undefined) children.push(made)
    }
    const changed = new Set<string>()
    for (const job of open(state)) {
      const changes = inside[job]!
      const side = sides[job] === NONE ? state.side : sides[job]!
      for (const tool of changes.size > 0 ? changes.keys() : [state.tool]) {
        if (tool === state.tool && side === state.side) {
          if (changes.size === 0) keep(child(state, tool, side, 0, job))
          for (const [end, cost] of changes.get(tool) ?? []) keep(child(state, end, side, cost, job))
        } else if (!changed.has(`${tool} ${side}`)) {
          changed.add(`${tool} ${side}`)
          keep(child(state, tool, side, 0))
        }
      }
    }
    return children
  }
  const first: State = {
    done: start.done.slice(),
    next: before.flatMap((bits, job) => (!hasBit(start.done, job) && within(bits, start.done) ? [job] : [])),
    left: stages.reduce((sum, _, job) => sum + (hasBit(start.done, job) ? 0 : 1), 0),
    tool: start.tool,
    side: start.side,
    cost: 0,
    atLeast: 0,
    time: 0,
    opened: [...start.opened],
    parent: undefined,
    did: [],
  }
  return { first: absorb(first), from }
}

/** No other job lies between the two. */
function isDirect({ before, after }: WorkProblem, job: number, later: number): boolean {
  return !meet(after[job]!, before[later]!)
}
