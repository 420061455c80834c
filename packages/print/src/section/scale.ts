import { MILLIMETRES_IN } from '@gripbook/engine'

/** A CSS pixel is a ninety-sixth of an inch, so 1 : 1 printed at 100 % is true size. */
export const PIXELS_PER_MM = 96 / MILLIMETRES_IN.in

export type Scale = { name: string; pixels: number }

/** Scales of ISO 5455 (2, 5, 10 and their inverses; from memory) with steps between, so that small and large threads both fill the sheet. */
const ENLARGED = [10, 5, 4, 3, 2.5, 2, 1.5, 1]
const REDUCED = [1.5, 2, 2.5, 3, 4, 5, 10, 20]

const SCALES: readonly Scale[] = [
  ...ENLARGED.map((n) => ({ name: `${n} : 1`, pixels: n * PIXELS_PER_MM })),
  ...REDUCED.map((n) => ({ name: `1 : ${n}`, pixels: PIXELS_PER_MM / n })),
]

/** The largest scale at which `width` × `height` mm fits into the room in pixels; the smallest one there is when none does. */
export function largestScale(
  mm: { width: number; height: number },
  room: { width: number; height: number },
  upTo = 10,
) {
  const fits = ({ pixels }: Scale) =>
    mm.width * pixels <= room.width && mm.height * pixels <= room.height && pixels <= upTo * PIXELS_PER_MM + 1e-9
  return SCALES.find(fits) ?? SCALES.at(-1)!
}
