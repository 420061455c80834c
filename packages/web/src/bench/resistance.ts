/** Resistance felt by hand: what it can be, the likeliest first, for this hole and this bolt. */
import {
  type CameToRest,
  type Interval,
  type Pair,
  type StopCause,
  TURN_COUNT_DOUBT,
  whyStopped,
} from '@gripbook/engine'

/** How it feels, in the hand's own terms. */
export const FEELS = ['stiff from the first turn', 'stiff near the end', 'dead stop', 'springy'] as const
export type Feel = (typeof FEELS)[number]

const RESTS: Record<Feel, CameToRest> = {
  'stiff from the first turn': 'tight all the way',
  'stiff near the end': 'hard stop',
  'dead stop': 'hard stop',
  springy: 'springy',
}

export type Cause = 'crossed' | 'bottomed' | 'caught' | 'wrong bolt' | 'reading'

export type Likely = { cause: Cause; why: string | null }

const CAUSES: Record<StopCause, Cause | null> = {
  seated: null,
  bottomed: 'bottomed',
  'cross-threaded': 'crossed',
  'something caught in the joint': 'caught',
  'turns miscounted or reading wrong': 'reading',
}

/** Where the turns are not known: what the feel alone says a hand has done (common practice, no source). */
const ASSUMED_TURNS: Record<Feel, (expected: Interval) => number> = {
  'stiff from the first turn': () => 1,
  'stiff near the end': ({ lo }) => Math.max(0, lo - 1),
  'dead stop': ({ lo }) => Math.max(0, lo - 2),
  springy: ({ lo }) => Math.max(0, lo - 1),
}

/** Nothing is known of the turns: between a short and a long engagement (common practice, no source). */
const USUAL: Interval = { lo: 6, hi: 14 }

/**
 * What it can be. `turns`: as counted, null where nobody counted; `pair`: the bolt in this hole as the placement has it, null where that is not known. A
 * bolt that cannot belong here leads, whatever it felt like. `why` is the engine's own sentence where it rests on a count or a reading.
 */
export function likelyCauses(feel: Feel, turns: number | null, pair: Pair | null): Likely[] {
  const known = pair?.turns === undefined ? null : { lo: pair.turns[0], hi: pair.turns[1] }
  const counted = turns ?? ASSUMED_TURNS[feel](known ?? USUAL)
  const found = whyStopped(counted, known ?? USUAL, RESTS[feel]).flatMap(({ cause, why }): Likely[] => {
    const mine = CAUSES[cause]
    return mine === null ? [] : [{ cause: mine, why: turns === null || known === null ? null : why }]
  })
  const causes = bottomFirst(found, pair) ? lead(found, 'bottomed') : found
  if (pair?.verdict !== 'cannot') return causes
  return [{ cause: 'wrong bolt', why: pair.why }, ...causes]
}

/** A tip that is near the bottom by the readings makes "too long" the first thing to look at. */
function bottomFirst(found: readonly Likely[], pair: Pair | null): boolean {
  if (pair === null || found[0]?.cause === 'crossed') return false
  return pair.close?.includes('tip near the bottom') === true || (pair.verdict === 'may' && pair.line === 'bottom')
}

function lead(found: readonly Likely[], cause: Cause): Likely[] {
  return [...found.filter((one) => one.cause === cause), ...found.filter((one) => one.cause !== cause)]
}

/** How a count of turns with the head on its seat compares to what was to be expected; null where nothing is known or it is as expected. */
export function countOff(counted: number, pair: Pair | null): 'fewer' | 'more' | null {
  if (pair?.turns === undefined) return null
  const [lo, hi] = pair.turns
  if (counted < lo - TURN_COUNT_DOUBT) return 'fewer'
  return counted > hi + TURN_COUNT_DOUBT ? 'more' : null
}

/** The feel and the turns of a resistance that was entered, from its own words. */
export function feelOf(text: string): Feel | null {
  return FEELS.find((feel) => feel === text) ?? null
}
