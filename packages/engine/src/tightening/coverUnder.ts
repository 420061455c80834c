import type { Read } from '../faults.ts'
import { must } from '../must.ts'
import type { Unit } from '../unit.ts'
import type { CoverMap } from './answer.ts'
import { bowsOf, linesOf } from './bow.ts'
import { bedEnds, coverFaults } from './coverFaults.ts'
import { coverOf } from './coverOf.ts'
import { coverOnBed } from './plate/contact.ts'
import { boxOf } from './plate/outline.ts'
import { spotAt } from './plate/pieces.ts'
import { valueAt } from './plate/plate.ts'

/** Points along the longer side of the map. */
const ALONG = 72

/**
 * How the cover of a face lies under given clamp loads (N, in the order of the holes): pressure on the bed in MPa and gaps in mm over a grid of points, bows of the stated lines. The bed
 * is one-sided, with the middle of its stiffness.
 */
export function coverUnder(unit: Unit, faceId: string, loads: readonly number[]): Read<CoverMap> {
  const index = unit.faces.findIndex(({ id }) => id === faceId)
  const face = unit.faces[index]
  must(face !== undefined, 'coverUnder: there is no such face', { faceId })
  const [fault, ...more] = coverFaults(face, ['faces', index])
  if (fault !== undefined) return { ok: false, faults: [fault, ...more] }
  must(loads.length === face.holes.length, 'coverUnder: one load for each hole', { loads: loads.length })

  const cover = coverOf(face)
  const stiffness = middleStiffness(bedEnds(face))
  const hollows = face.bed?.hollows ?? []
  const lying = coverOnBed(
    cover,
    { stiffness, hollows },
    face.holes.map(({ at }) => at!),
  )
  const { field } = lying.lie(() => Float64Array.from(loads))
  const { left, right, low, high } = boxOf(cover.outline)
  const step = Math.max(right - left, high - low) / ALONG
  const [columns, rows] = [Math.max(1, Math.round((right - left) / step)), Math.max(1, Math.round((high - low) / step))]
  const from: [number, number] = [(left + right - (columns - 1) * step) / 2, (low + high - (rows - 1) * step) / 2]
  const pressure: (number | null)[] = []
  const gap: (number | null)[] = []
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++) {
      const at: [number, number] = [from[0] + column * step, from[1] + row * step]
      const { thickness, seated } = spotAt(cover, hollows, at)
      const sink = thickness > 0 && seated ? valueAt(lying.plate, field, at) : null
      pressure.push(sink === null ? null : Math.max(0, sink) * stiffness)
      gap.push(sink === null ? null : Math.max(0, -sink))
    }
  return {
    ok: true,
    value: { from, step, columns, rows, pressure, gap, bows: bowsOf(linesOf(face), lying.plate, field).bows },
  }
}

/** The middle of a bed's range, by ratio: half as stiff and twice as stiff lie equally far. */
export function middleStiffness({ lo, hi }: { lo: number; hi: number }): number {
  return Math.sqrt(lo * hi)
}
