import { hasBit, setBit } from './bits.ts'
import { beginOf, mayBeNext, NONE, type WorkProblem } from './problem.ts'

/** An order gone through from its start: what it costs, and when each job begins. */
export type Walk = {
  toolChanges: number
  turns: number
  waiting: number
  minutes: number
  /** For each job of the order. */
  tools: number[][]
  from: number[]
  waits: number[]
  turned: boolean[]
  changes: number[]
  /** Windows that are not closed in time, by number, with what they took. */
  late: { rule: number; took: number }[]
}

/** Goes through an order: tools chosen for the fewest changes, turns, times, and windows that are missed. The order must keep what comes before what. */
export function walk(problem: WorkProblem, order: readonly number[]): Walk {
  const { tools, changes } = chosenTools(problem, order)
  let { side } = problem.start
  let time = 0
  const opened = [...problem.start.opened]
  const ends = new Array<number>(problem.before.length).fill(0)
  const out: Walk = {
    toolChanges: changes.reduce((sum, one) => sum + one, 0),
    turns: 0,
    waiting: 0,
    minutes: 0,
    tools,
    from: [],
    waits: [],
    turned: [],
    changes,
    late: [],
  }
  for (const job of order) {
    const wanted = problem.sides[job]!
    const turned = wanted !== NONE && side !== NONE && wanted !== side
    if (wanted !== NONE) side = wanted
    const begin = beginOf(problem, job, opened, time)
    out.turned.push(turned)
    out.turns += turned ? 1 : 0
    out.waits.push(begin - time)
    out.waiting += begin - time
    out.from.push(begin)
    time = begin + problem.minutes[job]!
    ends[job] = time
    problem.rules.forEach(({ opens }, w) => {
      if (opens === job) opened[w] = time
    })
  }
  out.minutes = time
  problem.rules.forEach(({ until, most }, w) => {
    const took = Math.max(...until.map((job) => ends[job]! - opened[w]!))
    if (took > most + 1e-9) out.late.push({ rule: w, took })
  })
  return out
}

/** True when the order keeps what comes before what, and no strict window is left for other work. */
export function keepsOrder(problem: WorkProblem, order: readonly number[]): boolean {
  const done = problem.start.done.slice()
  for (const job of order) {
    if (!mayBeNext(problem, job, done)) return false
    setBit(done, job)
  }
  return problem.before.every((_, job) => hasBit(done, job))
}

/** The tools of every stage with the fewest changes over the whole order; of equal ones the tool that the hand keeps, then the one named first. */
function chosenTools(
  { stages, start }: WorkProblem,
  order: readonly number[],
): { tools: number[][]; changes: number[] } {
  const rows = order.flatMap((job, at) => stages[job]!.map((any) => ({ at, any })))
  // from the last stage back: the fewest changes from here on with each tool in the hand
  const onward: Map<number, number>[] = new Array(rows.length)
  for (let i = rows.length - 1; i >= 0; i -= 1)
    onward[i] = new Map(rows[i]!.any.map((tool) => [tool, i + 1 < rows.length ? least(onward[i + 1]!, tool) : 0]))
  const tools: number[][] = order.map(() => [])
  const changes = order.map(() => 0)
  let hand = start.tool
  rows.forEach(({ at }, i) => {
    let best = NONE
    let fewest = Number.POSITIVE_INFINITY
    for (const [tool, rest] of onward[i]!) {
      const cost = rest + (hand !== NONE && tool !== hand ? 1 : 0)
      if (cost < fewest || (cost === fewest && tool === hand)) [best, fewest] = [tool, cost]
    }
    if (hand !== NONE && best !== hand) changes[at]! += 1
    hand = best
    tools[at]!.push(best)
  })
  return { tools, changes }
}

function least(onward: ReadonlyMap<number, number>, hand: number): number {
  let fewest = Number.POSITIVE_INFINITY
  for (const [tool, rest] of onward) fewest = Math.min(fewest, rest + (tool === hand ? 0 : 1))
  return fewest
}
