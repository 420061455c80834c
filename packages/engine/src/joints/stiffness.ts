import { must } from '../must.ts'

/** One conical frustum of the clamped zone under a head. Lengths in mm, Young's modulus in MPa (or any one system). */
export type Frustum = { thickness: number /** Smaller outer diameter. */; outer: number; hole: number; young: number }

const TAN_30 = Math.tan(Math.PI / 6)

/**
 * Stiffness of a frustum with a 30° half angle, force per length of the units given:
 * k = π·E·d·tan α/ln[((2t·tan α + D − d)(D + d))/((2t·tan α + D + d)(D − d))].
 * @source Shigley 9e, equation 8-20 (prints 0.5774 and 1.155)
 */
export function frustumStiffness({ thickness, outer, hole, young }: Frustum): number {
  must(thickness > 0 && outer > hole && hole > 0, 'frustumStiffness: no frustum', { thickness, outer, hole })
  const grown = 2 * thickness * TAN_30
  const log = Math.log(((grown + outer - hole) * (outer + hole)) / ((grown + outer + hole) * (outer - hole)))
  return (Math.PI * young * hole * TAN_30) / log
}

/** Stiffness of springs one after another. */
export function inSeries(...stiffnesses: number[]): number {
  return 1 / stiffnesses.reduce((sum, k) => sum + 1 / k, 0)
}

/** Stiffness of a bar: area·E/length. A bolt is its shank and its thread in series. */
export function barStiffness(area: number, young: number, length: number): number {
  return (area * young) / length
}

/**
 * Clamp load in N that `degrees` of turning after snug should add: F = θ/360·P/(1/kb + 1/km). Pitch in mm, stiffnesses in N/mm. It holds while
 * bolt and parts stay elastic.
 */
export function clampFromAngle(degrees: number, pitch: number, bolt: number, parts: number): number {
  return (degrees / 360) * pitch * inSeries(bolt, parts)
}

/** Degrees to turn after snug for a clamp load in N: the same the other way. */
export function angleForClamp(load: number, pitch: number, bolt: number, parts: number): number {
  return (360 * load) / (pitch * inSeries(bolt, parts))
}
