import { layered, smooth } from './noise.ts'
import { type Colour, over, paint, type Relief, shade, stain } from './relief.ts'

/** A rubber mat with a pebbled skin, dusty, scuffed, with old oil spots. `at` is its height under the joint face. */
export function rubberMat(relief: Relief, at: number, seed: number): void {
  const { z, rough, gloss } = relief
  over(relief, (x, y, i) => {
    const pebbles = layered(x * 0.9, y * 0.9, seed, 4)
    const fine = smooth(x * 3.1, y * 3.1, seed + 2)
    z[i] = at + pebbles * 0.22 + fine * 0.06
    paint(relief, i, [0.075, 0.077, 0.08])
    const wide = layered(x * 0.018 + 3, y * 0.018, seed + 4, 5)
    const dust = Math.max(0, 0.42 + wide) * (0.55 + 0.45 * pebbles + 0.3 * fine)
    stain(relief, i, [0.3, 0.28, 0.25], Math.max(0, Math.min(0.45, dust * 0.34)))
    const scuff = Math.max(0, layered(x * 0.012 + y * 0.05, y * 0.4 - x * 0.09, seed + 21, 3) - 0.52) * 2
    stain(relief, i, [0.3, 0.29, 0.27], Math.min(0.3, scuff))
    const spot = Math.min(1, Math.max(0, layered(x * 0.013, y * 0.013, seed + 11, 4) * 6 - 1.5))
    shade(relief, i, 1 - spot * 0.5)
    rough[i] = 0.7 - spot * 0.1
    gloss[i] = 0.05 + spot * 0.03
  })
}

const PALE: Colour = [0.36, 0.25, 0.145]
const DARK: Colour = [0.2, 0.125, 0.065]

/** A bench of worn planks along x, with grain, joints and black oil. */
export function woodenBench(relief: Relief, at: number, seed: number, plank = 92): void {
  const { z, rough, gloss } = relief
  over(relief, (x, y, i) => {
    const board = Math.floor((y + 37) / plank)
    const across = y + 37 - board * plank
    const bend = layered(x * 0.006, y * 0.02, seed + board * 31, 3) * 22
    const ring = Math.sin(
      (across + bend) * (0.55 + 0.2 * smooth(board, 2, seed)) + layered(x * 0.02, y * 0.3, seed + board, 3) * 3,
    )
    const pores = layered(x * 0.16, y * 2.6, seed + board * 7, 4)
    z[i] = at + pores * 0.1 + ring * 0.05
    paint(relief, i, PALE)
    stain(
      relief,
      i,
      DARK,
      Math.min(0.9, Math.max(0, 0.32 + ring * 0.16 + pores * 0.42 + smooth(board * 3.7, 5, seed) * 0.2)),
    )
    const dent = Math.max(0, layered(x * 0.35, y * 0.9, seed + 91, 3) - 0.56) * 3
    z[i] = z[i]! - dent * 0.5
    shade(relief, i, 1 - Math.min(0.5, dent * 0.5))
    const joint = Math.min(across, plank - across)
    if (joint < 0.9) {
      z[i] = at - 2.2
      shade(relief, i, 0.3)
    }
    const grime = Math.min(0.85, Math.max(0, layered(x * 0.012, y * 0.012, seed + 41, 5) * 2.2 + 0.08))
    stain(relief, i, [0.045, 0.035, 0.028], grime)
    rough[i] = 0.6 - grime * 0.2
    gloss[i] = 0.07 + grime * 0.06
  })
}
