/**
 * What every bolt holds while a face is tightened bolt by bolt. A bolt is a spring whose nut stands still between the turns of its wrench; a wrench brings its bolt up to a load
 * and never lets it down; a bolt that its neighbours have freed hangs loose.
 */
import { lockedLoads } from './locked.ts'

export type Bolt = {
  /** Full load, N. */
  target: number
  /** Of bolt, head, engaged thread and the zone under the head, mm/N. */
  compliance: number
  /** 1, 2 …: bolts of a later visit are not there before. */
  visit: number
}

/** Shares are of each bolt's target; bolts by their place in the list. */
export type Pass = { share: number; visit: number; sequence: readonly number[] }

/** What a cover answers to bolts that hold it: loads in N and sinks in mm at the bolts. */
export type Cover = (holding: (compliance: readonly number[][]) => Float64Array) => {
  loads: Float64Array
  sinks: Float64Array
}

export type Turn = { bolt: number; share: number; pass: number; moved: boolean; loads: Float64Array }

/** A rise smaller than this share of the target is none: the wrench clicks at once. */
const CLICK = 0.005

/** How a face stands between two turns: how far each nut has come (see `lockedLoads`), what each bolt holds, where the cover is. */
export type Standing = { travel: (number | null)[]; loads: Float64Array; sinks: Float64Array }

/** A bed that holds both ways, or whose cover nowhere lifts: one compliance for all. */
export function linearCover(compliance: readonly number[][]): Cover {
  return (holding) => {
    const loads = holding(compliance)
    return {
      loads,
      sinks: Float64Array.from(compliance, (row) => row.reduce((sum, c, j) => sum + c * loads[j]!, 0)),
    }
  }
}

/** A face before the first turn. */
export function untouched(bolts: readonly Bolt[]): Standing {
  return {
    travel: bolts.map(() => null),
    loads: new Float64Array(bolts.length),
    sinks: new Float64Array(bolts.length),
  }
}

/**
 * Turns of the wrench one after another, pass by pass. `snug`: the bolts of a visit are run down by hand, to first touch, before its first pass; otherwise each is loose until its turn.
 * `standing` is brought on in place.
 */
export function tighten(
  passes: readonly Pass[],
  bolts: readonly Bolt[],
  snug: boolean,
  cover: Cover,
  standing: Standing,
): Turn[] {
  return passes.flatMap(({ share, visit, sequence }, p) => {
    if (snug) runDown(bolts, visit, standing)
    return sequence.map((bolt) => ({ bolt, share, pass: p + 1, ...turn(bolt, share, bolts, cover, standing) }))
  })
}

/** Bolts of the visit, and of those before, touch where the cover is now. */
function runDown(bolts: readonly Bolt[], visit: number, { travel, sinks }: Standing): void {
  bolts.forEach((bolt, j) => {
    if (bolt.visit <= visit) travel[j] ??= sinks[j]!
  })
}

function turn(
  bolt: number,
  share: number,
  bolts: readonly Bolt[],
  cover: Cover,
  standing: Standing,
): { moved: boolean; loads: Float64Array } {
  const { target, compliance } = bolts[bolt]!
  const load = share * target
  const before = standing.loads[bolt]!
  if (before < load) {
    settle(standing, bolts, cover, { bolt, load })
    standing.travel[bolt] = standing.sinks[bolt]! + compliance * load
  }
  return { moved: load - before > CLICK * target, loads: standing.loads.slice() }
}

/** Where the loads settle with all nuts standing still, but for one that a wrench turns. */
function settle(
  standing: Standing,
  bolts: readonly Bolt[],
  cover: Cover,
  driven?: { bolt: number; load: number },
): void {
  const guess = Uint8Array.from(standing.loads, (load) => (load > 0 ? 1 : 0))
  const { loads, sinks } = cover((compliance) =>
    lockedLoads(
      {
        matrix: compliance.map((row, i) => row.map((c, j) => (i === j ? c + bolts[i]!.compliance : c))),
        travel: standing.travel,
        ...(driven === undefined ? {} : { driven }),
      },
      standing.loads.some((load) => load > 0) ? guess : undefined,
    ),
  )
  standing.loads = loads
  standing.sinks = sinks
}

/** Rounds at full load in a stated sequence, until none moves its bolt, at most `most`. */
export function lastRounds(
  sequence: readonly number[],
  bolts: readonly Bolt[],
  cover: Cover,
  standing: Standing,
  most: number,
): { count: number; still: boolean } {
  for (let count = 1; count <= most; count++) {
    const moved = sequence.map((bolt) => turn(bolt, 1, bolts, cover, standing).moved)
    if (!moved.includes(true)) return { count, still: true }
  }
  return { count: most, still: false }
}

/** After the surfaces have given way by `loss` mm at each bolt: the nuts stand that much further back. */
export function embedded(loss: number, bolts: readonly Bolt[], cover: Cover, standing: Standing): void {
  standing.travel = standing.travel.map((u) => (u === null ? null : u - loss))
  settle(standing, bolts, cover)
}

/** (greatest − least)/mean of the loads, each as a share of its target. */
export function spreadOf(loads: ArrayLike<number>, bolts: readonly Bolt[]): number {
  const shares = bolts.map(({ target }, j) => loads[j]! / target)
  const mean = shares.reduce((sum, share) => sum + share, 0) / shares.length
  return mean === 0 ? 0 : (Math.max(...shares) - Math.min(...shares)) / mean
}
