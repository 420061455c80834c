import { CAST, type Colour, over, paint, type Relief } from './relief.ts'
import type { Shape } from './shapes.ts'

type Stuff = { readonly colour: Colour; readonly rough: number; readonly gloss: number }

/** A plate or block with edges rounded over `round` millimetres, laid on what is there. */
export function solid(relief: Relief, shape: Shape, top: number, round: number, stuff: Stuff): void {
  over(relief, (x, y, i) => {
    const d = shape(x, y)
    if (d > 0) return
    const edge = Math.max(0, round + d)
    const at = top - round + Math.sqrt(Math.max(0, round * round - edge * edge))
    if (at > relief.z[i]!) made(relief, i, at, stuff)
  })
}

/** A round wire along the middle line of a shape: `line` is the distance to that line. */
export function wire(relief: Relief, line: Shape, radius: number, middle: number, stuff: Stuff): void {
  over(relief, (x, y, i) => {
    const d = line(x, y)
    if (d > radius) return
    const at = middle + Math.sqrt(radius * radius - d * d)
    if (at > relief.z[i]!) made(relief, i, at, stuff)
  })
}

function made(relief: Relief, i: number, at: number, { colour, rough, gloss }: Stuff): void {
  relief.z[i] = at
  relief.made[i] = CAST
  paint(relief, i, colour)
  relief.rough[i] = rough
  relief.gloss[i] = gloss
}
