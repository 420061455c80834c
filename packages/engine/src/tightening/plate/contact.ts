/**
 * The cover on a bed that pushes and never pulls. Where the cover would lift, the bed lets go; which points touch is found by trying: the loads give a sink, the sink says
 * which points touch, until nothing changes any more (a Newton's method for a convex energy).
 */
import { factoredIfDefinite, type Skyline } from '../../maths/skyline.ts'
import { must } from '../../must.ts'
import type { Cover, Point } from '../../unit.ts'
import { type Condensed, complianceFrom, responseTo, type Seating } from './condense.ts'
import { boxOf } from './outline.ts'
import { onBed, type Plate, plateOf, REACH } from './plate.ts'

/** What stands at the places for a compliance: loads in N, from whatever holds the places down. */
export type Holding = (compliance: readonly number[][]) => Float64Array

export type Lying = {
  loads: Float64Array
  /** Sink of each unknown of the plate, mm. */
  field: Float64Array
  /** Sink at each place, mm. */
  sinks: Float64Array
  compliance: readonly number[][]
}

export type CoverOnBed = {
  plate: Plate
  /** How the cover lies under what holds it. What touched last time is the first guess of the next. */
  lie: (holding: Holding) => Lying
}

/** Force that may stand at points of the wrong state, as a share of all load: below it nothing that is printed changes. */
const LEAST_HOLD = 1e-9
const SLACK = 3e-4
const ROUNDS = 60
const MOST_UNKNOWNS = 700

/**
 * A cover on its one-sided bed, held at places. Lengths in mm, stiffness in N/mm³. Where the bed lets go is found on a grid no finer than needed for that; `fine` is the compliance of
 * the whole bed on a finer one, and what the coarse grid is too stiff by is added to it.
 */
export function coverOnBed(cover: Cover, bed: Seating, points: readonly Point[], fine?: Condensed): CoverOnBed {
  const plate = plateOf(cover, bed.hollows, Math.max(fine?.grid ?? 0, contactStep(cover)))
  let touching: Uint8Array = new Uint8Array(plate.seat.count).fill(1)
  let bent = bend(touching)
  const missing = fine?.compliance.map((row, i) => row.map((c, j) => c - bent.compliance[i]![j]!))
  if (missing !== undefined) bent.compliance = added(bent.compliance, missing)

  function bend(touches: Uint8Array) {
    const factor = heldFirmly(plate, bed.stiffness, touches)
    const responses = points.map((at) => responseTo(plate, factor, at))
    return { responses, compliance: complianceFrom(plate, responses, points) }
  }

  return {
    plate,
    lie(holding) {
      for (let round = 0; ; round++) {
        const loads = holding(bent.compliance)
        const field = new Float64Array(plate.size)
        loads.forEach((load, j) => {
          const response = bent.responses[j]!
          if (load !== 0) for (let k = 0; k < field.length; k++) field[k]! += load * response[k]!
        })
        const { wrong, touches } = touchedBy(plate, field, touching)
        const all = loads.reduce((sum, load) => sum + load, 0)
        if (wrong * bed.stiffness <= SLACK * all || round === ROUNDS) {
          const sinks = Float64Array.from(points, (_, i) =>
            loads.reduce((sum, load, j) => sum + bent.compliance[i]![j]! * load, 0),
          )
          return { loads, field, sinks, compliance: bent.compliance }
        }
        touching = touches
        bent = bend(touching)
        if (missing !== undefined) bent.compliance = added(bent.compliance, missing)
      }
    },
  }
}

/**
 * The factor of a plate that may touch at next to nothing: a block pressed down at its very edge, whose other end lifts. Beside its own stiffness a billionth of the bed can be lost in
 * rounding; then it is held by as much more as it takes to be told from nothing.
 */
function heldFirmly(plate: Plate, stiffness: number, touches: Uint8Array): Skyline {
  for (let hold = LEAST_HOLD; ; hold *= 10) {
    const factor = factoredIfDefinite(onBed(plate, stiffness, touches, hold))
    if (factor !== null) return factor
    must(hold < 1, 'coverOnBed: the cover cannot be told from a block, coverFaults should have said so', { stiffness })
  }
}

const added = (a: number[][], b: number[][]): number[][] => a.map((row, i) => row.map((c, j) => c + b[i]![j]!))

/** The finest step whose grid has at most `MOST_UNKNOWNS` unknowns, mm. */
function contactStep(cover: Cover): number {
  const { left, right, low, high } = boxOf(cover.outline)
  const [width, height] = [right - left, high - low]
  // (width/s + 3)·(height/s + 3) = most, solved for s.
  const most = MOST_UNKNOWNS - 9
  const half = (3 * (width + height)) / (2 * most)
  return half + Math.sqrt(half ** 2 + (width * height) / most)
}

/** Sink at every point of the seat, mm. */
export function sinksOnSeat({ seat }: Plate, field: Float64Array): Float64Array {
  const sinks = new Float64Array(seat.count)
  for (let q = 0; q < seat.count; q++) {
    const [cell, shape] = [seat.cell[q]!, seat.shape[q]!]
    let sum = 0
    for (let a = 0; a < REACH; a++) sum += seat.shapes[shape + a]! * field[seat.unknowns[cell + a]!]!
    sinks[q] = sum
  }
  return sinks
}

/** Which points touch under a sink, and how much sink times area stands at those that were counted wrongly, mm³. */
function touchedBy(plate: Plate, field: Float64Array, before: Uint8Array): { wrong: number; touches: Uint8Array } {
  const sinks = sinksOnSeat(plate, field)
  const touches = new Uint8Array(sinks.length)
  let wrong = 0
  for (let q = 0; q < sinks.length; q++) {
    touches[q] = sinks[q]! >= 0 ? 1 : 0
    if (touches[q] !== before[q]) wrong += Math.abs(sinks[q]!) * plate.seat.area[q]!
  }
  return { wrong, touches }
}
