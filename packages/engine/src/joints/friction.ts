import type { Interval } from '../quantity/interval.ts'

export type Condition = 'dry' | 'oiled' | 'thread sealant' | 'thread-lock' | 'coated' | 'unknown'

/** Coefficient of friction in the thread and under the head, taken as one, with where it comes from. */
export type Friction = { condition: Condition | 'stated'; mu: Interval; source: string }

const RANGES: Readonly<Record<Condition, { mu: Interval; source: string }>> = {
  dry: {
    mu: { lo: 0.14, hi: 0.24 },
    source: 'VDI 2230 friction class C: zinc, black or phosphated, without lubricant',
  },
  oiled: { mu: { lo: 0.08, hi: 0.16 }, source: 'VDI 2230 friction class B: oils, greases, delivered condition' },
  'thread sealant': {
    mu: { lo: 0.08, hi: 0.16 },
    source: 'as oiled while it is wet (common practice, no source); no published figure was found',
  },
  'thread-lock': {
    mu: { lo: 0.1, hi: 0.24 },
    source: 'VDI 2230 friction class C for adhesive-coated; liquid on plain steel lower',
  },
  coated: {
    mu: { lo: 0.1, hi: 0.24 },
    source: 'VDI 2230 friction classes B to C: zinc and zinc-flake with and without lubricant',
  },
  unknown: { mu: { lo: 0.08, hi: 0.2 }, source: 'the whole range for which VDI 2230 tabulates torques, 0.08 to 0.20' },
}

export const CONDITIONS = Object.keys(RANGES) as Condition[]

/** Highest friction that is still plausible for a steel bolt without seizing. @source VDI 2230, upper end of friction class D */
export const HIGHEST_FRICTION = 0.35

/** The friction range of a condition. */
export function frictionOf(condition: Condition): Friction {
  return { condition, ...RANGES[condition] }
}

/** A friction range that the user states, from 0.02 to 0.6; undefined outside of that or with crossed ends. */
export function statedFriction(mu: Interval): Friction | undefined {
  if (!(mu.lo >= 0.02 && mu.lo <= mu.hi && mu.hi <= 0.6)) return undefined
  return { condition: 'stated', mu, source: 'stated by the user' }
}
