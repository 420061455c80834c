import { type Interval, middleOf } from '../quantity/interval.ts'
import { stressArea } from '../threads/stressArea.ts'
import type { Thread } from '../threads/thread.ts'
import type { BoltClass } from './boltClass.ts'
import type { Friction } from './friction.ts'
import type { BearingRing } from './head.ts'
import type { ParentMaterial } from './parentMaterial.ts'
import { assemblyStress } from './preload.ts'
import { stripLoads } from './stripping.ts'
import { type ClampRange, clampFor, clampRange } from './torque.ts'

/** Part of the joint that is loaded. */
export type Loaded =
  | 'bolt to yield'
  | 'bolt to break'
  | 'thread of the hole'
  | 'thread of the bolt'
  | 'seat under the head'

/**
 * How much of what a part holds is used, as a share of 1: at best, at the middle and at worst. Above 1 it gives way.
 * `load` and `limit` are what stands behind it, in `unit`.
 */
export type Utilisation = {
  part: Loaded
  share: Interval & { middle: number }
  load: Interval & { middle: number }
  limit: Interval & { middle: number }
  unit: 'MPa' | 'N'
  source: string
}

/** All that a sum of a joint needs, parsed. Torque is what the bolt gets, N·m; engagement in mm; deviation a share. */
export type JointLoads = {
  thread: Thread
  strength: BoltClass
  ring: BearingRing
  friction: Friction
  torque: Interval
  deviation: number
  parent?: ParentMaterial
  engagement?: Interval
  seat?: ParentMaterial
}

/** Clamp load range of a joint in N. */
export function clampOf({ thread, ring, torque, friction, deviation }: JointLoads): ClampRange {
  return clampRange(thread, ring.friction, torque, friction.mu, deviation)
}

/** Von Mises stress in MPa while tightening: least, middle and most, with friction and wrench at the same end each time. */
export function stressRange(joint: JointLoads): Interval & { middle: number } {
  const { thread, ring, torque, friction, deviation } = joint
  const at = (m: number, mu: number): number => assemblyStress(thread, clampFor(thread, ring.friction, m, mu), mu)
  return {
    lo: at(torque.lo * (1 - deviation), friction.mu.hi),
    middle: at(middleOf(torque), middleOf(friction.mu)),
    hi: at(torque.hi * (1 + deviation), friction.mu.lo),
  }
}

/** Every utilisation that can be worked out from what is known: the bolt always, threads with material and engagement, the seat with its material. */
export function utilisations(joint: JointLoads): Utilisation[] {
  const { strength, thread, parent, engagement, ring, seat } = joint
  const clamp = clampOf(joint)
  const stress = stressRange(joint)
  const list = [
    used(
      'bolt to yield',
      stress,
      one(strength.yield),
      'MPa',
      `von Mises stress in the thread, VDI 2230:2001 and later; minimum yield of ${strength.name}, ${strength.source}`,
    ),
    used(
      'bolt to break',
      stress,
      one(strength.tensile),
      'MPa',
      `the same stress; minimum tensile strength of ${strength.name}, ${strength.source}`,
    ),
  ]
  if (parent && engagement) {
    const { hole, bolt } = stripLoads(thread, engagement, parent.shear, strength)
    list.push(
      used(
        'thread of the hole',
        clamp,
        hole,
        'N',
        `FED-STD-H28/2B shear areas at the limits of size; shear strength of ${parent.name}: ${parent.sources.shear}`,
      ),
      used(
        'thread of the bolt',
        clamp,
        bolt,
        'N',
        'FED-STD-H28/2B shear areas at the limits of size; shear strength 0.6 to 0.75 of the tensile strength',
      ),
    )
  }
  if (seat) {
    const pressure = { lo: clamp.lo / ring.area, middle: clamp.middle / ring.area, hi: clamp.hi / ring.area }
    list.push(
      used(
        'seat under the head',
        pressure,
        seat.seatPressure,
        'MPa',
        `limiting pressure on ${seat.name}: ${seat.sources.seat}`,
      ),
    )
  }
  return list
}

/** Clamp load in N at which the bolt breaks in plain tension, by its class minimum. */
export function breakingLoad({ thread, strength }: JointLoads): number {
  return stressArea(thread) * strength.tensile
}

/**
 * The friction below which the stated torque, wrench at its mark, takes the bolt past `limit` MPa: null when it does so over the whole range,
 * undefined when nowhere in it.
 */
export function slipperyBelow(joint: JointLoads, limit: number): number | null | undefined {
  const { thread, ring, torque, friction } = joint
  const over = (mu: number): boolean =>
    assemblyStress(thread, clampFor(thread, ring.friction, middleOf(torque), mu), mu) >= limit
  if (over(friction.mu.hi)) return null
  if (!over(friction.mu.lo)) return undefined
  let { lo, hi } = friction.mu
  for (let i = 0; i < 40; i++) {
    const mu = (lo + hi) / 2
    if (over(mu)) lo = mu
    else hi = mu
  }
  return (lo + hi) / 2
}

function one(limit: number): Interval {
  return { lo: limit, hi: limit }
}

function used(
  part: Loaded,
  load: Utilisation['load'],
  limit: Interval,
  unit: Utilisation['unit'],
  source: string,
): Utilisation {
  const middle = middleOf(limit)
  return {
    part,
    share: { lo: load.lo / limit.hi, middle: load.middle / middle, hi: load.hi / limit.lo },
    load: { lo: load.lo, middle: load.middle, hi: load.hi },
    limit: { lo: limit.lo, middle, hi: limit.hi },
    unit,
    source,
  }
}
