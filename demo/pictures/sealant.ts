import { rubberMat } from './ground.ts'
import { castSkin, mill, oil, scratch, spotFace, tap } from './machining.ts'
import { layered, smooth } from './noise.ts'
import { type Colour, over, type Relief, raise, stain } from './relief.ts'
import { disc, joined } from './shapes.ts'

const OLD: Colour = [0.095, 0.1, 0.108]
const NEW: Colour = [0.33, 0.05, 0.028]

/** A piece of the rim, close: grey sealant scraped off badly, and over it a bead of a red one from another hand. */
export function sealant(relief: Relief): void {
  rubberMat(relief, -24, 71)
  const wall = (x: number, y: number) => Math.abs(y - 2 + x * 0.09 + Math.sin(x * 0.045) * 3) - 9.5
  const body = joined([wall, disc([-22, 14], 10.5), disc([23, 8], 10.5)], 12)
  raise(relief, body, 1, 11)
  castSkin(relief, 81, 0.5)
  mill(relief, undefined, 0, 35, 60, 0.9)
  for (const at of [
    [-22, 15],
    [23, 9],
  ] as const) {
    spotFace(relief, at, 7.4, -0.05, 61)
    tap(relief, at, 6, -0.05, 18)
  }
  oil(relief, 91, 0.7)
  for (let k = 0; k < 16; k++) {
    const x = -40 + k * 5.3
    scratch(relief, [x, 8 - x * 0.09], [x + 9 + (k % 4) * 3, -5 - x * 0.09 + (k % 3) * 4], 500 + k)
  }
  const free = (x: number, y: number) => Math.min(Math.hypot(x + 22, y - 15), Math.hypot(x - 23, y - 9)) > 4.4
  over(relief, (x, y, i) => {
    const d = wall(x, y)
    const level = relief.z[i]!
    if (level < -3 || !free(x, y)) return
    // The old one: thin, torn, left in patches.
    const patch = layered(x * 0.1, y * 0.17, 7, 5) + 0.18 - Math.max(0, -d - 7) * 0.07
    if (patch > 0) {
      const share = Math.min(1, patch * 7)
      relief.z[i] = level + Math.min(0.35, patch * 1.2) + smooth(x * 1.9, y * 1.9, 8) * 0.05 * share
      stain(relief, i, OLD, share * 0.93)
      relief.rough[i] = 0.62
      relief.gloss[i] = 0.72 * (1 - share) + 0.07
    }
  })
  over(relief, (x, y, i) => {
    if (!free(x, y)) return
    // The new one: a bead that was pressed out towards the lower edge, thick here, thin there.
    const line = y - 2 + x * 0.09 + Math.sin(x * 0.045) * 3 + 8.4 + smooth(x * 0.13, 1, 19) * 1.2
    const half = 2.1 + smooth(x * 0.21, 4, 23) * 0.9 + smooth(x * 0.07, 6, 24) * 1.1
    const smear = layered(x * 0.16, y * 0.2, 29, 4) + 0.02 - Math.abs(line - 3.5) * 0.07
    const inside = half - Math.abs(line)
    if (inside > 0) {
      const round = Math.sqrt(Math.min(1, inside / half) * (2 - Math.min(1, inside / half)))
      const base = Math.max(relief.z[i]!, -1.6)
      relief.z[i] = Math.max(relief.z[i]!, base + round * half * 0.75 + layered(x * 0.8, y * 0.8, 27, 3) * 0.18)
      stain(relief, i, NEW, 0.97)
      relief.made[i] = 1
      relief.rough[i] = 0.3
      relief.gloss[i] = 0.12
    } else if (smear > 0 && relief.z[i]! > -1.5) {
      stain(relief, i, NEW, Math.min(0.85, smear * 5))
      relief.rough[i] = 0.45
      relief.gloss[i] = 0.2
    }
  })
}
