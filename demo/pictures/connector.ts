import { woodenBench } from './ground.ts'
import { layered } from './noise.ts'
import { over, type Relief, shade, stain } from './relief.ts'
import { bar, box, disc, type Place, type Shape, without } from './shapes.ts'
import { solid, wire } from './solid.ts'

const BLACK = { colour: [0.042, 0.042, 0.045], rough: 0.42, gloss: 0.16 } as const
const LATCH = { colour: [0.09, 0.09, 0.094], rough: 0.4, gloss: 0.16 } as const
const SEAL = { colour: [0.42, 0.11, 0.03], rough: 0.5, gloss: 0.12 } as const
const WIRES = [
  [0.33, 0.03, 0.025],
  [0.03, 0.03, 0.032],
  [0.46, 0.4, 0.1],
  [0.05, 0.13, 0.3],
] as const

/** A four-wire plug with a rubber seal and a latch along its top; its wires go off to the left. */
export function connector(relief: Relief): void {
  woodenBench(relief, -11, 25, 74)
  WIRES.forEach((colour, k) => {
    const start = 5.4 - k * 3.6
    const path: Place[] = []
    for (let x = -8; x >= -66; x -= 2) {
      const along = (-8 - x) / 58
      path.push([x, start + Math.sin(along * 4 + k * 0.5) * along * 9 - along * along * (10 + k * 2.5)])
    }
    wire(relief, line(path), 1.35, -6.5 + (k % 2) * 1.2, { colour, rough: 0.4, gloss: 0.14 })
  })
  solid(relief, box([-5, 0], 7, 10, 3), -2.4, 2.4, BLACK)
  for (const x of [-9.4, -6, -2.6]) solid(relief, box([x, 0], 1.1, 10.3, 1), -1.7, 0.9, SEAL)
  solid(relief, box([16, 0], 17, 12, 2.4), 0, 1.8, BLACK)
  for (const y of [-9.4, 9.4]) solid(relief, box([18, y], 14, 1, 0.9), 1, 0.8, BLACK)
  // The latch: a tongue between two rails, its hook at the front and a ribbed thumb plate at the back.
  for (const y of [-5.6, 5.6]) solid(relief, box([16, y], 16, 1.1, 0.6), 3, 0.6, BLACK)
  solid(relief, without(box([15, 0], 13, 3.7, 1), box([22, 0], 3, 1.9, 0.6)), 2.8, 0.7, LATCH)
  solid(relief, box([4, 0], 4.6, 4.3, 1.4), 4.2, 1.2, LATCH)
  for (const x of [1.4, 3.4, 5.4, 7.2]) solid(relief, box([x, 0], 0.45, 3.6, 0.4), 4.9, 0.4, LATCH)
  solid(relief, box([31, 0], 1.6, 11, 1.2), 1.2, 1, BLACK)
  solid(relief, disc([27.4, -7.6], 1), 0.6, 0.5, BLACK)
  over(relief, (x, y, i) => {
    if (relief.made[i] === 0) return
    relief.z[i] = relief.z[i]! + layered(x * 2.4, y * 2.4, 12, 3) * 0.022
    shade(relief, i, 1 + 0.2 * layered(x * 0.2, y * 0.2, 13, 4))
    const dust = Math.max(0, layered(x * 0.1, y * 0.1, 15, 5) + 0.28) * (0.5 + 0.6 * layered(x * 1.7, y * 1.7, 16, 3))
    stain(relief, i, [0.26, 0.22, 0.17], Math.min(0.4, Math.max(0, dust * 0.5)))
  })
}

function line(path: readonly Place[]): Shape {
  const parts = path.slice(1).map((to, i) => bar(path[i]!, to, 0))
  return (x, y) => {
    let nearest = Number.POSITIVE_INFINITY
    for (const part of parts) nearest = Math.min(nearest, part(x, y))
    return nearest
  }
}
