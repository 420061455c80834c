/**
 * Which of the things stated would have to be wrong for a conflict to go away: the fewest, likeliest first.
 *
 * Statements are set aside one by one, then two and three together, each time only those that have a part in the conflict that is left
 * (hitting sets by breadth; R. Reiter, 1987). What each is likely to be weighs the slips that hands make: a figure 10 mm off, a count one
 * out, two readings in each other's place, a kind mixed with its neighbour length. The weights are assumptions: common practice, no source.
 */
import type { Doubt, Statement } from './answer.ts'
import { irreducibleHoles } from './conflict.ts'
import { compatible, type HoleSpans, type KindSpans, type Problem } from './problem.ts'
import { Stopped, type Tools } from './solver.ts'
import { NANOMETRES, type Span } from './span.ts'
import { openTray, type Tray, taskOf } from './tray.ts'
import { millimetres, quantityWords, statementWords } from './words.ts'

const HOLE_READINGS = ['grip', 'bracket', 'gasket', 'mouth', 'threadDepth', 'bottomDepth', 'behind'] as const
const KIND_READINGS = ['length', 'threadLength', 'tip', 'washer'] as const
type HoleReading = (typeof HOLE_READINGS)[number]

/** Something stated, and the problem as it would be without it. */
type Suspect = { statement: Statement; without: (problem: Problem) => Problem; slips: Slip[]; weight: number }
/** A way in which it may have gone wrong, and the problem as it would then be. */
type Slip = { weight: number; words: string; corrected: (problem: Problem) => Problem }

const WEIGHT = { reading: 1, count: 2, rank: 3, trial: 2 }
const SLIP = { tens: 6, countByOne: 6, neighbourLength: 3, swapped: 2 }
const MOST_TOGETHER = 3
const MOST_TRIES = 150
/** In a larger conflict too many readings could stand in each other's place to say which. */
const MOST_SWAPPED = 6
/** Of so many doubts it is looked into how each may have come about; where there are more, none stands out anyway. */
const MOST_WEIGHED = 12
const ANY: Span = { lo: 0, hi: Number.POSITIVE_INFINITY }

/** `empty`: the fewest holes that stay empty as things were stated; a doubt is a set of statements without which fewer do. */
export async function doubtsOf(tray: Tray, conflict: number[], empty: number, tools: Tools): Promise<Doubt[]> {
  const { problem } = tray
  let tries = 0
  const helps = async (changed: Problem) => {
    if (tools.stop?.aborted) throw new Stopped()
    tries++
    const without = openTray(changed, tools, tray)
    return (
      (await without.search.cheapest(
        taskOf(without, empty - 1, () => 0),
        true,
      )) !== null
    )
  }
  /** `conflict`: of the branch's own problem, found when the branch is followed. */
  type Branch = { taken: Suspect[]; problem: Problem; conflict?: number[] }
  let level: Branch[] = [{ taken: [], problem, conflict }]
  for (let size = 1; size <= MOST_TOGETHER; size++) {
    const found: Suspect[][] = []
    const next: Branch[] = []
    for (const branch of level) {
      if (tries > MOST_TRIES) break
      const clash = branch.conflict ?? (await conflictIn(branch.problem, tools))
      for (const suspect of suspectsIn(problem, clash)) {
        if (tries > MOST_TRIES) break
        if (branch.taken.some((other) => same(other, suspect))) continue
        const taken = [...branch.taken, suspect]
        if (found.some((set) => set.every((one) => taken.some((other) => same(one, other))))) continue
        const changed = suspect.without(branch.problem)
        if (await helps(changed)) found.push(taken)
        else next.push({ taken, problem: changed })
      }
    }
    if (found.length > 0) {
      const looked = found.length <= MOST_WEIGHED
      return rank(await Promise.all(found.map((set) => weigh(set, problem, looked ? helps : async () => false))))
    }
    level = next
  }
  return []
}

async function conflictIn(problem: Problem, tools: Tools): Promise<number[]> {
  const tray = openTray(problem, tools)
  const among = problem.holes.map((_, h) => h)
  return (
    (await irreducibleHoles(
      tray.search,
      taskOf(tray, 0, () => 0),
      among,
    )) ?? []
  )
}

function same(a: Suspect, b: Suspect): boolean {
  return JSON.stringify(a.statement) === JSON.stringify(b.statement)
}

async function weigh(
  set: Suspect[],
  problem: Problem,
  helps: (problem: Problem) => Promise<boolean>,
): Promise<Weighed> {
  let weight = set.reduce((product, suspect) => product * suspect.weight, 1)
  let words = ''
  if (set.length === 1)
    for (const slip of [...set[0]!.slips].sort((a, b) => b.weight - a.weight)) {
      if (!(await helps(slip.corrected(problem)))) continue
      weight += slip.weight
      words ||= slip.words
    }
  return { set, weight, words }
}

type Weighed = { set: Suspect[]; weight: number; words: string }

function rank(weighed: Weighed[]): Doubt[] {
  const all = weighed.reduce((sum, { weight }) => sum + weight, 0)
  return weighed
    .sort((a, b) => b.weight - a.weight)
    .map(({ set, weight, words }) => ({
      statements: set.map(({ statement }) => statement),
      why:
        words ||
        `if ${set.map(({ statement }) => statementWords(statement)).join(' and ')} ${set.length > 1 ? 'were' : 'was'} wrong, this could be filled`,
      likely: weight / all,
    }))
}

/** Everything that was stated about the holes of the conflict, and about the kinds that their threads and features admit. */
function suspectsIn(problem: Problem, conflict: number[]): Suspect[] {
  const holes = new Set(conflict)
  const kinds = new Set<number>()
  for (const h of conflict)
    problem.kinds.forEach((kind, k) => {
      if (compatible(problem.holes[h]!, kind) === 'yes') kinds.add(k)
    })
  // Rank lines reach further than the conflict's own holes.
  for (let grown = true; grown; ) {
    grown = false
    for (const { quantity, less, more } of problem.ranks) {
      const reached = quantity === 'length' ? kinds : holes
      if (reached.has(less) === reached.has(more)) continue
      reached.add(less).add(more)
      grown = true
    }
  }
  const ranks = problem.ranks.filter(({ quantity, less }) => (quantity === 'length' ? kinds : holes).has(less))
  return [
    ...[...holes].flatMap((h) => holeSuspects(problem, h, conflict)),
    ...[...kinds].flatMap((k) => kindSuspects(problem, k)),
    ...ranks.map((line): Suspect => {
      const names = line.quantity === 'length' ? problem.kinds : problem.holes
      const [less, more] = [names[line.less]!.source.id, names[line.more]!.source.id]
      return {
        statement: { what: 'rank', quantity: line.quantity, less, more },
        without: (p) => ({ ...p, ranks: p.ranks.filter((other) => other !== line) }),
        slips: [],
        weight: WEIGHT.rank,
      }
    }),
    ...problem.trials
      .filter(({ hole, kind }) => holes.has(hole) || kinds.has(kind))
      .map(
        (trial): Suspect => ({
          statement: {
            what: 'trial',
            hole: problem.holes[trial.hole]!.source.id,
            kind: problem.kinds[trial.kind]!.source.id,
          },
          without: (p) => ({ ...p, trials: p.trials.filter((other) => other !== trial) }),
          slips: [],
          weight: WEIGHT.trial,
        }),
      ),
  ]
}

function holeSuspects(problem: Problem, h: number, conflict: number[]): Suspect[] {
  const hole = problem.holes[h]!
  const stated = HOLE_READINGS.filter(
    (quantity) => hole.source[quantity] !== undefined || (quantity === 'gasket' && hole.face.gasket !== undefined),
  )
  return stated.map((quantity) => ({
    statement: { what: 'reading', quantity, of: hole.source.id, place: 'hole' },
    without: (p) => withHole(p, h, { [quantity]: quantity === 'behind' ? null : ANY }),
    slips: [
      ...tens(
        hole[quantity]!,
        `the ${quantityWords(quantity)} of hole ${hole.source.id}`,
        (span) => (p) => withHole(p, h, { [quantity]: span }),
      ),
      ...(conflict.length > MOST_SWAPPED ? [] : conflict)
        .filter((other) => other !== h && problem.holes[other]!.source[quantity] !== undefined)
        .map((other) => swapped(problem, h, other, quantity)),
    ],
    weight: WEIGHT.reading,
  }))
}

/** A scale misread by a whole ten: the commonest slip of a caliper or a rule. */
function tens(span: Span, what: string, corrected: (span: Span) => (problem: Problem) => Problem): Slip[] {
  return [10, -10]
    .map((off) => ({ off, lo: span.lo + off * NANOMETRES, hi: span.hi + off * NANOMETRES }))
    .filter(({ lo, hi }) => lo >= 0 && Number.isFinite(hi))
    .map(({ off, lo, hi }) => ({
      weight: SLIP.tens,
      words: `${what} may have slipped by ${Math.abs(off)} mm: ${millimetres((lo + hi) / 2)} in place of ${millimetres((span.lo + span.hi) / 2)} would explain it`,
      corrected: corrected({ lo, hi }),
    }))
}

function swapped(problem: Problem, a: number, b: number, quantity: HoleReading): Slip {
  const [ofA, ofB] = [problem.holes[a]!, problem.holes[b]!]
  return {
    weight: SLIP.swapped,
    words: `the ${quantityWords(quantity)} readings of holes ${ofA.source.id} and ${ofB.source.id} may stand in each other's place`,
    corrected: (p) => withHole(withHole(p, a, { [quantity]: ofB[quantity] }), b, { [quantity]: ofA[quantity] }),
  }
}

function kindSuspects(problem: Problem, k: number): Suspect[] {
  const kind = problem.kinds[k]!
  const id = kind.source.id
  const suspects = KIND_READINGS.filter((quantity) => kind.source[quantity] !== undefined).map((quantity): Suspect => {
    const name = `the ${quantityWords(quantity)} of kind ${id}`
    const span = kind[quantity] ?? ANY
    return {
      statement: { what: 'reading', quantity, of: id, place: 'kind' },
      without: (p) => withKind(p, k, { [quantity]: ANY }),
      slips: [
        ...tens(span, name, (moved) => (p) => withKind(p, k, { [quantity]: moved })),
        ...(quantity === 'length' ? neighbours(kind, k) : []),
      ],
      weight: WEIGHT.reading,
    }
  })
  if (Number.isFinite(kind.count))
    suspects.push({
      statement: { what: 'count', of: id },
      without: (p) => withKind(p, k, { count: Number.POSITIVE_INFINITY }),
      slips: [
        {
          weight: SLIP.countByOne,
          words: `${id} may be miscounted: ${kind.count + 1} in place of ${kind.count} would explain it`,
          corrected: (p) => withKind(p, k, { count: kind.count + 1 }),
        },
      ],
      weight: WEIGHT.count,
    })
  return suspects
}

/** Bolts of the next length up or down that got into the kind. */
function neighbours(kind: KindSpans, k: number): Slip[] {
  return [5, -5]
    .map((off) => ({ lo: kind.length.lo + off * NANOMETRES, hi: kind.length.hi + off * NANOMETRES }))
    .filter(({ lo, hi }) => lo >= 0 && Number.isFinite(hi))
    .map((length) => ({
      weight: SLIP.neighbourLength,
      words: `${kind.source.id} may be of the neighbour length, ${millimetres((length.lo + length.hi) / 2)} mm`,
      corrected: (p) => withKind(p, k, { length }),
    }))
}

function withHole(problem: Problem, h: number, change: Partial<HoleSpans>): Problem {
  const { face, sharesGasket } = problem.holes[h]!
  // A sheet that the face shares has one thickness, right or wrong.
  const meant = (hole: HoleSpans, i: number) =>
    i === h || ('gasket' in change && sharesGasket && hole.sharesGasket && hole.face === face)
  return { ...problem, holes: problem.holes.map((hole, i) => (meant(hole, i) ? { ...hole, ...change } : hole)) }
}

function withKind(problem: Problem, k: number, change: Partial<KindSpans>): Problem {
  return { ...problem, kinds: problem.kinds.map((kind, i) => (i === k ? { ...kind, ...change } : kind)) }
}
