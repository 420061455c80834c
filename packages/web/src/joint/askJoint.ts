/** The joint of one hole as the engine's torque check wants it, from what the record knows. */
import {
  add,
  bearingRing,
  boltClass,
  type Face,
  frictionOf,
  type Hole,
  type Interval,
  intervalOf,
  type JointWanted,
  type Kind,
  parentMaterial,
  type Quantity,
  readThread,
  type Washer,
} from '@gripbook/engine'

export type JointAsked =
  | { can: true; wanted: JointWanted; stated: Quantity }
  | { can: false; lacks: 'torque' | 'thread' }

/**
 * Torque of the hole, else of the face; the thread that hole and kind share; the kind's class and head, else what the engine assumes for none;
 * engagement from the readings of hole and bolt where they bound it. Friction is unknown, so its whole range is counted.
 */
export function askJoint(face: Face, hole: Hole, kind: Kind | undefined): JointAsked {
  const stated = hole.torque ?? face.torque
  if (stated === undefined) return { can: false, lacks: 'torque' }
  const threads = [hole.thread].flat()
  const shared = kind === undefined ? threads : threads.filter((name) => [kind.thread].flat().includes(name))
  const read = shared.length === 1 ? readThread(shared[0]!) : undefined
  if (read === undefined || !read.ok) return { can: false, lacks: 'thread' }
  const thread = read.value
  const flats = kind?.head?.acrossFlats === undefined ? undefined : intervalOf(kind.head.acrossFlats)
  const ring =
    bearingRing(thread, {
      ...(kind?.head === undefined ? {} : { form: kind.head.form }),
      ...(flats === undefined ? {} : { acrossFlats: (flats.lo + flats.hi) / 2 }),
    }) ?? bearingRing(thread)
  const strength = boltClass(kind?.class, thread) ?? boltClass(undefined, thread)
  if (ring === undefined || strength === undefined) return { can: false, lacks: 'thread' }
  const parent = parentMaterial(hole.material ?? face.material)
  const engagement = kind === undefined ? undefined : engagementIn(face, hole, kind, thread.pitch)
  return {
    can: true,
    stated,
    wanted: {
      thread,
      strength,
      ring,
      friction: frictionOf('unknown'),
      torque: intervalOf(stated, 'torque'),
      ...(parent === undefined ? {} : { parent, seat: parent }),
      ...(parent === undefined || engagement === undefined ? {} : { engagement }),
    },
  }
}

/**
 * Full thread in full thread, mm: the least of the four ways in which the overlap can end (docs/unit-file.md, "What fits means"), each as an
 * interval. Undefined where the readings leave it without a greatest value.
 */
export function engagementIn(face: Face, hole: Hole, kind: Kind, pitch: number): Interval | undefined {
  const zero: Interval = { lo: 0, hi: 0 }
  const or = (quantity: Quantity | undefined, fallback: Interval) =>
    quantity === undefined ? fallback : intervalOf(quantity)
  const gasket = or(hole.gasket ?? face.gasket, zero)
  const stack = [intervalOf(hole.grip), or(hole.bracket, zero), gasket, washerOf(kind.washer)].reduce(add)
  const length = intervalOf(kind.length)
  const stickOut = less(length, stack)
  const mouth = or(hole.mouth, zero)
  const tip = or(kind.tip, { lo: pitch, hi: 2 * pitch })
  const own = kind.threadLength === undefined ? less(length, { lo: 0, hi: 2.5 * pitch }) : intervalOf(kind.threadLength)
  const depth = intervalOf(hole.threadDepth)
  const ways = [less(stickOut, add(tip, mouth)), less(own, tip), depth, add(less(add(mouth, depth), stickOut), own)]
  const lo = Math.max(0, Math.min(...ways.map((way) => way.lo)))
  const hi = Math.min(...ways.map((way) => way.hi))
  return Number.isFinite(hi) && hi > 0 && lo > 0 ? { lo, hi } : undefined
}

/** Every difference of a value of the one and a value of the other. Infinity less Infinity is unknown. */
function less(a: Interval, b: Interval): Interval {
  const lo = a.lo - b.hi
  const hi = a.hi - b.lo
  return { lo: Number.isNaN(lo) ? Number.NEGATIVE_INFINITY : lo, hi: Number.isNaN(hi) ? Number.POSITIVE_INFINITY : hi }
}

function washerOf(washer: Washer | undefined): Interval {
  if (washer === undefined) return { lo: 0, hi: 0 }
  return intervalOf(typeof washer === 'object' && 'thickness' in washer ? washer.thickness : washer)
}
