import type { Shape } from './shapes.ts'

/**
 * A part seen from above: for each point its height over the joint face in millimetres (up is positive) and what it is made of.
 * `left` and `top` are the face's millimetres at the upper left corner, x to the right, y upwards; `scale` is points per millimetre.
 */
export type Relief = {
  readonly left: number
  readonly top: number
  readonly scale: number
  readonly width: number
  readonly height: number
  readonly z: Float32Array
  /** Colour as reflected light, three numbers in 0…1 per point. */
  readonly colour: Float32Array
  /** 0 is a mirror, 1 is chalk. */
  readonly rough: Float32Array
  /** How much of the light is thrown back without being scattered, 0…1. */
  readonly gloss: Float32Array
  readonly made: Uint8Array
}

/** What a point is made of; 0 is the ground under the part. */
export const CAST = 1
export const MACHINED = 2
export const TAPPED = 3

export type Colour = readonly [number, number, number]

export function emptyRelief(left: number, top: number, scale: number, width: number, height: number): Relief {
  const points = width * height
  return {
    left,
    top,
    scale,
    width,
    height,
    z: new Float32Array(points),
    colour: new Float32Array(points * 3),
    rough: new Float32Array(points).fill(0.8),
    gloss: new Float32Array(points).fill(0.05),
    made: new Uint8Array(points),
  }
}

type Extent = { readonly x: number; readonly y: number; readonly reach: number }

/** Visits every point, or those within `reach` millimetres of one place. */
export function over(relief: Relief, each: (x: number, y: number, i: number) => void, near?: Extent): void {
  const { left, top, scale, width, height } = relief
  const clamp = (value: number, most: number) => Math.min(most, Math.max(0, Math.round(value)))
  const x0 = near ? clamp((near.x - near.reach - left) * scale, width) : 0
  const x1 = near ? clamp((near.x + near.reach - left) * scale, width) : width
  const y0 = near ? clamp((top - near.y - near.reach) * scale, height) : 0
  const y1 = near ? clamp((top - near.y + near.reach) * scale, height) : height
  for (let py = y0; py < y1; py++) {
    const y = top - (py + 0.5) / scale
    for (let px = x0; px < x1; px++) each(left + (px + 0.5) / scale, y, py * width + px)
  }
}

export function paint(relief: Relief, i: number, [r, g, b]: Colour): void {
  relief.colour[i * 3] = r
  relief.colour[i * 3 + 1] = g
  relief.colour[i * 3 + 2] = b
}

export function shade(relief: Relief, i: number, by: number): void {
  for (let c = i * 3; c < i * 3 + 3; c++) relief.colour[c] = relief.colour[c]! * by
}

/** Mixes a colour in, `share` 0…1. */
export function stain(relief: Relief, i: number, colour: Colour, share: number): void {
  for (let c = 0; c < 3; c++) relief.colour[i * 3 + c] = relief.colour[i * 3 + c]! * (1 - share) + colour[c]! * share
}

/** Casts material up to a height inside the shape; outside, the wall falls by `steep` millimetres per millimetre. */
export function raise(relief: Relief, shape: Shape, to: number, steep = 7, near?: Extent): void {
  const { z, made } = relief
  over(
    relief,
    (x, y, i) => {
      const d = shape(x, y)
      const at = d <= 0 ? to : to - d * steep
      if (at > z[i]!) {
        z[i] = at
        made[i] = CAST
      }
    },
    near,
  )
}

/** Takes material away down to a floor inside the shape; the wall falls inwards from `from`. */
export function sink(relief: Relief, shape: Shape, floor: number, steep = 6, from = 1, near?: Extent): void {
  const { z } = relief
  over(
    relief,
    (x, y, i) => {
      const d = shape(x, y)
      if (d < 0) z[i] = Math.min(z[i]!, Math.max(floor, from + d * steep))
    },
    near,
  )
}

/** The values with each one the mean of its surroundings; `radius` in points. Three boxes come close to a bell curve. */
export function blurred(values: Float32Array, width: number, height: number, radius: number): Float32Array {
  const r = Math.max(1, Math.round(radius * 0.58))
  let from = values
  for (let pass = 0; pass < 3; pass++) from = boxed(boxed(from, height, width, width, 1, r), width, height, 1, width, r)
  return from
}

function boxed(from: Float32Array, lines: number, length: number, line: number, step: number, r: number): Float32Array {
  const to = new Float32Array(from.length)
  const share = 1 / (2 * r + 1)
  for (let l = 0; l < lines; l++) {
    const start = l * line
    const last = start + (length - 1) * step
    let sum = from[start]! * (r + 1)
    for (let k = 1; k <= r; k++) sum += from[Math.min(last, start + k * step)]!
    for (let k = 0; k < length; k++) {
      const i = start + k * step
      to[i] = sum * share
      sum += from[Math.min(last, i + (r + 1) * step)]! - from[Math.max(start, i - r * step)]!
    }
  }
  return to
}
