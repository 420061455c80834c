import { boltClass } from '../joints/boltClass.ts'
import { screwCompliance, zoneCompliance } from '../joints/boltCompliance.ts'
import { frictionOf } from '../joints/friction.ts'
import { type BearingRing, bearingRing } from '../joints/head.ts'
import { parentMaterial } from '../joints/parentMaterial.ts'
import { assemblyPreload } from '../joints/preload.ts'
import { clampFor } from '../joints/torque.ts'
import { intervalOf, middleOf } from '../quantity/interval.ts'
import type { Quantity } from '../quantity/quantity.ts'
import { readThread } from '../threads/readThread.ts'
import type { Thread } from '../threads/thread.ts'
import type { Face, Hole, Point, Unit } from '../unit.ts'
import type { Assumption } from './answer.ts'
import type { Bolt } from './clamp/tighten.ts'
import { coverOf } from './coverOf.ts'
import { spotAt } from './plate/pieces.ts'
import { ALUMINIUM } from './plate/plate.ts'

/** Friction taken for all bolts alike: it moves all loads together, so it does not change which order is better. */
const FRICTION = middleOf(frictionOf('oiled').mu)
/** Class of a bolt of which nothing is known. @source common practice, no source */
const USUAL_CLASS = '8.8'
/** N, where not even the thread is known. */
const UNIT_LOAD = 1000

/** The bolts of a face with full loads, compliance and visits, and what had to be assumed. The face must have been checked (`coverFaults`). */
export function boltsOf(unit: Unit, face: Face): { bolts: Bolt[]; assumed: Assumption[] } {
  const computed: string[] = []
  const byTorque: string[] = []
  const byUsual: string[] = []
  let unitLoad = false
  const bolts = face.holes.map((hole) => {
    const seat = seatOf(unit, face, hole)
    const stated = hole.boltStiffness ?? face.boltStiffness
    if (stated === undefined) computed.push(hole.id)
    const torque = hole.torque ?? face.torque
    const load = face.clamp ?? (torque && seat ? fromTorque(seat, torque) : undefined)
    if (load !== undefined && face.clamp === undefined) byTorque.push(hole.id)
    if (load === undefined && seat) byUsual.push(hole.id)
    if (load === undefined && !seat) unitLoad = true
    return {
      target: load ?? (seat ? usualLoad(seat) : UNIT_LOAD),
      compliance: stated === undefined ? complianceOf(face, hole, seat) : 1 / stated,
      visit: hole.visit ?? 1,
    }
  })
  const assumed: Assumption[] = []
  if (computed.length > 0) assumed.push({ what: 'bolt stiffness', holes: computed })
  if (byTorque.length > 0) assumed.push({ what: 'torque', holes: byTorque })
  if (byUsual.length > 0) assumed.push({ what: 'usual torque', holes: byUsual })
  if (unitLoad) assumed.push({ what: 'unit load' })
  // one load for all, or none is comparable with the rest
  return { bolts: unitLoad ? bolts.map((bolt) => ({ ...bolt, target: UNIT_LOAD })) : bolts, assumed }
}

type Seat = { thread: Thread; ring: BearingRing; className: string }

/** Thread and head of the bolt in a hole, as far as the tray tells: the first kind with its thread. */
function seatOf(unit: Unit, face: Face, hole: Hole): Seat | undefined {
  const names = [hole.thread].flat()
  const read = readThread(names[0]!)
  if (!read.ok) return undefined
  const kinds = [...(face.kinds ?? []), ...(unit.kinds ?? [])]
  const kind = kinds.find(({ thread }) => [thread].flat().some((name) => names.includes(name)))
  const flats = kind?.head?.acrossFlats
  const ring =
    (kind?.head &&
      bearingRing(read.value, {
        form: kind.head.form,
        ...(flats === undefined ? {} : { acrossFlats: middleOf(intervalOf(flats)) }),
      })) ??
    bearingRing(read.value)
  return ring && { thread: read.value, ring, className: kind?.class ?? USUAL_CLASS }
}

function fromTorque({ thread, ring }: Seat, torque: Quantity): number | undefined {
  const { lo, hi } = intervalOf(torque, 'torque')
  const middle = hi === Number.POSITIVE_INFINITY ? lo : middleOf({ lo, hi })
  return middle > 0 ? clampFor(thread, ring.friction, middle, FRICTION) : undefined
}

function usualLoad({ thread, className }: Seat): number {
  const strength = boltClass(className, thread) ?? boltClass(USUAL_CLASS, thread)
  return strength ? assemblyPreload(thread, strength.yield, FRICTION) : UNIT_LOAD
}

/** Bolt and the zone under its head in series; the plate model has no give through the thickness, so the zone belongs here, once. */
function complianceOf(face: Face, hole: Hole, seat: Seat | undefined): number {
  const cover = coverOf(face)
  const own = spotAt(cover, [], hole.at as Point).thickness || cover.thickness
  const grip = intervalOf(hole.grip)
  const known = grip.hi !== Number.POSITIVE_INFINITY && grip.hi > 0
  const clamped = known ? middleOf(grip) : own
  const young = parentMaterial(hole.material ?? face.material)?.young
  const youngTapped = young ? middleOf(young) : ALUMINIUM.young
  const thread = seat?.thread ?? ({ diameter: 6, pitch: 1, profile: 'metric', name: 'M6' } as Thread)
  const ring = seat?.ring ?? bearingRing(thread)!
  return (
    screwCompliance({ thread, clamped, youngTapped }) +
    zoneCompliance({ clamped, bearing: ring.outer, hole: ring.inner, young: cover.young ?? ALUMINIUM.young })
  )
}
