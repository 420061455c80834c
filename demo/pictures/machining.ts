import { layered, smooth } from './noise.ts'
import { blurred, CAST, type Colour, MACHINED, over, paint, type Relief, shade, stain, TAPPED } from './relief.ts'
import { disc, type Place, type Shape } from './shapes.ts'

const ALUMINIUM: Colour = [0.3, 0.298, 0.288]
const CUT: Colour = [0.5, 0.502, 0.495]
const OIL: Colour = [0.15, 0.1, 0.05]

/** What sand and a die leave: round edges, a pebbled skin, uneven grey. `round` in millimetres. */
export function castSkin(relief: Relief, seed: number, round: number): void {
  const { z, made, scale, width, height, rough, gloss } = relief
  const soft = blurred(z, width, height, round * scale)
  over(relief, (x, y, i) => {
    if (made[i] !== CAST) return
    const pebbles = layered(x * 1.1, y * 1.1, seed, 3)
    z[i] = soft[i]! + pebbles * 0.16 + smooth(x * 0.12, y * 0.12, seed + 9) * 0.25
    paint(relief, i, ALUMINIUM)
    shade(relief, i, 0.95 + 0.3 * layered(x * 0.05, y * 0.05, seed + 20, 4) + 0.16 * pebbles)
    rough[i] = 0.55 + 0.1 * pebbles
    gloss[i] = 0.5
  })
}

/** A cutter's passes over all that stands higher than `at` inside the shape: flat, bright, with the arcs of the tool. */
export function mill(relief: Relief, shape: Shape | undefined, at: number, seed: number, tool = 55, lay = 0.9): void {
  const { z, made, rough, gloss } = relief
  over(relief, (x, y, i) => {
    if (made[i] === 0 || z[i]! < at || (shape && shape(x, y) > 0)) return
    const u = x + Math.sqrt(Math.max(0, tool * tool - (((y + 400) % (tool * 1.5)) - tool * 0.75) ** 2))
    bright(relief, i, at, u / lay, x, y, seed)
    rough[i] = 0.33 + 0.06 * smooth(x * 0.2, y * 0.2, seed)
    gloss[i] = 0.72
  })
}

/** A lathe's cut: rings round a middle. */
export function turn(relief: Relief, shape: Shape, middle: Place, at: number, seed: number, lay = 0.8): void {
  const { z, made, rough, gloss } = relief
  over(relief, (x, y, i) => {
    if (made[i] === 0 || z[i]! < at || shape(x, y) > 0) return
    bright(relief, i, at, Math.hypot(x - middle[0], y - middle[1]) / lay, x, y, seed)
    rough[i] = 0.32
    gloss[i] = 0.75
  })
}

function bright(relief: Relief, i: number, at: number, lay: number, x: number, y: number, seed: number): void {
  const groove =
    Math.sin(lay * Math.PI * 2) * 0.35 + smooth(lay * 0.6, 3, seed) * 0.5 + smooth(lay * 2.3, 8, seed) * 0.4
  relief.z[i] = at + groove * 0.02
  relief.made[i] = MACHINED
  paint(relief, i, CUT)
  shade(relief, i, 1 + 0.12 * groove + 0.34 * layered(x * 0.03, y * 0.03, seed + 3, 5))
}

/** A flat seat for a bolt's head, cut by a spot facer: sunk into or raised from what is round it. */
export function spotFace(relief: Relief, at: Place, radius: number, depth: number, seed: number): void {
  const { z, made, rough, gloss } = relief
  const shape = disc(at, radius)
  over(
    relief,
    (x, y, i) => {
      const d = shape(x, y)
      if (d > 0 || made[i] === 0 || z[i]! < depth) return
      bright(relief, i, depth, (d + radius) / 0.7, x, y, seed)
      shade(relief, i, 1.08)
      rough[i] = 0.3
      gloss[i] = 0.8
    },
    { x: at[0], y: at[1], reach: radius + 1 },
  )
}

/** A threaded hole: a chamfer, then the thread, then the cone the drill left. */
export function tap(relief: Relief, at: Place, size: number, from: number, deep: number): void {
  const { z, made, rough, gloss } = relief
  const radius = size / 2
  const chamfer = radius * 1.24
  over(
    relief,
    (x, y, i) => {
      const r = Math.hypot(x - at[0], y - at[1])
      if (r > chamfer) return
      if (r > radius) {
        z[i] = Math.min(z[i]!, from - (chamfer - r) * 1.1)
        made[i] = MACHINED
        paint(relief, i, [0.78, 0.785, 0.78])
        rough[i] = 0.26
        gloss[i] = 0.85
        return
      }
      z[i] = Math.min(from - 1, from - deep + r * 0.6)
      made[i] = TAPPED
      paint(relief, i, [0.16, 0.155, 0.15])
      rough[i] = 0.5
      gloss[i] = 0.3
    },
    { x: at[0], y: at[1], reach: chamfer + 1 },
  )
}

/** Two years of oil: brown in the hollows and in patches, with a sheen. `strength` 0…1. */
export function oil(relief: Relief, seed: number, strength: number): void {
  const { z, made, scale, width, height, rough } = relief
  const wide = blurred(z, width, height, 4 * scale)
  over(relief, (x, y, i) => {
    if (made[i] === 0 || made[i] === TAPPED) return
    const hollow = Math.min(1, Math.max(0, (wide[i]! - z[i]! - 0.4) * 0.35))
    const patch = Math.max(0, layered(x * 0.022, y * 0.022, seed, 5) * 2.3 - 0.12)
    const film = Math.min(
      0.8,
      strength * (hollow * 0.42 + patch * 0.62) * (0.7 + 0.5 * layered(x * 0.4, y * 0.4, seed + 5, 3)),
    )
    stain(relief, i, OIL, Math.max(0, film))
    rough[i] = Math.max(0.2, rough[i]! - film * 0.3)
  })
}

/** A scratch: a bright line with a dark edge, on what is machined or cast. */
export function scratch(relief: Relief, [ax, ay]: Place, [bx, by]: Place, seed: number): void {
  const { z, made } = relief
  const length = Math.hypot(bx - ax, by - ay)
  const middle = { x: (ax + bx) / 2, y: (ay + by) / 2, reach: length / 2 + 2 }
  over(
    relief,
    (x, y, i) => {
      if (made[i] === 0 || made[i] === TAPPED) return
      const t = ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / (length * length)
      if (t < 0 || t > 1) return
      const bow = smooth(t * 3, 1, seed) * length * 0.02
      const off = ((x - ax) * (by - ay) - (y - ay) * (bx - ax)) / length + bow
      const depth = Math.sin(t * Math.PI) * (0.6 + 0.4 * smooth(t * 20, 2, seed))
      if (Math.abs(off) > 0.35) return
      z[i] = z[i]! - depth * 0.05 * (1 - Math.abs(off) / 0.35)
      shade(relief, i, 1 + 0.28 * depth * (off > 0 ? 1 : -0.8))
    },
    middle,
  )
}
