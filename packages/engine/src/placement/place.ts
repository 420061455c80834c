/** Which bolt belongs in which hole: the whole answer for a unit. */
import type { Unit } from '../unit.ts'
import type { FaceAnswer, PlacementAnswer } from './answer.ts'
import { conflictsOf, lineConflict } from './conflictAnswer.ts'
import { setContradictionsAside } from './contradiction.ts'
import { gasketTies } from './coupling.ts'
import { faceAnswer, type Outcome } from './faceAnswer.ts'
import { likelihood } from './likelihood.ts'
import { nextReading } from './nextReading.ts'
import { type Problem, problemsOf } from './problem.ts'
import type { Placement } from './search.ts'
import type { Tools } from './solver.ts'
import { changeOf, fewestEmpty, judgeAll, mayPairs, openTray, type Tray, taskOf } from './tray.ts'
import { type Weights, weightsOf } from './weights.ts'

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
