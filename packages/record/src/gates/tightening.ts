/** Stops of the hands: starting, running down, snugging and torquing the bolts of a face in their rounds. */
import { facePasses } from '@gripbook/engine'
import type { BodyOf } from '../events/catalogue.ts'
import { type BenchFace, type BenchHole, isFinal } from './benchFace.ts'
import type { Stop, StopName, Why } from './stop.ts'

type Step =
  | { type: 'hand-started' | 'run-down' | 'snugged'; body: BodyOf<'hand-started'> }
  | { type: 'turns-counted'; body: BodyOf<'turns-counted'> }
  | { type: 'pass-torqued'; body: BodyOf<'pass-torqued'> }

const TYPES: ReadonlySet<string> = new Set(['hand-started', 'run-down', 'snugged', 'turns-counted', 'pass-torqued'])

/** A count of turns that ended before the head seated is a report, and reports are never stopped. */
export function isTightening(happening: { type: string; body: unknown }): happening is Step {
  return (
    TYPES.has(happening.type) &&
    !(happening.type === 'turns-counted' && !(happening.body as { seated: boolean }).seated)
  )
}

export function tighteningStops(bench: BenchFace, step: Step): Stop[] {
  const { face, hole } = step.body
  const own = bench.holes.find(({ id }) => id === hole)
  const stops: Stop[] = []
  const stop = (gate: StopName, why: Why) => stops.push({ gate, face, hole, why })

  const felt = bench.holes.filter(({ resistance }) => resistance !== undefined)
  if (felt.length > 0) stop('resistance', { code: 'resistance', holes: ids(felt) })

  const planned = step.type === 'pass-torqued' ? plannedPass(bench, step.body) : undefined
  const visit = planned?.visit ?? own?.visit ?? 1
  const early = visitNotComplete(bench, visit)
  if (early !== undefined) stop('pass before', early)

  const together = bench.holes.filter((other) => other.visit === visit)
  const notStarted = together.filter(({ id, reached }) => !reached.started && id !== hole)
  if (step.type === 'hand-started') {
    const locating = notStarted.filter(({ locates }) => locates)
    if (own?.locates !== true && locating.length > 0)
      stop('hand-start', { code: 'locating-first', holes: ids(locating) })
    return stops
  }
  // the bolt itself too: running it down is what hand-starting is for
  const ownNotStarted = own === undefined || !own.reached.started ? [hole] : []
  if (notStarted.length + ownNotStarted.length > 0)
    stop('hand-start', { code: 'not-hand-started', holes: [...ids(notStarted), ...ownNotStarted] })

  if (bench.snug && step.type !== 'run-down' && step.type !== 'turns-counted') {
    const notDown = together.filter(({ reached }) => !reached.down)
    if (notDown.length > 0) stop('pass before', { code: 'not-run-down', holes: ids(notDown) })
  }
  if (step.type === 'pass-torqued') {
    const notSnug = bench.snug ? together.filter(({ reached }) => !reached.snug) : []
    if (notSnug.length > 0) stop('pass before', { code: 'not-snug', holes: ids(notSnug) })
    const before = passNotComplete(bench, visit, planned?.pass ?? step.body.pass)
    if (before !== undefined) stop('pass before', before)
  }
  return stops
}

/** The pass of the order that this one is: a final one is the last that comes to its hole, whatever number it was given. */
function plannedPass(
  bench: BenchFace,
  { hole, pass, final }: BodyOf<'pass-torqued'>,
): { pass: number; visit: number } | undefined {
  if (bench.order === undefined) return undefined
  const own = facePasses(bench.holes, bench.order).filter(({ holes }) => holes.includes(hole))
  const last = own.at(-1)
  if (final && last !== undefined && last.pass > pass) return last
  return own.find((planned) => planned.pass === pass)
}

/** The first pass of the visit before this one that some bolt has not reached. */
function passNotComplete(bench: BenchFace, visit: number, pass: number): Why | undefined {
  const before =
    bench.order === undefined
      ? // how many passes there are before is what the entry says
        [{ pass: pass - 1, holes: bench.holes.filter((hole) => hole.visit === visit).map(({ id }) => id) }]
      : facePasses(bench.holes, bench.order).filter((planned) => planned.visit === visit && planned.pass < pass)
  const holes = new Map(bench.holes.map((hole) => [hole.id, hole]))
  for (const planned of before) {
    const behind = planned.holes.filter((id) => holes.get(id)!.reached.pass < planned.pass)
    if (behind.length > 0) return { code: 'pass-not-complete', pass: planned.pass, holes: behind }
  }
  return undefined
}

/** The first visit before this one that is not complete: a bolt of it lacks its final pass, or the passes of that visit where a later one comes back to it. */
function visitNotComplete(bench: BenchFace, visit: number): Why | undefined {
  const earlier = bench.holes.filter((hole) => hole.visit < visit)
  if (earlier.length === 0) return undefined
  const passes = bench.order === undefined ? [] : facePasses(bench.holes, bench.order)
  const open = earlier.filter((hole) => {
    if (isFinal(hole)) return false
    const own = passes.filter(({ holes }) => holes.includes(hole.id))
    const later = own.some((planned) => planned.visit > hole.visit)
    return (
      !later ||
      !hole.reached.started ||
      own.some((planned) => planned.visit === hole.visit && planned.pass > hole.reached.pass)
    )
  })
  const first = Math.min(...open.map((hole) => hole.visit))
  const holes = open.filter((hole) => hole.visit === first)
  return holes.length === 0 ? undefined : { code: 'visit-not-complete', visit: first, holes: ids(holes) }
}

function ids(holes: readonly BenchHole[]): string[] {
  return holes.map(({ id }) => id)
}
