/** The sentences of the placement answer, in the trade's words. Figures in mm. */
import type { Line, Statement } from './answer.ts'
import type { FitLine, Judged } from './pair.ts'
import type { HoleSpans, KindSpans } from './problem.ts'
import { inMillimetres, type Span } from './span.ts'

/** A length as a person reads it: "3.2", "12", "0.05"; no more than two decimals. */
export function millimetres(nanometres: number): string {
  const text = inMillimetres(nanometres).toFixed(2)
  return text.replace(/\.?0+$/, '')
}

/** "31.8 to 32", or "32" when the ends read the same. */
export function spanWords({ lo, hi }: Span): string {
  if (!Number.isFinite(hi)) return `${millimetres(lo)} or more`
  return millimetres(lo) === millimetres(hi) ? millimetres(lo) : `${millimetres(lo)} to ${millimetres(hi)}`
}

export function pairWords(hole: HoleSpans, kind: KindSpans, judged: Judged): string {
  if (judged.verdict === 'cannot') return cannotWords(hole, kind, judged)
  if (judged.verdict === 'fits') return `fits: ${holdWords(hole, judged)}`
  return `may fit: ${mayWords(hole, judged)}`
}

function cannotWords(hole: HoleSpans, kind: KindSpans, { line, best }: Judged): string {
  const by = millimetres(Math.abs(best ?? 0))
  const needed = millimetres(hole.engagement.lo)
  const short = millimetres(Math.max(0, hole.engagement.lo + (best ?? 0)))
  const words: Record<Line, string> = {
    thread: `thread ${kind.threads.map(({ name }) => name).join(' or ')} does not go into ${hole.threads.map(({ name }) => name).join(' or ')}`,
    feature: `the hole needs ${hole.needs.filter((need) => !kind.features.includes(need)).join(' and ')}`,
    engagement: `too short: only ${short} mm of thread at best, ${needed} needed`,
    'bolt thread': `the bolt has only ${short} mm of full thread, ${needed} needed`,
    'hole thread': `the hole has only ${short} mm of full thread, ${needed} needed`,
    bottom: `bottoms out: the tip meets the bottom ${by} mm before the head seats`,
    'run-out': `full thread runs ${by} mm into the unfinished thread at the bottom of the hole`,
    behind: `stands ${by} mm too far out behind the hole`,
    shank: `shank jams: the unthreaded part reaches ${by} mm into the hole's thread`,
    hole: `the hole's own figures contradict each other by ${by} mm`,
    kind: `the kind's own figures contradict each other by ${by} mm`,
    together: `no values of the readings keep all lines of a fit at once: ${by} mm are missing`,
  }
  return words[line]
}

const HOLDS: Record<FitLine['line'], (mm: string) => string> = {
  engagement: (mm) => `${mm} mm more thread than needed`,
  'bolt thread': (mm) => `the bolt's own thread is ${mm} mm longer than needed`,
  'hole thread': (mm) => `the hole's thread is ${mm} mm deeper than needed`,
  bottom: (mm) => `the tip stays ${mm} mm off the bottom`,
  'run-out': (mm) => `full thread ends ${mm} mm before the hole's does`,
  behind: (mm) => `stands out behind with ${mm} mm to spare`,
  shank: (mm) => `the shank ends ${mm} mm before the hole's thread`,
}

const FAILS: Record<FitLine['line'], string> = {
  engagement: 'too little thread',
  'bolt thread': 'too little thread on the bolt',
  'hole thread': 'too little thread in the hole',
  bottom: 'the tip may meet the bottom',
  'run-out': 'full thread may run into the unfinished thread at the bottom',
  behind: 'may stand too far out behind',
  shank: 'the shank may jam in the thread',
}

function holdWords(hole: HoleSpans, { line, worst }: Judged): string {
  if (worst === 0 && line === 'engagement')
    return `just the ${millimetres(hole.engagement.hi)} mm of thread that it needs, at worst`
  return `${HOLDS[line as FitLine['line']](millimetres(worst ?? 0))}, at worst`
}

function mayWords(hole: HoleSpans, { line, worst, best }: Judged): string {
  const fails = FAILS[line as FitLine['line']]
  const atWorst = Number.isFinite(worst) ? `${millimetres(Math.abs(worst!))} mm short at worst` : 'not known at worst'
  const atBest = Number.isFinite(best) ? `${millimetres(best!)} mm to spare at best` : 'ample at best'
  if (line === 'engagement') return `${fails} by ${atWorst}, ${atBest} (${spanWords(hole.engagement)} needed)`
  return `${fails}: ${atWorst}, ${atBest}`
}

const QUANTITIES: Record<string, string> = {
  grip: 'grip',
  bracket: 'bracket thickness',
  gasket: 'gasket thickness',
  mouth: 'mouth depth',
  threadDepth: 'thread depth',
  bottomDepth: 'bottom depth',
  behind: 'room behind',
  minimumEngagement: 'least engagement',
  length: 'length',
  threadLength: 'thread length',
  tip: 'tip length',
  washer: 'washer thickness',
  turns: 'turns',
}

export function quantityWords(quantity: string): string {
  return QUANTITIES[quantity] ?? quantity
}

export function statementWords(statement: Statement): string {
  switch (statement.what) {
    case 'reading':
      return `the ${quantityWords(statement.quantity)} of ${statement.place} ${statement.of}`
    case 'count':
      return `the count of ${statement.of}`
    case 'rank':
      return `"${quantityWords(statement.quantity)} of ${statement.less} is less than of ${statement.more}"`
    case 'trial':
      return `the trial of ${statement.kind} in hole ${statement.hole}`
  }
}

/** "1", "1 and 2", "1, 2 and 3". */
export function list(names: readonly string[], last = 'and'): string {
  if (names.length < 2) return names.join('')
  return `${names.slice(0, -1).join(', ')} ${last} ${names[names.length - 1]}`
}
