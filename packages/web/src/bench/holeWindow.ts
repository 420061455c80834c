/** Which part of the picture is shown, so that one hole fills the view and its neighbours tell where it is. */

export type Window = { x: number; y: number; side: number }

/** So many times the distance of the nearest neighbour is in sight. */
const NEIGHBOURS = 2.6
/** The side as a share of the picture's longer side. */
const LEAST = 0.16
const MOST = 0.5

/** A square of the picture around a hole, in its pixels. Places are shares of its width and height. It may reach over the picture's edge. */
export function holeWindow(
  hole: readonly [number, number],
  all: readonly (readonly [number, number])[],
  { width, height }: { width: number; height: number },
): Window {
  const long = Math.max(width, height)
  const [cx, cy] = [hole[0] * width, hole[1] * height]
  const distances = all.map(([x, y]) => Math.hypot(x * width - cx, y * height - cy)).filter((d) => d > 0)
  const nearest = distances.length === 0 ? long : Math.min(...distances)
  const side = Math.min(Math.max(nearest * NEIGHBOURS, long * LEAST), long * MOST)
  return { x: cx - side / 2, y: cy - side / 2, side }
}

/** The whole picture, as a square around its middle. */
export function wholeWindow({ width, height }: { width: number; height: number }): Window {
  const side = Math.max(width, height)
  return { x: (width - side) / 2, y: (height - side) / 2, side }
}
