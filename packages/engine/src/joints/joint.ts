import { type Interval, middleOf } from '../quantity/interval.ts'
import { socketsFor } from '../threads/heads.ts'
import { withDrag } from './drag.ts'
import { CONDITIONS } from './friction.ts'
import { assemblyPreload, tighteningTorque } from './preload.ts'
import { criticalEngagement, engagementFor } from './stripping.ts'
import type { ClampRange } from './torque.ts'
import { type BookTorque, bookTorque, usualTorque } from './usualTorque.ts'
import { breakingLoad, clampOf, type JointLoads, slipperyBelow, type Utilisation, utilisations } from './utilisation.ts'
import { type JointVerdict, verdictsOn } from './verdict.ts'
import { type Extension, wrenchDeviation, wrenchSetting } from './wrench.ts'

/** A joint and the torque stated for it. `torque` is what is wanted at the bolt, N·m; `drag` in N·m comes on top of it at the wrench. */
export type JointWanted = Omit<JointLoads, 'deviation'> & { deviation?: number; drag?: number; extension?: Extension }

/** The 90 % assembly preload in N and its torque in N·m at both ends and the middle of the friction range. */
export type Target = { mu: number; preload: number; torque: number }

export type JointAnswer = {
  gripbook: 'joint/1'
  thread: string
  /** MPa; `breakingLoad` in N is what the class holds at least in plain tension. */
  class: { name: string; tensile: number; yield: number; breakingLoad: number; source: string; assumed?: string }
  head: { name: string; bearing: number; hole: number; acrossFlats?: number }
  friction: { condition: string; mu: Interval; source: string }
  /** N·m at the bolt, N·m to set on the wrench with drag and extension counted in, and the wrench's deviation as a share. */
  torque: { atBolt: Interval; onWrench: Interval; deviation: number; drag?: number }
  verdicts: JointVerdict[]
  /** Clamp load in N, never one number alone. */
  clamp: ClampRange
  utilisations: Utilisation[]
  /** Usual band in N·m for this thread, class and friction, and what a general table prints. */
  usual: { band: Interval; book?: BookTorque }
  targets: Target[]
  /** mm: engagement that this torque needs, and from which the bolt breaks before the hole strips. Only with a known material. */
  engagement?: { stated?: Interval; needed: Interval; boltBreaksFirst: Interval }
  cautions: string[]
  notChecked: string[]
  sources: string[]
}

export const MANUAL_RULES =
  "The manual's figure rules. These sums check it; they are never permission. Local rules and a licensed professional's judgement come first."

/**
 * What a torque does to a bolt, its thread and its seat: verdicts worst first, clamp load, every utilisation with its range and source. Every
 * figure is a range over friction, the wrench's deviation (ISO 6789 where none is given) and the material.
 * Errors: an extension that reaches the hand leaves the wrench setting at the torque of the bolt and says so in `notChecked`.
 */
export function joint(wanted: JointWanted): JointAnswer {
  const { deviation = wrenchDeviation((wanted.torque.lo + wanted.torque.hi) / 2), drag, extension, ...rest } = wanted
  const loads: JointLoads = { ...rest, deviation }
  const { thread, strength, ring, friction, torque, parent, engagement } = loads
  const parts = utilisations(loads)
  const verdicts = verdictsOn(loads, parts)
  const book = bookTorque(thread, strength.name)
  const clamp = clampOf(loads)
  const setting = (m: number): number => {
    const atBolt = drag === undefined ? m : withDrag(m, drag).setting
    return (extension && wrenchSetting(atBolt, extension)) ?? atBolt
  }
  return {
    gripbook: 'joint/1',
    thread: thread.name,
    class: {
      name: strength.name,
      tensile: strength.tensile,
      yield: strength.yield,
      breakingLoad: breakingLoad(loads),
      source: strength.source,
      ...(strength.assumed === undefined ? {} : { assumed: strength.assumed }),
    },
    head: {
      name: ring.head,
      bearing: ring.outer,
      hole: ring.inner,
      ...(ring.acrossFlats === undefined ? {} : { acrossFlats: ring.acrossFlats }),
    },
    friction: { condition: friction.condition, mu: friction.mu, source: friction.source },
    torque: {
      atBolt: torque,
      onWrench: { lo: setting(torque.lo), hi: setting(torque.hi) },
      deviation,
      ...(drag === undefined ? {} : { drag }),
    },
    verdicts,
    clamp,
    utilisations: parts,
    usual: { band: usualTorque(thread, ring.friction, strength, friction), ...(book ? { book } : {}) },
    targets: [friction.mu.lo, (friction.mu.lo + friction.mu.hi) / 2, friction.mu.hi].map((mu) => ({
      mu,
      preload: assemblyPreload(thread, strength.yield, mu),
      torque: tighteningTorque(thread, ring.friction, strength.yield, mu),
    })),
    ...(parent
      ? {
          engagement: {
            ...(engagement ? { stated: engagement } : {}),
            needed: engagementFor(thread, clamp, parent.shear),
            boltBreaksFirst: criticalEngagement(thread, strength, parent.shear),
          },
        }
      : {}),
    cautions: cautionsFor(loads, parts, verdicts, drag),
    notChecked: notChecked(loads, extension),
    sources: [...new Set([...parts.map(({ source }) => source), friction.source, ...(book ? [book.source] : [])])],
  }
}

function cautionsFor(
  loads: JointLoads,
  parts: readonly Utilisation[],
  verdicts: readonly JointVerdict[],
  drag: number | undefined,
): string[] {
  const { strength, ring, friction, parent, thread, torque } = loads
  const list: string[] = []
  const said = verdicts.map(({ verdict }) => verdict)
  if (strength.assumed !== undefined) list.push(`${strength.assumed}. Read the head mark.`)
  const share = (part: Utilisation['part']): Utilisation['share'] | undefined =>
    parts.find((u) => u.part === part)?.share
  if (!said.includes('would break the bolt') && (share('bolt to break')?.hi ?? 0) >= 1)
    list.push(`With slippery threads${below(loads, strength.tensile)} and the wrench high it could break the bolt.`)
  else if (
    !said.includes('would yield the bolt') &&
    !said.includes('would break the bolt') &&
    (share('bolt to yield')?.hi ?? 0) >= 1
  )
    list.push(
      `With slippery threads${below(loads, strength.yield)} and the wrench high it could stretch the bolt past its minimum yield.`,
    )
  if (!said.includes('would strip the case') && (share('thread of the hole')?.hi ?? 0) >= 1)
    list.push(
      'With the softest material, the loosest threads and slippery friction at once, the thread of the hole could strip.',
    )
  if ((share('thread of the bolt')?.middle ?? 0) >= 1)
    list.push('The thread of the bolt would strip: more engagement is needed.')
  const seat = share('seat under the head')
  if (seat && seat.hi >= 1)
    list.push(
      seat.middle >= 1
        ? 'The seat under the head would give way: clamp load is lost later. A hardened washer or a flange head spreads it.'
        : 'The seat under the head may give way at the high end of the clamp load: check for a sunk head.',
    )
  if (said.some((v) => v === 'would break the bolt' || v === 'would yield the bolt' || v === 'high'))
    list.push(
      'An over-tightened bolt can hold today and fail later: a bolt that has had this torque is replaced, not used again.',
    )
  if (said.includes('not for this size')) list.push(...otherThreads(thread.name, ring.acrossFlats))
  if (
    parent &&
    /aluminium|magnesium/.test(parent.name) &&
    middleOf(torque) > 0.9 * usualTorque(thread, ring.friction, strength, friction).hi
  )
    list.push(
      'A hole in light alloy: US Army practice takes 30 % or more off the table torque and asks for two diameters of thread.',
    )
  if (friction.condition === 'unknown')
    list.push(`Friction not stated: ${CONDITIONS.slice(0, -1).join(', ')} each narrow the range.`)
  if (drag !== undefined && withDrag(middleOf(torque), drag).worthAdding)
    list.push('The drag is a third of the torque or more: find out why it drags before adding it.')
  return list
}

function below(loads: JointLoads, limit: number): string {
  const mu = slipperyBelow(loads, limit)
  return typeof mu === 'number' ? ` (friction below ${mu.toFixed(2)})` : ''
}

/** The same socket fits other threads: the head alone never names the thread. */
function otherThreads(name: string, acrossFlats: number | undefined): string[] {
  if (acrossFlats === undefined) return []
  const others = socketsFor(acrossFlats).filter((head) => head.thread !== name)
  if (others.length === 0) return []
  const list = others.map((head) => `${head.thread} (${head.standard})`).join(', ')
  return [`The same ${acrossFlats} mm socket also fits ${list}: measure diameter and pitch.`]
}

function notChecked({ parent, engagement, seat, ring }: JointLoads, extension: Extension | undefined): string[] {
  const list: string[] = []
  if (!parent) list.push('thread of the hole: its material is not given')
  else if (!engagement) list.push('thread of the hole: its engagement is not given')
  if (!seat) list.push('seat under the head: its material is not given')
  if (ring.head.startsWith('no standard head')) list.push('head: no standard head is known here for this thread')
  if (extension && wrenchSetting(1, extension) === undefined)
    list.push('wrench setting: the extension reaches the hand')
  return list
}
