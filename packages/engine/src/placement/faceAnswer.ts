/** What was worked out about a tray, told for one face. */
import type { Face, Unit } from '../unit.ts'
import type { FaceAnswer, HoleAnswer, Move, Pair } from './answer.ts'
import { cyclesOf } from './changes.ts'
import type { FoundConflict } from './conflictAnswer.ts'
import { asFoundWhy, type HoleFacts, holeWhy } from './holeWords.ts'
import type { Likelihood } from './likelihood.ts'
import type { nextReading } from './nextReading.ts'
import { pairAnswer } from './pairAnswer.ts'
import { compatible, FOUND_EMPTY, FOUND_UNKNOWN, problemsOf } from './problem.ts'
import type { Placement } from './search.ts'
import { NANOMETRES } from './span.ts'
import { changeOf, openTray, type Tray } from './tray.ts'
import { standardBolts } from './wanted.ts'
import { list } from './words.ts'

/** All that has been worked out about a tray. */
export type Outcome = {
  tray: Tray
  /** Every pair alone, with all that was stated. */
  judged: Tray['judged']
  empty: number
  may: Uint8Array
  /** The fewest changes, and of those the likeliest. */
  leastChanged: Placement
  best: Placement
  likely: Likelihood
  conflicts: FoundConflict[]
  next: ReturnType<typeof nextReading>
}

/** The answer for one face of the tray. */
export function faceAnswer(unit: Unit, face: Face, outcome: Outcome): FaceAnswer {
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
    holes.push([problem.holes[h]!.source.id, holeAnswer(outcome, h, ofHole, own[0]?.holes ?? [])])
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

function holeAnswer({ tray, may, best, likely }: Outcome, h: number, pairs: Pair[], conflict: number[]): HoleAnswer {
  const { problem, bins } = tray
  const hole = problem.holes[h]!
  const id = (k: number) => problem.kinds[k]!.source.id
  const kinds = problem.kinds.map((_, k) => k).filter((k) => may[h * bins + k])
  const mayBeEmpty = may[h * bins + bins - 1] === 1
  const contradicted = conflict.includes(h) || kinds.length === 0
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
