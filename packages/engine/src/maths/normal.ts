import { must } from '../must.ts'

/**
 * Chance that a standard normal value is at most `z`: Φ(z), right to about 1e-15. Series near the middle, continued fraction in the tails.
 * @source Abramowitz and Stegun, Handbook of Mathematical Functions, 26.2.10 (series) and 26.2.14 (continued fraction)
 */
export function normalBelow(z: number): number {
  must(!Number.isNaN(z), 'normalBelow: not a number')
  const size = Math.abs(z)
  if (size > 40) return z < 0 ? 0 : 1
  const density = Math.exp((-size * size) / 2) / Math.sqrt(2 * Math.PI)
  if (size < 3) {
    let term = size
    let sum = size
    for (let k = 3; Math.abs(term) > sum * 1e-17; k += 2) {
      term *= (size * size) / k
      sum += term
    }
    return z < 0 ? 0.5 - density * sum : 0.5 + density * sum
  }
  let fraction = size
  for (let k = 120; k > 0; k -= 1) fraction = size + k / fraction
  const tail = density / fraction
  return z < 0 ? tail : 1 - tail
}
