import type { Interval } from '../quantity/interval.ts'

/** What decides how far a bolt turns, all mm. */
export type TurnsWanted = {
  pitch: number
  /** Bolt length past the joint face. */
  stickOut: Interval
  /** Depth of the counterbore or chamfer before the first full thread. */
  mouth: Interval
  /** Length of the bolt's tip without full thread. */
  tip: Interval
}

/**
 * Turns from the first bite of the thread until the head seats: (stick-out − mouth − lead)/pitch. The lead is what the tip goes in before it bites, anything
 * from none of the tip to all of it. Never below 0.
 */
export function turnsToSeat({ pitch, stickOut, mouth, tip }: TurnsWanted): Interval {
  return {
    lo: Math.max(0, (stickOut.lo - mouth.hi - tip.hi) / pitch),
    hi: Math.max(0, (stickOut.hi - mouth.lo) / pitch),
  }
}

/** How a bolt came to rest, as the hand feels it. */
export type CameToRest =
  | 'hard stop' // free until a dead stop, head not on its seat
  | 'tight all the way' // resistance from the first turns, growing
  | 'springy' // free, then it gives and pushes back
  | 'head on its seat'

export type StopCause =
  | 'seated'
  | 'bottomed'
  | 'cross-threaded'
  | 'something caught in the joint'
  | 'turns miscounted or reading wrong'

export type StopDiagnosis = { cause: StopCause; why: string }

/** A count of turns by hand is right to half a turn either way: common practice, no source. */
export const TURN_COUNT_DOUBT = 0.5
/** A crossed thread binds within its first turns: common practice, no source. */
const CROSSED_WITHIN = 3

/**
 * Why a bolt stopped, likeliest first, from the turns counted, the turns expected until its head seats (`turnsToSeat`), how it came to rest, and
 * where known the turns after which the tip would meet the bottom. Stop and find out before any wrench goes on.
 */
export function whyStopped(
  counted: number,
  expected: Interval,
  rest: CameToRest,
  toBottom?: Interval,
): StopDiagnosis[] {
  const short = expected.lo - TURN_COUNT_DOUBT - counted
  if (rest === 'head on its seat') {
    if (short > 0)
      return [
        {
          cause: 'turns miscounted or reading wrong',
          why: `the head sits after ${counted} turns, ${say(expected)} were expected: measure grip and length again`,
        },
      ]
    if (counted > expected.hi + TURN_COUNT_DOUBT)
      return [
        {
          cause: 'turns miscounted or reading wrong',
          why: `${counted} turns, at most ${expected.hi.toFixed(1)} expected: longer bolt, thinner grip, or a thread that turns without holding`,
        },
      ]
    return [{ cause: 'seated', why: `${counted} turns, ${say(expected)} expected` }]
  }
  const causes: (StopDiagnosis & { weight: number })[] = [
    {
      cause: 'bottomed',
      why: bottomWhy(counted, toBottom),
      weight: (rest === 'hard stop' ? 2 : 0) + atBottom(counted, toBottom),
    },
    {
      cause: 'cross-threaded',
      why:
        counted <= CROSSED_WITHIN
          ? `it bound within ${CROSSED_WITHIN} turns`
          : `it ran ${counted} turns, a crossed thread binds sooner`,
      weight: (rest === 'tight all the way' ? 2 : 0) + (counted <= CROSSED_WITHIN ? 1.5 : -1),
    },
    {
      cause: 'something caught in the joint',
      why:
        short > 0
          ? `${short.toFixed(1)} turns or more short of its seat: look for a gap between the faces`
          : 'nearly down: look for a gap between the faces, a pinched wire or seal',
      weight: (rest === 'springy' ? 2 : 0) + (short <= 1 ? 0.5 : 0),
    },
  ]
  return causes.sort((a, b) => b.weight - a.weight).map(({ cause, why }) => ({ cause, why }))
}

/** A bottom that is known and elsewhere outweighs even a hard stop. */
function atBottom(counted: number, toBottom: Interval | undefined): number {
  if (!toBottom) return 0
  return counted >= toBottom.lo - TURN_COUNT_DOUBT && counted <= toBottom.hi + TURN_COUNT_DOUBT ? 2 : -3
}

function bottomWhy(counted: number, toBottom: Interval | undefined): string {
  if (!toBottom) return 'too long for this hole, or something lies at its bottom: measure the depth'
  return atBottom(counted, toBottom) > 0
    ? `the tip meets the bottom after ${say(toBottom)} turns`
    : `the bottom is ${say(toBottom)} turns in, it made ${counted}`
}

function say({ lo, hi }: Interval): string {
  return `${lo.toFixed(1)} to ${hi.toFixed(1)}`
}
