/** Which bolt belongs in which hole: the whole answer for a unit. */

import type { Face, Unit } from '../unit.ts'
import type { Conflict, FaceAnswer, HoleAnswer, Move, Pair, PlacementAnswer } from './answer.ts'
import { cyclesOf } from './changes.ts'
import { irreducibleHoles } from './conflict.ts'
import { type StatedLine, setContradictionsAside } from './contradiction.ts'
import { gasketTies } from './coupling.ts'
import { doubtsOf } from './doubt.ts'
import { asFoundWhy, type HoleFacts, holeWhy } from './holeWords.ts'
import { type Likelihood, likelihood } from './likelihood.ts'
import { nextReading } from './nextReading.ts'
import { pairAnswer } from './pairAnswer.ts'
import { compatible, FOUND_EMPTY, FOUND_UNKNOWN, type Problem, problemsOf } from './problem.ts'
import type { Placement } from './search.ts'
import type { Tools } from './solver.ts'
import { NANOMETRES } from './span.ts'
import { changeOf, fewestEmpty, judgeAll, mayPairs, openTray, type Tray, taskOf } from './tray.ts'
import { standardBolts } from './wanted.ts'
import { type Weights, weightsOf } from './weights.ts'
import { list, statementWords } from './words.ts'

/**
 * The placement answer for every face of the unit, in its order. The unit must have passed the file's checks. Faces that draw on one tray
 * are answered together. `tools.solver` is loaded only where much stays coupled; without one the own search goes on to the end.
 * Errors: none for a checked unit; `Stopped` when `tools.stop` says so.
 * @source docs/unit-file.md, "What fits means", for what a complete placement is; each part names its method's source.
 */
export async function place(unit: Unit, tools: Tools = {}): Promise<PlacementAnswer> {
  const faces: FaceAnswer[] = []
  for (const problem of problemsOf(unit)) faces.push(...(await placeTray(unit, problem, tools)))
  return { gripbook: 'placement/1', faces }
}

/** All that has been worked out about a tray. */
type Outcome = {
  tray: Tray
  /** Every pair alone, with all that was stated. */
  judged: Tray['judged']
  empty: number
  may: Uint8Array
  /** The fewest changes, and of those the likeliest. */
  leastChanged: Placement
  best: Placement
  likely: Likelihood
  conflicts: { holes: number[]; kinds: number[]; conflict: Conflict }[]
  next: ReturnType<typeof nextReading>
}

async function placeTray(unit: Unit, stated: Problem, tools: Tools): Promise<FaceAnswer[]> {
  const { problem, contradictions } = setContradictionsAside(stated)
  const tray = openTray(problem, tools)
  const found = (await fewestEmpty(tray))!
  const { empty } = found
  const may = await mayPairs(tray, empty, found.placement)
  const weights = weightsOf(problem, tray.judged, tray.bins)
  const best = await likeliest(tray, weights, empty)
  const leastChanged = await fewestChanges(tray, weights, empty)
  const task = taskOf(tray, empty, () => 0)
  const likely = likelihood(
    task,
    may,
    weights,
    tray.coupling,
    tray.clashes,
    linksOf(problem, may, tray.bins),
    best.bin,
    tools,
  )
  const outcome: Outcome = {
    tray,
    judged: contradictions.length > 0 ? judgeAll(stated) : tray.judged,
    empty,
    may,
    leastChanged,
    best,
    likely,
    conflicts: [
      ...contradictions.map((lines) => lineConflict(problem, lines)),
      ...(await conflictsOf(tray, empty, best, tools)),
    ],
    next: nextReading(problem, tray.judged, task, may, likely.chance),
  }
  const faces = [...new Set(problem.holes.map(({ face }) => face))]
  return faces.map((face) => faceAnswer(unit, face, outcome))
}

async function likeliest(tray: Tray, weights: Weights, empty: number): Promise<Placement> {
  let best: Placement | null = null
  let least = Number.POSITIVE_INFINITY
  for (const [t, chance] of weights.targets.entries()) {
    // Of equally likely placements the one with fewer changes: a change costs less than any weight that could be meant.
    const task = taskOf(
      tray,
      empty,
      (pair) => weights.own[pair]! + weights.habit[t]![pair]! + 1e-6 * changeOf(tray, pair),
    )
    const placement = await tray.search.cheapest(task)
    if (placement && placement.cost - Math.log(chance) < least) {
      best = placement
      least = placement.cost - Math.log(chance)
    }
  }
  return best!
}

async function fewestChanges(tray: Tray, weights: Weights, empty: number): Promise<Placement> {
  const own = weights.own
  const most = Math.max(1, ...own.filter(Number.isFinite)) * tray.problem.holes.length
  return (await tray.search.cheapest(taskOf(tray, empty, (pair) => changeOf(tray, pair) + (0.4 * own[pair]!) / most)))!
}

/** Pairs of holes that a rank line, a trial or a gasket ties, through a kind that they may share or directly. */
function linksOf(problem: Problem, may: Uint8Array, bins: number): [number, number][] {
  const userOf = (kind: number) => problem.holes.findIndex((_, h) => may[h * bins + kind])
  const links = [
    ...problem.ranks.map(({ quantity, less, more }) =>
      quantity === 'length' ? [userOf(less), userOf(more)] : [less, more],
    ),
    ...problem.trials.map(({ hole, kind }) => [hole, userOf(kind)]),
    ...gasketTies(problem),
  ]
  return links.filter((link): link is [number, number] => link.every((hole) => hole! >= 0))
}

/** As many sets of clashing holes as there are, each found after one hole of those before is left empty. */
async function conflictsOf(tray: Tray, empty: number, best: Placement, tools: Tools): Promise<Outcome['conflicts']> {
  const { problem, bins, search } = tray
  const conflicts: Outcome['conflicts'] = []
  if (empty === 0) return conflicts
  let among = problem.holes.map((_, h) => h)
  for (;;) {
    const holes = await irreducibleHoles(
      search,
      taskOf(tray, 0, () => 0),
      among,
    )
    if (!holes) return conflicts
    const kinds = problem.kinds.map((_, k) => k).filter((k) => holes.some((h) => tray.possible[h * bins + k]))
    conflicts.push({
      holes,
      kinds,
      conflict: {
        holes: holes.map((h) => problem.holes[h]!.source.id),
        kinds: kinds.map((k) => problem.kinds[k]!.source.id),
        short: 1,
        why: conflictWhy(tray, holes, kinds),
        doubt: await doubtsOf(problem, holes, empty, tools),
      },
    })
    const out = holes.find((h) => best.bin[h] === bins - 1) ?? holes[0]
    among = among.filter((h) => h !== out)
  }
}

function conflictWhy({ problem }: Tray, holes: number[], kinds: number[]): string {
  const names = list(holes.map((h) => problem.holes[h]!.source.id))
  const ids = kinds.map((k) => problem.kinds[k]!.source.id)
  if (kinds.length === 0) return `nothing in the tray fits hole ${names}`
  const count = kinds.reduce((sum, k) => sum + problem.kinds[k]!.count, 0)
  if (count < holes.length)
    return `holes ${names} can take only ${list(ids, 'or')}, of which there ${count === 1 ? 'is' : 'are'} ${count}`
  return `holes ${names} cannot all have a bolt of ${list(ids, 'or')}: lengths, rank lines and counts leave no way`
}

function lineConflict(problem: Problem, lines: StatedLine[]): Outcome['conflicts'][number] {
  const statements = lines.map((line) => {
    if ('trial' in line) {
      const { hole, kind } = line.trial
      return { what: 'trial' as const, hole: problem.holes[hole]!.source.id, kind: problem.kinds[kind]!.source.id }
    }
    const names = line.rank.quantity === 'length' ? problem.kinds : problem.holes
    const [less, more] = [names[line.rank.less]!.source.id, names[line.rank.more]!.source.id]
    return { what: 'rank' as const, quantity: line.rank.quantity, less, more }
  })
  const holes = new Set<number>()
  const kinds = new Set<number>()
  for (const line of lines) {
    if ('trial' in line) {
      holes.add(line.trial.hole)
      kinds.add(line.trial.kind)
    } else
      for (const number of [line.rank.less, line.rank.more])
        (line.rank.quantity === 'length' ? kinds : holes).add(number)
  }
  const why = `${list(statements.map(statementWords))} cannot ${lines.length > 1 ? 'all ' : ''}be true`
  return {
    holes: [...holes],
    kinds: [...kinds],
    conflict: {
      holes: [...holes].map((h) => problem.holes[h]!.source.id),
      kinds: [...kinds].map((k) => problem.kinds[k]!.source.id),
      short: 0,
      why,
      doubt: statements.map((statement) => ({
        statements: [statement],
        why: `without ${statementWords(statement)} the rest can be true`,
        likely: 1 / statements.length,
      })),
    },
  }
}

function faceAnswer(unit: Unit, face: Face, outcome: Outcome): FaceAnswer {
  const { tray, judged, best, leastChanged, likely, conflicts, next } = outcome
  const { problem, bins } = tray
  const empty = bins - 1
  const here = problem.holes.flatMap((hole, h) => (hole.face === face ? [h] : []))
  const own = conflicts.filter(
    ({ holes, kinds }) => holes.some((h) => here.includes(h)) || (holes.length === 0 && kinds.length > 0),
  )
  const pairs: Pair[] = []
  const holes: [string, HoleAnswer][] = []
  for (const h of here) {
    const ofHole = problem.kinds.flatMap((kind, k) =>
      compatible(problem.holes[h]!, kind) === 'other face'
        ? []
        : [pairAnswer(problem.holes[h]!, kind, judged[h * bins + k]!)],
    )
    pairs.push(...ofHole)
    holes.push([problem.holes[h]!.source.id, holeAnswer(outcome, h, ofHole)])
  }
  const left: [string, number][] = []
  const leftOverFits: [string, string[]][] = []
  problem.kinds.forEach((kind, k) => {
    if (kind.face !== null && kind.face !== face) return
    const used = best.bin.reduce((sum, b) => sum + (b === k ? 1 : 0), 0)
    if (!Number.isFinite(kind.count) || kind.count <= used) return
    left.push([kind.source.id, kind.count - used])
    const others = otherFaces(unit, face, kind.source.id)
    if (others.length > 0) leftOverFits.push([kind.source.id, others])
  })
  const moves = here
    .filter((h) => changeOf(tray, h * bins + leastChanged.bin[h]!) > 0)
    .map((h) => moveAt(tray, h, leastChanged))
  const wanted = here
    .filter((h) => best.bin[h] === empty)
    .map((h) => {
      const hole = problem.holes[h]!
      const fits = standardBolts(hole).filter(({ verdict }) => verdict !== 'cannot')
      const sure = fits.filter(({ verdict }) => verdict === 'fits')
      const chosen = sure.length > 0 ? sure : fits
      const thread = chosen[0]?.thread ?? hole.threads[0]!.name
      const lengths = chosen.filter((bolt) => bolt.thread === thread).map(({ length }) => length)
      const why =
        lengths.length > 0
          ? `${list(
              lengths.map((length) => `${thread}×${length}`),
              'or',
            )} would fill it, you have none to spare`
          : `no standard length of ${thread} fits the readings of this hole`
      return { hole: hole.source.id, thread, lengths, why }
    })
  const nextHere = next && (next.holes.some((h) => here.includes(h)) ? next : null)
  return {
    face: face.id,
    feasible: own.length === 0 && here.every((h) => best.bin[h] !== empty),
    holes: Object.fromEntries(holes),
    pairs,
    conflict: own[0]?.conflict ?? null,
    ...(own.length > 1 ? { furtherConflicts: own.slice(1).map(({ conflict }) => conflict) } : {}),
    changes: { count: moves.length, cycles: cyclesOf(moves) },
    missing: here.filter((h) => best.bin[h] === empty).length,
    leftOver: Object.fromEntries(left),
    ...(leftOverFits.length > 0 ? { leftOverFits: Object.fromEntries(leftOverFits) } : {}),
    wanted,
    next: nextHere && withoutHoles(nextHere),
    likelihood:
      likely.method === 'exact' ? { method: 'exact' } : { method: 'sampled', standardError: likely.standardError },
  }
}

function withoutHoles({ holes: _, ...next }: NonNullable<Outcome['next']>) {
  return next
}

function holeAnswer({ tray, may, best, likely, conflicts }: Outcome, h: number, pairs: Pair[]): HoleAnswer {
  const { problem, bins } = tray
  const hole = problem.holes[h]!
  const id = (k: number) => problem.kinds[k]!.source.id
  const kinds = problem.kinds.map((_, k) => k).filter((k) => may[h * bins + k])
  const mayBeEmpty = may[h * bins + bins - 1] === 1
  const contradicted = conflicts[0]?.holes.includes(h) || kinds.length === 0
  const facts: HoleFacts = { pairs, may: kinds.map(id), contradicted, mayBeEmpty }
  const settled = kinds.length === 1 && !mayBeEmpty && !contradicted
  const bestKind = best.bin[h]! === bins - 1 ? null : id(best.bin[h]!)
  const answer: HoleAnswer = {
    verdict: contradicted ? 'contradicted' : settled ? 'settled' : 'open',
    may: facts.may,
    likely: Object.fromEntries(kinds.map((k) => [id(k), settled ? 1 : likely.chance[h * bins + k]!])),
    best: bestKind,
    why: holeWhy(facts),
  }
  if (settled) answer.proven = provenBy(tray, h, kinds[0]!)
  if (hole.asFound !== FOUND_UNKNOWN) {
    const kind = hole.asFound === FOUND_EMPTY ? 'none' : id(hole.asFound)
    const stays = hole.asFound === FOUND_EMPTY ? mayBeEmpty : may[h * bins + hole.asFound] === 1
    const verdict = !stays ? 'must change' : settled ? 'right' : 'may stay'
    answer.asFound = { kind, verdict, why: asFoundWhy(kind, verdict, facts) }
  }
  return answer
}

/** True when the hole's own readings leave no standard length but the kind's. */
function provenBy({ problem }: Tray, h: number, k: number): boolean {
  const { length } = problem.kinds[k]!
  return standardBolts(problem.holes[h]!).every(
    (bolt) =>
      bolt.verdict === 'cannot' ||
      (bolt.length * NANOMETRES >= length.lo - NANOMETRES && bolt.length * NANOMETRES <= length.hi + NANOMETRES),
  )
}

function moveAt({ problem, bins }: Tray, h: number, { bin }: Placement): Move {
  const { source, asFound } = problem.holes[h]!
  const name = (k: number) => (k === FOUND_EMPTY || k === bins - 1 ? 'none' : problem.kinds[k]!.source.id)
  return { hole: source.id, from: name(asFound), to: name(bin[h]!) }
}

/** Other faces of the unit with a hole that the kind would fit or might. */
function otherFaces(unit: Unit, face: Face, id: string): string[] {
  const kind = [...(face.kinds ?? []), ...(unit.kinds ?? [])].find((one) => one.id === id)!
  const others = unit.faces.filter((other) => other !== face)
  return others
    .filter((other) => {
      const alone: Unit = { gripbook: 'unit/1', faces: [{ ...bare(other), kinds: [kind] }] }
      const [problem] = problemsOf(alone)
      return openTray(problem!, {}).possible.some((possible) => possible === 1)
    })
    .map((other) => other.id)
}

/** The face's holes alone, without what was said about the kinds of its own tray. */
function bare({ ranks: _ranks, trials: _trials, kinds: _kinds, ...face }: Face): Face {
  return { ...face, holes: face.holes.map(({ asFound: _asFound, ...hole }) => hole) }
}
