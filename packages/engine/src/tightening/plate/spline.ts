/** Uniform cubic B-splines: four pieces reach into each cell; t runs from 0 to 1 in it, derivatives are by t. */

export function splineValues(t: number, out: Float64Array): Float64Array {
  const s = 1 - t
  out[0] = (s * s * s) / 6
  out[1] = (3 * t * t * t - 6 * t * t + 4) / 6
  out[2] = (3 * s * s * s - 6 * s * s + 4) / 6
  out[3] = (t * t * t) / 6
  return out
}

export function splineSlopes(t: number, out: Float64Array): Float64Array {
  const s = 1 - t
  out[0] = (-s * s) / 2
  out[1] = (3 * t * t - 4 * t) / 2
  out[2] = (-3 * s * s + 4 * s) / 2
  out[3] = (t * t) / 2
  return out
}

export function splineCurvatures(t: number, out: Float64Array): Float64Array {
  out[0] = 1 - t
  out[1] = 3 * t - 2
  out[2] = 1 - 3 * t
  out[3] = t
  return out
}
