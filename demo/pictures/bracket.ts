import { woodenBench } from './ground.ts'
import { oil, scratch } from './machining.ts'
import { layered, row } from './noise.ts'
import { over, type Relief, shade, stain } from './relief.ts'
import { bar, box, disc, joined, type Place, without } from './shapes.ts'
import { solid } from './solid.ts'

const STEEL = { colour: [0.27, 0.255, 0.2], rough: 0.36, gloss: 0.6 } as const

/** A stamped steel bracket, 3 mm thick, with two holes and a lip bent up along one edge; plated, with a little rust. */
export function bracket(relief: Relief): void {
  woodenBench(relief, -3, 15, 70)
  const outside = joined([box([-4, 0], 27, 11, 9), bar([18, -2], [27, 9], 9.5)], 9)
  const plate = without(without(outside, disc([-20, 0], 3.3)), disc([24, 5], 4.4))
  solid(relief, without(plate, bar([-1, 1], [7, 1], 2)), 0, 0.8, STEEL)
  solid(relief, box([-7, 11.6], 16, 3.4, 1.6), 2.2, 2.6, STEEL)
  solid(relief, box([-7, 12.4], 15.2, 1.6, 0.7), 11, 0.7, { ...STEEL, colour: [0.28, 0.265, 0.215] })
  over(relief, (x, y, i) => {
    if (relief.made[i] === 0) return
    const worn = Math.abs(Math.hypot(x + 20, y) - 5.6) < 1.7 ? 1 : 0
    shade(relief, i, 1 + 0.16 * layered(x * 0.16, y * 0.5, 4, 5) + worn * 0.14)
    const rust =
      Math.max(0, layered(x * 0.11, y * 0.11, 38, 5) * 3 - 0.5) * (0.6 + 0.6 * layered(x * 1.5, y * 1.5, 35, 3))
    stain(relief, i, [0.2, 0.085, 0.03], Math.max(0, Math.min(0.75, rust)))
    relief.rough[i] = relief.rough[i]! + Math.min(0.3, Math.max(0, rust) * 0.4)
    relief.z[i] = relief.z[i]! + layered(x * 1.3, y * 1.3, 37, 3) * 0.025
  })
  oil(relief, 44, 0.9)
  const next = row(51)
  for (let k = 0; k < 14; k++) {
    const from: Place = [-28 + next() * 56, -9 + next() * 18]
    const turned = next() * 3.1
    const long = 3 + next() * 14
    scratch(relief, from, [from[0] + Math.cos(turned) * long, from[1] + Math.sin(turned) * long], 400 + k)
  }
}
