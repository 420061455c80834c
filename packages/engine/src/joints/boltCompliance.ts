import { must } from '../must.ts'
import { profileOf } from '../threads/profile.ts'
import type { Thread } from '../threads/thread.ts'

/** Young's modulus of a steel bolt, MPa. @source VDI 2230 (from memory) */
const STEEL = 205_000

/** A screw in a tapped hole, thread up to the head. Lengths in mm, moduli in MPa. */
export type TappedScrew = { thread: Thread; clamped: number; youngTapped: number; young?: number }

/**
 * Compliance in mm/N of a hexagon screw in a tapped hole: δS = 0.5·d/(E·AN) + l/(E·A3) + 0.5·d/(E·A3) + 0.33·d/(EM·AN), head, free thread, engaged core and the thread of the hole;
 * AN and A3 the areas of the diameter and of the core.
 * @source VDI 2230 Part 1; ECSS-E-HB-32-23A (factors from memory)
 */
export function screwCompliance({ thread, clamped, youngTapped, young = STEEL }: TappedScrew): number {
  const { diameter } = thread
  const nominal = (Math.PI / 4) * diameter ** 2
  const core = (Math.PI / 4) * profileOf(thread).rootDiameter ** 2
  return (
    (0.5 * diameter) / (young * nominal) +
    (clamped + 0.5 * diameter) / (young * core) +
    (0.33 * diameter) / (youngTapped * nominal)
  )
}

/** The zone under a head. Lengths in mm, modulus in MPa. `outer`: diameter of the part around the hole; absent: as wide as the cone needs. */
export type ClampedZone = { clamped: number; bearing: number; hole: number; young: number; outer?: number }

/**
 * Compliance in mm/N of the cone under a head into a tapped hole (w = 2): δP = 2·ln[(dw + dh)(dw + w·l·tanφ − dh)/((dw − dh)(dw + w·l·tanφ + dh))]/(w·E·π·dh·tanφ),
 * tanφ = 0.348 + 0.013·ln βL + 0.193·ln y, βL = l/dw, y = DA/dw.
 * @source VDI 2230 Part 1 (from memory), for DA ≥ dw + w·l·tanφ
 */
export function zoneCompliance({ clamped, bearing, hole, young, outer }: ClampedZone): number {
  must(bearing > hole && hole > 0 && clamped > 0, 'zoneCompliance: no zone', { bearing, hole, clamped })
  const tangent = (y: number) => Math.max(0.1, 0.348 + 0.013 * Math.log(clamped / bearing) + 0.193 * Math.log(y))
  let tan = tangent((outer ?? bearing + clamped) / bearing)
  // A part as wide as its own cone: the width depends on the angle and the angle on the width.
  if (outer === undefined)
    for (let round = 0; round < 20; round++) tan = tangent((bearing + 2 * clamped * tan) / bearing)
  const end = bearing + 2 * clamped * tan
  const log = Math.log(((bearing + hole) * (end - hole)) / ((bearing - hole) * (end + hole)))
  return (2 * log) / (2 * young * Math.PI * hole * tan)
}

/**
 * Embedment in µm of a bolted joint with axial load: thread, head and each surface between. Roughness Rz in µm.
 * @source VDI 2230 Part 1, guide values (from memory); not meant for screws below M4
 */
export function embedmentOf(roughness: number, interfaces: number): number {
  const row = EMBEDMENT.find(({ below }) => roughness < below) ?? EMBEDMENT[EMBEDMENT.length - 1]!
  return row.thread + row.head + interfaces * row.surface
}

const EMBEDMENT = [
  { below: 10, thread: 3, head: 2.5, surface: 1.5 },
  { below: 40, thread: 3, head: 3, surface: 2 },
  { below: 160, thread: 3, head: 4, surface: 3 },
]
