import { chance, smooth } from './noise.ts'
import { blurred, type Relief, TAPPED } from './relief.ts'

/** The camera stands this far above the joint face, in millimetres: near enough to see a little of the walls. */
export type Camera = { readonly over: number; readonly middle: readonly [number, number] }

/** Where something at height `z` must lie so that the camera sees it at `seen` on the joint face's plane. */
export function under(camera: Camera, seen: readonly [number, number], z: number): [number, number] {
  const by = (camera.over - z) / camera.over
  const [cx, cy] = camera.middle
  return [cx + (seen[0] - cx) * by, cy + (seen[1] - cy) * by]
}

/** Towards the window: from the upper left, well above the bench. */
const KEY = unit(-0.55, 0.6, 0.78)
/** Towards a lamp behind the right shoulder. */
const FILL = unit(0.75, -0.35, 0.7)
const KEY_COLOUR = [1.0, 0.975, 0.93]
const FILL_COLOUR = [0.95, 0.86, 0.7]
const SKY_COLOUR = [0.86, 0.94, 1.05]

/** Takes the picture: three bytes per point, as large as the relief. */
export function photograph(relief: Relief, camera: Camera, seed: number, exposure = 1): Uint8Array {
  const { width, height, scale, left, top, z, colour, rough, gloss, made } = relief
  const points = width * height
  let lowest = Number.POSITIVE_INFINITY
  let highest = Number.NEGATIVE_INFINITY
  for (let i = 0; i < points; i++) {
    lowest = Math.min(lowest, z[i]!)
    highest = Math.max(highest, z[i]!)
  }
  const around = [1.3, 4, 12, 32].map((reach) => ({ reach, z: blurred(z, width, height, reach * scale) }))
  const [cx, cy] = camera.middle
  const at = (x: number, y: number) => {
    const px = Math.min(width - 1, Math.max(0, Math.floor((x - left) * scale)))
    const py = Math.min(height - 1, Math.max(0, Math.floor((top - y) * scale)))
    return py * width + px
  }
  const light = new Float32Array(points * 3)
  const far = new Float32Array(points)
  for (let py = 0; py < height; py++) {
    for (let px = 0; px < width; px++) {
      const seenX = left + (px + 0.5) / scale
      const seenY = top - (py + 0.5) / scale
      // Down the line of sight until it meets the part.
      const dx = seenX - cx
      const dy = seenY - cy
      const steps = Math.max(8, Math.ceil((Math.hypot(dx, dy) * (highest - lowest) * scale * 1.5) / camera.over))
      let level = highest
      let x = seenX
      let y = seenY
      let i = 0
      for (let step = 0; step <= steps; step++) {
        level = highest + ((lowest - highest) * step) / steps
        const by = (camera.over - level) / camera.over
        x = cx + dx * by
        y = cy + dy * by
        i = at(x, y)
        if (z[i]! >= level) break
      }
      let above = level + (highest - lowest) / steps
      for (let halving = 0; halving < 7; halving++) {
        const between = (above + level) / 2
        const by = (camera.over - between) / camera.over
        const j = at(cx + dx * by, cy + dy * by)
        if (z[j]! >= between) {
          level = between
          i = j
        } else above = between
      }
      x = cx + (dx * (camera.over - level)) / camera.over
      y = cy + (dy * (camera.over - level)) / camera.over
      const ix = i % width
      const west = z[ix > 0 ? i - 1 : i]!
      const east = z[ix < width - 1 ? i + 1 : i]!
      const north = z[i >= width ? i - width : i]!
      const south = z[i < points - width ? i + width : i]!
      let gx = ((east - west) * scale) / 2
      let gy = ((north - south) * scale) / 2
      const slope = Math.hypot(gx, gy)
      // A line of sight that ends below the edge of a point has met the wall under it.
      const wall = z[i]! - level > 0.6 + (Math.min(slope, 6) * 1.5) / scale
      const height0 = wall ? level : z[i]!
      if (slope > 9) {
        gx *= 9 / slope
        gy *= 9 / slope
      }
      const norm = 1 / Math.hypot(gx, gy, 1)
      const nx = -gx * norm
      const ny = -gy * norm
      const nz = norm

      // What the surroundings keep away.
      let open = 1
      for (const ring of around) open /= 1 + Math.max(0, (ring.z[i]! - height0) / ring.reach) * 1.5

      // The shadow of the window's light, softer the farther its edge.
      let lit = 1
      let go = 0.5 + 0.5 * chance(px, py, seed + 5)
      const room = highest - height0
      while (lit > 0 && go * KEY[2] < room && go < 90) {
        const over = z[at(x + KEY[0] * go, y + KEY[1] * go)]! - (height0 + KEY[2] * go)
        if (over > -0.14 * go) lit = Math.min(lit, 1 - (over + 0.14 * go) / (0.28 * go + 0.3))
        go = go * 1.07 + 0.12
      }
      lit = Math.max(0, lit)

      const view = unit((cx - x) / 620, (cy - y) / 620, 1)
      const r = rough[i]!
      let shine = gloss[i]!
      const fall = 1.08 - 0.0034 * ((x - cx) * 0.8 - (y - cy) * 0.9)
      const key = Math.max(0, nx * KEY[0] + ny * KEY[1] + nz * KEY[2]) * lit * 1.5 * fall
      const fill = Math.max(0, nx * FILL[0] + ny * FILL[1] + nz * FILL[2]) * (0.3 + 0.7 * open) * 0.35
      const sky = (0.55 + 0.45 * nz) * open * open * 0.42
      const glint =
        lobe(nx, ny, nz, KEY, view, r) * (0.15 + 0.85 * lit) * 0.55 + lobe(nx, ny, nz, FILL, view, r) * open * 0.28
      // A light tube over the bench, mirrored by what is smooth.
      const mirrorX = 2 * nz * nx - (view[0] ?? 0)
      const mirrorY = 2 * nz * ny - (view[1] ?? 0)
      const tube = Math.exp(-(((mirrorX * 0.35 + mirrorY - 0.12) / (0.08 + r * 0.5)) ** 2)) * open * (1 - r) * 0.6
      let thread = 1
      if (made[i] === TAPPED) {
        // A hole swallows light; the crests of the thread near the mouth catch a little.
        const sunk = Math.exp(height0 * 0.16)
        thread = wall ? (0.25 + 1.5 * Math.max(0, Math.sin(height0 * 6.283))) * sunk : 0.35
        shine *= wall ? sunk : 0.15
      }
      for (let c = 0; c < 3; c++) {
        const base = colour[i * 3 + c]! * thread
        const diffuse = base * (1 - shine * 0.45)
        const mirrored = shine * (0.25 + 0.75 * base)
        light[(py * width + px) * 3 + c] =
          diffuse * (key * KEY_COLOUR[c]! + fill * FILL_COLOUR[c]! + sky * SKY_COLOUR[c]!) +
          mirrored * (glint * KEY_COLOUR[c]! + tube * SKY_COLOUR[c]!)
      }
      far[py * width + px] = Math.abs(height0)
    }
  }
  return developed(relief, light, far, seed, exposure)
}

/** How strongly a light is thrown towards the eye by a surface of that roughness. */
function lobe(nx: number, ny: number, nz: number, towards: Direction, view: Direction, rough: number): number {
  const [hx, hy, hz] = unit(towards[0] + view[0], towards[1] + view[1], towards[2] + view[2])
  const cos = Math.max(0, nx * hx + ny * hy + nz * hz)
  const a = rough * rough + 0.05
  const d = cos * cos * (a * a - 1) + 1
  return (a * a) / (d * d) / (3.2 * a + 0.2)
}

/** Lens and film: what lies far from the joint face is a little soft, corners are darker, the light is curved and grainy. */
function developed(relief: Relief, light: Float32Array, far: Float32Array, seed: number, exposure: number): Uint8Array {
  const { width, height, scale } = relief
  const picture = new Uint8Array(light.length)
  const plane = new Float32Array(width * height)
  const softness = blurred(far, width, height, 0.5 * scale)
  for (let c = 0; c < 3; c++) {
    for (let i = 0; i < plane.length; i++) plane[i] = light[i * 3 + c]!
    const soft = blurred(plane, width, height, Math.max(1, 0.32 * scale))
    const glow = blurred(plane, width, height, 5 * scale)
    for (let i = 0; i < plane.length; i++) {
      const px = i % width
      const py = (i - px) / width
      const out = Math.min(1, Math.max(0, (softness[i]! - 15) / 40))
      const u = (px / width - 0.47) * 2
      const v = ((py / height - 0.48) * 2 * height) / width
      const corner = 1 - 0.3 * (u * u + v * v) ** 1.1
      let value = (plane[i]! * (1 - out) + soft[i]! * out) * 0.94 + glow[i]! * 0.06
      value *= corner * exposure * 1.12
      const curved = (value * (2.51 * value + 0.03)) / (value * (2.43 * value + 0.59) + 0.14)
      const shown = Math.min(1, Math.max(0, curved)) ** (1 / 2.2) * 0.97 + 0.012
      const grain = (smooth(px * 0.62, py * 0.62, seed + 70) + 0.5 * smooth(px * 0.4, py * 0.4, seed + 71 + c)) * 0.012
      picture[i * 3 + c] = Math.min(255, Math.max(0, (shown + grain * (1.3 - shown)) * 255))
    }
  }
  return picture
}

type Direction = readonly [number, number, number]

function unit(x: number, y: number, z: number): Direction {
  const length = Math.hypot(x, y, z)
  return [x / length, y / length, z / length]
}
