/**
 * How large a share of what the readings allow lets a pair fit, with every quantity even over its span and independent of the others.
 * An estimate on fixed points; it weighs what is possible and never decides what is.
 */
import { type HoleSpans, type KindSpans, stackOf } from './problem.ts'
import { NANOMETRES, type Span } from './span.ts'

export type HoleQuantity = 'grip' | 'threadDepth' | 'bottomDepth'
export type ReadQuantity = HoleQuantity | 'length'

const POINTS = 64
/** Fractions of a sequence with little discrepancy: roots of the primes (R. D. Richtmyer, 1951). */
const STEPS = [2, 3, 5, 7, 11, 13, 17, 19, 23].map((prime) => Math.sqrt(prime) % 1)

/** From 0 to 1. `known`: one quantity held at a value, nm. */
export function fitChance(hole: HoleSpans, kind: KindSpans, known?: { quantity: ReadQuantity; value: number }): number {
  const spans = { ...likelySpans(hole), length: lengthPrior(kind) }
  const stack = stackOf(hole)
  const rest: Span = {
    lo: stack.lo - hole.grip.lo,
    hi: stack.hi === Number.POSITIVE_INFINITY ? stack.lo : stack.hi - hole.grip.hi,
  }
  let fits = 0
  for (let i = 0; i < POINTS; i++) {
    const at = (n: number, span: Span) => span.lo + ((0.5 + (i + 1) * STEPS[n]!) % 1) * (span.hi - span.lo)
    const read = (n: number, quantity: ReadQuantity) =>
      known?.quantity === quantity ? known.value : at(n, spans[quantity])
    const length = read(0, 'length')
    const mouth = at(3, finite(hole.mouth, 0))
    const lastThread = mouth + read(4, 'threadDepth')
    const bottom = Math.max(lastThread, read(5, 'bottomDepth'))
    const stickOut = length - read(1, 'grip') - at(2, finite(rest, 0)) - at(6, finite(kind.washer, 0))
    const fullThread = stickOut - at(7, finite(kind.tip, 0))
    const shank = kind.threadLength
      ? stickOut - Math.min(length, at(8, finite(kind.threadLength, 0)))
      : stickOut - Math.max(0, length - at(8, kind.runOut))
    const need = hole.engagement.lo
    const engaged = Math.min(fullThread, lastThread) - Math.max(shank, mouth) >= need
    const behind = hole.behind?.hi ?? Number.POSITIVE_INFINITY
    const ends = hole.blind ? stickOut <= bottom && fullThread <= lastThread : stickOut <= lastThread + behind
    if (engaged && ends && shank <= mouth) fits++
  }
  return fits / POINTS
}

/** The hole's spans with unknown ends replaced by usual ones, so that points can be laid in them: common practice, no source. */
export function likelySpans(hole: HoleSpans): Record<HoleQuantity, Span> {
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
