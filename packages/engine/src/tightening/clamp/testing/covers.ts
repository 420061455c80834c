import { seededRandom } from '../../../maths/random.ts'
import type { Cover, Point } from '../../../unit.ts'
import { condense } from '../../plate/condense.ts'
import type { Bolt } from '../tighten.ts'

/** A rectangular cover with bolts round its rim and some inside, as a seed draws it. */
export type DrawnCover = { cover: Cover; stiffness: number; points: Point[]; bolts: Bolt[]; compliance: number[][] }

export function drawnCover(seed: number): DrawnCover {
  const next = seededRandom(seed)
  const between = (low: number, high: number) => low + next() * (high - low)
  const [width, height] = [between(60, 160), between(50, 120)]
  const cover: Cover = {
    outline: [
      [0, 0],
      [width, 0],
      [width, height],
      [0, height],
    ],
    thickness: between(4, 12),
  }
  const stiffness = 10 ** between(0.3, 2.3)
  const across = 2 + Math.floor(next() * 3)
  const up = 2 + Math.floor(next() * 2)
  const points: Point[] = []
  for (let i = 0; i < across; i++)
    for (let j = 0; j < up; j++) {
      const at = (k: number, count: number, size: number) => 8 + (k / (count - 1)) * (size - 16) + between(-3, 3)
      points.push([at(i, across, width), at(j, up, height)])
    }
  const bolts = points.map(
    (): Bolt => ({ target: between(4_000, 9_000), compliance: 1 / between(80_000, 300_000), visit: 1 }),
  )
  return { cover, stiffness, points, bolts, compliance: condense(cover, { stiffness }, points, width / 20).compliance }
}

/** The numbers 0 to count − 1 in an order that the seed draws. */
export function shuffled(count: number, seed: number): number[] {
  const next = seededRandom(seed)
  const order = Array.from({ length: count }, (_, i) => i)
  for (let i = count - 1; i > 0; i--) {
    const j = Math.floor(next() * (i + 1))
    ;[order[i], order[j]] = [order[j]!, order[i]!]
  }
  return order
}
