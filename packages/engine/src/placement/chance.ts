/**
 * How large a share of what the readings allow lets a pair fit, with every quantity even over its span and independent of the others.
 * An estimate on fixed points; it weighs what is possible and never decides what is.
 */
import type { ReadQuantity } from './pair.ts'
import type { HoleSpans, KindSpans } from './problem.ts'
import { NANOMETRES, type Span, sum } from './span.ts'

const POINTS = 64
/** Fractions of a sequence with little discrepancy: roots of the primes (R. D. Richtmyer, 1951). */
const STEPS = [2, 3, 5, 7, 11, 13, 17, 19, 23].map((prime) => Math.sqrt(prime) % 1)

const FRACTIONS = STEPS.map((step) => Float64Array.from({ length: POINTS }, (_, i) => (0.5 + (i + 1) * step) % 1))

/** From 0 to 1. */
export function fitChance(hole: HoleSpans, kind: KindSpans): number {
  return shareOf(hole, kind, spansOf(hole, kind))
}

const QUANTITIES: ReadQuantity[] = ['length', 'grip', 'threadDepth', 'bottomDepth']

/** The quantities, then what else a fit hangs on, in the order in which `fitsAt` takes them. */
function spansOf(hole: HoleSpans, kind: KindSpans): Span[] {
  const likely = { ...likelySpans(hole), length: lengthPrior(kind) }
  return [
    ...QUANTITIES.map((quantity) => likely[quantity]),
    restOfStack(hole),
    finite(hole.mouth, 0),
    finite(kind.washer, 0),
    finite(kind.tip, 0),
    kind.threadLength ? finite(kind.threadLength, 0) : kind.runOut,
  ]
}

function shareOf(hole: HoleSpans, kind: KindSpans, spans: Span[]): number {
  let fits = 0
  for (let i = 0; i < POINTS; i++) if (fitsAt(hole, kind, spans, i)) fits++
  return fits / POINTS
}

/** Bracket and gasket. */
function restOfStack({ bracket, gasket }: HoleSpans): Span {
  return finite(sum(bracket, gasket), 0)
}

function fitsAt(hole: HoleSpans, kind: KindSpans, spans: Span[], point: number): boolean {
  const length = valueAt(spans, 0, point)
  const mouth = valueAt(spans, 5, point)
  const lastThread = mouth + valueAt(spans, 2, point)
  const bottom = Math.max(lastThread, valueAt(spans, 3, point))
  const stickOut = length - valueAt(spans, 1, point) - valueAt(spans, 4, point) - valueAt(spans, 6, point)
  const fullThread = stickOut - valueAt(spans, 7, point)
  const last = valueAt(spans, 8, point)
  const shank = stickOut - (kind.threadLength ? Math.min(length, last) : Math.max(0, length - last))
  if (shank > mouth || Math.min(fullThread, lastThread) - Math.max(shank, mouth) < hole.engagement.lo) return false
  if (hole.blind) return stickOut <= bottom && fullThread <= lastThread
  return stickOut <= lastThread + (hole.behind?.hi ?? Number.POSITIVE_INFINITY)
}

function valueAt(spans: Span[], n: number, point: number): number {
  const { lo, hi } = spans[n]!
  return lo + FRACTIONS[n]![point]! * (hi - lo)
}

/** The hole's spans with unknown ends replaced by usual ones, so that points can be laid in them: common practice, no source. */
export function likelySpans(hole: HoleSpans): Record<Exclude<ReadQuantity, 'length'>, Span> {
  const diameter = Math.max(...hole.threads.map((thread) => thread.diameter)) * NANOMETRES
  const threadDepth = finite(hole.threadDepth, 2 * diameter)
  const deepest = finite(hole.mouth, 0).hi + threadDepth.hi
  const bottomDepth = Number.isFinite(hole.bottomDepth.hi)
    ? hole.bottomDepth
    : {
        lo: Math.max(hole.bottomDepth.lo, hole.mouth.lo + threadDepth.lo),
        hi: Math.max(hole.bottomDepth.lo, deepest) + diameter,
      }
  return { grip: finite(hole.grip, 60 * NANOMETRES), threadDepth, bottomDepth }
}

export function lengthPrior(kind: KindSpans): Span {
  return finite(kind.length, 80 * NANOMETRES)
}

function finite(span: Span, width: number): Span {
  return Number.isFinite(span.hi) ? span : { lo: span.lo, hi: span.lo + width }
}
