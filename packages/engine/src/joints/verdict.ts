import type { Interval } from '../quantity/interval.ts'
import { middleOf } from '../quantity/interval.ts'
import { boltClass } from './boltClass.ts'
import { tighteningTorque } from './preload.ts'
import { type UsualSize, usualSizes, usualTorque } from './usualTorque.ts'
import { breakingLoad, type JointLoads, slipperyBelow, type Utilisation } from './utilisation.ts'

export type Verdict =
  | 'would break the bolt'
  | 'would strip the case'
  | 'would yield the bolt'
  | 'not for this size'
  | 'high'
  | 'low'
  | 'in the usual band'

/**
 * One verdict on a stated torque. A part that gives way is judged at the middle of the ranges; `where` says whether it does so over the whole range
 * of friction, wrench and material or only in part of it. `usualFor` names the sizes for which the torque would be usual, nearest first.
 */
export type JointVerdict = {
  verdict: Verdict
  where: 'over the whole range' | 'in part of the range'
  why: string
  usualFor?: UsualSize[]
}

/** How far outside the usual band a torque belongs to another size. Gripbook's own limits. */
const FAR_ABOVE = 1.5
const FAR_BELOW = 1 / 3

/** Verdicts on a stated torque, worst first. Never empty. */
export function verdictsOn(joint: JointLoads, parts: readonly Utilisation[]): JointVerdict[] {
  const size = forSize(joint, parts)
  return [...givesWay(joint, parts), ...(size.length > 0 ? size : inBand(joint, parts))]
}

const at = (parts: readonly Utilisation[], part: Utilisation['part']): Utilisation | undefined =>
  parts.find((u) => u.part === part)

function givesWay(joint: JointLoads, parts: readonly Utilisation[]): JointVerdict[] {
  const list: JointVerdict[] = []
  const broken = at(parts, 'bolt to break')
  const stripped = at(parts, 'thread of the hole')
  const yielded = at(parts, 'bolt to yield')
  const { name, tensile, yield: yieldPoint } = joint.strength
  const breaks = broken !== undefined && broken.share.middle >= 1
  const strips = stripped !== undefined && stripped.share.middle >= 1
  if (broken && breaks)
    list.push({
      verdict: 'would break the bolt',
      where: extent(broken),
      why: `stress ${mpa(broken.load)} against ${Math.round(tensile)} MPa at which ${name} may break${slippery(joint, tensile, 'breaks')}`,
    })
  if (stripped && strips)
    list.push({
      verdict: 'would strip the case',
      where: extent(stripped),
      why: `clamp load ${kilonewtons(stripped.load)} against ${kilonewtons(stripped.limit)} that the hole's thread holds${breaks ? `; the bolt may break from ${kilonewton(breakingLoad(joint))} kN, whichever is weaker goes first` : ''}`,
    })
  // over the whole range broken says yielded too; said again it would only hide the rest
  if (yielded && yielded.share.middle >= 1 && !(broken && breaks && broken.share.lo >= 1))
    list.push({
      verdict: 'would yield the bolt',
      where: extent(yielded),
      why: `stress ${mpa(yielded.load)} against ${Math.round(yieldPoint)} MPa at which ${name} yields${slippery(joint, yieldPoint, 'yields')}`,
    })
  return list
}

function extent({ share }: Utilisation): JointVerdict['where'] {
  return share.lo >= 1 ? 'over the whole range' : 'in part of the range'
}

function forSize(joint: JointLoads, parts: readonly Utilisation[]): JointVerdict[] {
  const { thread, ring, strength, friction, torque } = joint
  const band = usualTorque(thread, ring.friction, strength, friction)
  const m = middleOf(torque)
  const strongest = boltClass(thread.profile === 'metric' ? '12.9' : 'grade 8', thread)
  const beyondAll =
    strongest !== undefined && m > tighteningTorque(thread, ring.friction, strongest.yield, friction.mu.hi)
  const yieldsEverywhere = (at(parts, 'bolt to yield')?.share.lo ?? 0) >= 1
  const above = beyondAll || yieldsEverywhere || m > FAR_ABOVE * band.hi
  const below = m < FAR_BELOW * band.lo
  if (!above && !below) return []
  const usualFor = usualSizes(m, thread, strength.name, friction)
  const size = usualFor[0]
  const other = size
    ? `it is usual for ${size.thread} (${newtonMetres(size.band)})`
    : 'no size in the list has it as usual'
  const classes = beyondAll ? `; no class up to ${strongest.name} carries it on ${thread.name}` : ''
  return [
    {
      verdict: 'not for this size',
      where: 'over the whole range',
      why: `usual for ${thread.name} ${strength.name} is ${newtonMetres(band)}; ${other}${classes}`,
      usualFor,
    },
  ]
}

function inBand(joint: JointLoads, parts: readonly Utilisation[]): JointVerdict[] {
  const { thread, ring, strength, friction, torque } = joint
  const band = usualTorque(thread, ring.friction, strength, friction)
  const m = middleOf(torque)
  const usual = `usual for ${thread.name} ${strength.name} is ${newtonMetres(band)}`
  const share = at(parts, 'bolt to yield')?.share.middle ?? 0
  if (m > band.hi) {
    const why = `${usual}; under middling friction the bolt is at ${percent(share)} of its yield, 90 % is the usual target`
    return [{ verdict: 'high', where: torque.lo > band.hi ? 'over the whole range' : 'in part of the range', why }]
  }
  if (m < band.lo) {
    const where = torque.hi < band.lo ? 'over the whole range' : 'in part of the range'
    return [{ verdict: 'low', where, why: `${usual}; the joint is clamped less than books make it` }]
  }
  const where = torque.lo >= band.lo && torque.hi <= band.hi ? 'over the whole range' : 'in part of the range'
  return [
    {
      verdict: 'in the usual band',
      where,
      why: `${usual}; under middling friction the bolt is at ${percent(share)} of its yield`,
    },
  ]
}

function slippery(joint: JointLoads, limit: number, does: string): string {
  const below = slipperyBelow(joint, limit)
  return typeof below === 'number'
    ? `; it ${does} where friction is below ${below.toFixed(2)}, above that it holds`
    : ''
}

const mpa = ({ lo, hi }: Interval): string => `${Math.round(lo)} to ${Math.round(hi)} MPa`
const kilonewton = (load: number): string => (load / 1000).toFixed(1)
const kilonewtons = ({ lo, hi }: Interval): string => `${kilonewton(lo)} to ${kilonewton(hi)} kN`
const newtonMetres = ({ lo, hi }: Interval): string => `${figure(lo)} to ${figure(hi)} N·m`
const figure = (x: number): string => (x < 100 ? x.toFixed(1) : String(Math.round(x)))
const percent = (share: number): string => `${Math.round(share * 100)} %`
