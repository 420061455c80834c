/** Noise that is the same on every machine: an integer hash of the place, no clock and no chance. */

/** A number in 0…1 that belongs to one whole place and one seed. */
export function chance(x: number, y: number, seed: number): number {
  let h = Math.imul(x | 0, 374761393) ^ Math.imul(y | 0, 668265263) ^ Math.imul(seed | 0, 2147483647 - 58)
  h = Math.imul(h ^ (h >>> 13), 1274126177)
  h = Math.imul(h ^ (h >>> 16), 2246822519)
  return ((h ^ (h >>> 15)) >>> 0) / 4294967296
}

/** Smooth noise in -1…1 with a grain of one unit. */
export function smooth(x: number, y: number, seed: number): number {
  const ix = Math.floor(x)
  const iy = Math.floor(y)
  const fx = x - ix
  const fy = y - iy
  const u = fx * fx * (3 - 2 * fx)
  const v = fy * fy * (3 - 2 * fy)
  const low = chance(ix, iy, seed) * (1 - u) + chance(ix + 1, iy, seed) * u
  const high = chance(ix, iy + 1, seed) * (1 - u) + chance(ix + 1, iy + 1, seed) * u
  return (low * (1 - v) + high * v) * 2 - 1
}

/** Noise of several grains, each half as large and half as strong as the one before; about -1…1. */
export function layered(x: number, y: number, seed: number, layers: number): number {
  let sum = 0
  let strength = 0.5
  let grain = 1
  for (let layer = 0; layer < layers; layer++) {
    sum += smooth(x * grain + layer * 17.3, y * grain - layer * 9.1, seed + layer) * strength
    strength /= 2
    grain *= 2.03
  }
  return sum
}

/** A row of numbers in 0…1 for one seed, each call gives the next. */
export function row(seed: number): () => number {
  let at = 0
  return () => chance(at++, 7, seed)
}
