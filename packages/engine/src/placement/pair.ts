/**
 * One hole and one kind alone, decided on all lines of a fit together (docs/unit-file.md, "What fits means").
 *
 * Measured from the underside of the head, every line of a fit and every reading says how far two levels may lie apart, at least or at
 * most: X joint face, C first and E last full thread of the hole, F its bottom; L tip, A last full thread at the tip end, B first full
 * thread at the shank end. Such a set of differences holds together exactly when no round trip through it is shorter than 0 (difference
 * constraints; R. Bellman, "On a routing problem", 1958), and shortest paths give every tightest bound.
 */
import type { Line } from './answer.ts'
import { compatible, type HoleSpans, type KindSpans, stackOf, type TrialSpans } from './problem.ts'
import { type Span, sum } from './span.ts'

/** Levels under the head. Z is the underside of the head itself. */
export const Z = 0
export const L = 1
export const A = 2
export const B = 3
const X = 4
const C = 5
const E = 6
const F = 7
const LEVELS = 8

/** bounds[i * n + j]: the most that level i may lie deeper than level j, nm. */
export type Differences = Float64Array

export type FitLine = {
  line: Exclude<Line, 'thread' | 'feature' | 'hole' | 'kind' | 'together'>
  deep: number
  high: number
  most: number
}

/** The lines of a fit in this hole, with the engagement needed in nm: level `deep` may lie at most `most` deeper than level `high`. */
export function fitLines(hole: HoleSpans, engagement: number): FitLine[] {
  const lines: FitLine[] = [
    { line: 'engagement', deep: C, high: A, most: -engagement },
    { line: 'bolt thread', deep: B, high: A, most: -engagement },
    { line: 'hole thread', deep: C, high: E, most: -engagement },
    { line: 'shank', deep: B, high: E, most: -engagement },
    { line: 'shank', deep: B, high: C, most: 0 },
  ]
  if (hole.blind)
    lines.push({ line: 'bottom', deep: L, high: F, most: 0 }, { line: 'run-out', deep: A, high: E, most: 0 })
  else if (hole.behind) lines.push({ line: 'behind', deep: L, high: F, most: 0 })
  return lines
}

export type Judged = {
  verdict: 'fits' | 'may' | 'cannot'
  line: Line
  /** nm by which the deciding line holds or fails, worst and best case; null where no length decides. */
  worst: number | null
  best: number | null
  /** Tightest bounds of all levels from the readings alone; null where the readings contradict each other. */
  readings: Differences | null
}

export function judgePair(hole: HoleSpans, kind: KindSpans, trials: TrialSpans[] = []): Judged {
  const match = compatible(hole, kind)
  if (match !== 'yes') return noFit(match === 'feature' ? 'feature' : 'thread')
  const readings = free(LEVELS)
  const holeGap = readHole(readings, hole, kind.washer)
  if (holeGap < 0) return noFit('hole', holeGap)
  const kindGap = readKind(readings, kind)
  if (kindGap < 0) return noFit('kind', kindGap)
  for (const trial of trials) readTrial(readings, trial)
  const trialGap = close(readings, LEVELS)
  if (trialGap < 0) return noFit('together', trialGap)

  const hard = fitLines(hole, hole.engagement.hi)
  const slack = (line: FitLine) => line.most - readings[line.deep * LEVELS + line.high]!
  const worst = hard.reduce((a, b) => (slack(b) < slack(a) ? b : a))
  const easy = fitLines(hole, hole.engagement.lo)
  const room = (line: FitLine) => line.most + readings[line.high * LEVELS + line.deep]!
  if (slack(worst) >= 0) return { verdict: 'fits', line: worst.line, worst: slack(worst), best: room(worst), readings }
  const tightest = easy.reduce((a, b) => (room(b) < room(a) ? b : a))
  if (room(tightest) < 0)
    return { verdict: 'cannot', line: tightest.line, worst: slack(tightest), best: room(tightest), readings }
  const all = readings.slice()
  for (const line of easy) narrow(all, LEVELS, line.deep, line.high, line.most)
  const gap = close(all, LEVELS)
  if (gap < 0) return { verdict: 'cannot', line: 'together', worst: gap, best: gap, readings }
  const atBest = easy[hard.indexOf(worst)]!
  return { verdict: 'may', line: worst.line, worst: slack(worst), best: room(atBest), readings }
}

function noFit(line: Line, gap: number | null = null): Judged {
  return { verdict: 'cannot', line, worst: gap, best: gap, readings: null }
}

/** Every value of all readings together: level `deep` lies at least and at most so far below `high`, nm. */
export function depthBetween(readings: Differences, deep: number, high: number): Span {
  return { lo: -readings[high * LEVELS + deep]!, hi: readings[deep * LEVELS + high]! }
}

/** Stick-out, engagement with the hole's thread from its mouth, and tip to bottom, nm. */
export function sectionOf(readings: Differences): { stickOut: Span; engaged: Span; toBottom: Span } {
  return {
    stickOut: depthBetween(readings, L, X),
    engaged: depthBetween(readings, A, C),
    toBottom: depthBetween(readings, F, L),
  }
}

/** Size of the kind's own levels: Z, L, A, B. */
export const KIND_LEVELS = 4

/** What a kind's own readings say of its levels, measured from the face of its washer. */
export function kindLevels(kind: KindSpans): Differences {
  const own = free(KIND_LEVELS)
  const washer = kind.washer
  between(own, KIND_LEVELS, L, Z, { lo: kind.length.lo - washer.hi, hi: kind.length.hi - washer.lo })
  between(own, KIND_LEVELS, L, A, kind.tip)
  if (kind.threadLength) {
    between(own, KIND_LEVELS, L, B, kind.threadLength)
    // The thread is no longer than the bolt: B lies at or below the underside of the head, which is the washer's thickness above Z.
    narrow(own, KIND_LEVELS, Z, B, washer.hi)
    narrow(own, KIND_LEVELS, L, B, kind.length.hi)
  } else {
    between(own, KIND_LEVELS, B, Z, { lo: kind.runOut.lo - washer.hi, hi: kind.runOut.hi - washer.lo })
    between(own, KIND_LEVELS, L, B, {
      lo: Math.max(0, kind.length.lo - kind.runOut.hi),
      hi: kind.length.hi - kind.runOut.lo,
    })
  }
  return own
}

/** What filling the hole with a bolt asks of that bolt's levels (Z, L, A, B), measured from the face of its washer. null: never possible. */
export function demandOf(hole: HoleSpans): Differences | null {
  const all = free(LEVELS)
  if (readHole(all, hole, { lo: 0, hi: 0 }) < 0) return null
  for (const line of fitLines(hole, hole.engagement.lo)) narrow(all, LEVELS, line.deep, line.high, line.most)
  if (close(all, LEVELS) < 0) return null
  const demand = free(KIND_LEVELS)
  for (let i = 0; i < KIND_LEVELS; i++)
    for (let j = 0; j < KIND_LEVELS; j++) demand[i * KIND_LEVELS + j] = all[i * LEVELS + j]!
  return demand
}

/** Whether one bolt can meet all of the demands at once. */
export function together(...demands: Differences[]): boolean {
  const all = free(KIND_LEVELS)
  for (const demand of demands) for (let i = 0; i < all.length; i++) all[i] = Math.min(all[i]!, demand[i]!)
  return close(all, KIND_LEVELS) >= 0
}

/** The quantities that a bench can read next. */
export type ReadQuantity = 'grip' | 'threadDepth' | 'bottomDepth' | 'length'

/**
 * For each quantity the values, nm, with which the pair can still fit while all others stay within their readings: a reading wholly outside
 * excludes the pair. null when the pair cannot fit at all.
 */
export function fitRanges(hole: HoleSpans, kind: KindSpans): Record<ReadQuantity, Span> | null {
  const all = free(LEVELS)
  if (readHole(all, hole, kind.washer) < 0 || readKind(all, kind) < 0) return null
  for (const line of fitLines(hole, hole.engagement.lo)) narrow(all, LEVELS, line.deep, line.high, line.most)
  if (close(all, LEVELS) < 0) return null
  const rest = sum(hole.bracket, hole.gasket, kind.washer)
  const joint = depthBetween(all, X, Z)
  return {
    grip: { lo: Math.max(hole.grip.lo, joint.lo - rest.hi), hi: Math.min(hole.grip.hi, joint.hi - rest.lo) },
    threadDepth: depthBetween(all, E, C),
    bottomDepth: depthBetween(all, F, X),
    length: depthBetween(all, L, Z),
  }
}

function readHole(all: Differences, hole: HoleSpans, washer: Span): number {
  between(all, LEVELS, X, Z, sum(stackOf(hole), washer))
  between(all, LEVELS, C, X, hole.mouth)
  between(all, LEVELS, E, C, hole.threadDepth)
  if (hole.blind) {
    between(all, LEVELS, F, X, hole.bottomDepth)
    narrow(all, LEVELS, E, F, 0)
  } else if (hole.behind) between(all, LEVELS, F, E, hole.behind)
  return close(all, LEVELS)
}

function readKind(all: Differences, kind: KindSpans): number {
  between(all, LEVELS, L, Z, kind.length)
  between(all, LEVELS, L, A, kind.tip)
  if (kind.threadLength) {
    between(all, LEVELS, L, B, kind.threadLength)
    narrow(all, LEVELS, Z, B, 0)
  } else {
    between(all, LEVELS, B, Z, kind.runOut)
    narrow(all, LEVELS, B, L, 0)
  }
  return close(all, LEVELS)
}

function readTrial(all: Differences, trial: TrialSpans): void {
  if ('stickOut' in trial) between(all, LEVELS, L, X, trial.stickOut)
  else {
    narrow(all, LEVELS, C, L, -trial.pastMouth.lo)
    narrow(all, LEVELS, A, C, trial.pastMouth.hi)
  }
}

function free(n: number): Differences {
  const all = new Float64Array(n * n).fill(Number.POSITIVE_INFINITY)
  for (let i = 0; i < n; i++) all[i * n + i] = 0
  return all
}

function narrow(all: Differences, n: number, deep: number, high: number, most: number): void {
  const i = deep * n + high
  if (most < all[i]!) all[i] = most
}

function between(all: Differences, n: number, deep: number, high: number, span: Span): void {
  narrow(all, n, deep, high, span.hi)
  narrow(all, n, high, deep, -span.lo)
}

/** Makes every bound the tightest (R. W. Floyd, 1962). Below 0: the bounds clash, by that many nm on the shortest round trip. */
function close(all: Differences, n: number): number {
  for (let m = 0; m < n; m++)
    for (let i = 0; i < n; i++) {
      const first = all[i * n + m]!
      if (first === Number.POSITIVE_INFINITY) continue
      for (let j = 0; j < n; j++) {
        const through = first + all[m * n + j]!
        if (through < all[i * n + j]!) all[i * n + j] = through
      }
      if (all[i * n + i]! < 0) return all[i * n + i]!
    }
  return 0
}
