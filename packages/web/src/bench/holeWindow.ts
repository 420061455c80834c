/** Which part of the picture is shown, so that one hole fills the view and its neighbours tell where it is. */

export type Window = { x: number; y: number; width: number; height: number }

/** So many times the distance of the nearest neighbour is in sight. */
const NEIGHBOURS = 2.6
/** The shorter side of the window as a share of the picture's longer side. */
const LEAST = 0.16
const MOST = 0.5

/**
 * A part of the picture around a hole, in its pixels. Places are shares of its width and height; `aspect`: width to height of the place on the screen.
 * At the picture's edge the window stays inside it as far as it is no larger than the picture.
 */
export function holeWindow(
  hole: readonly [number, number],
  all: readonly (readonly [number, number])[],
  picture: { width: number; height: number },
  aspect: number,
): Window {
  const long = Math.max(picture.width, picture.height)
  const [cx, cy] = [hole[0] * picture.width, hole[1] * picture.height]
  const distances = all
    .map(([x, y]) => Math.hypot(x * picture.width - cx, y * picture.height - cy))
    .filter((distance) => distance > 0)
  const nearest = distances.length === 0 ? long : Math.min(...distances)
  const side = Math.min(Math.max(nearest * NEIGHBOURS, long * LEAST), long * MOST)
  const [width, height] = aspect >= 1 ? [side * aspect, side] : [side, side / aspect]
  return {
    x: inside(cx - width / 2, width, picture.width),
    y: inside(cy - height / 2, height, picture.height),
    width,
    height,
  }
}

/** The whole picture. */
export function wholeWindow({ width, height }: { width: number; height: number }): Window {
  return { x: 0, y: 0, width, height }
}

/** Where a window of this length begins so that it lies on the picture; one that is longer than it has the picture in its middle. */
function inside(from: number, length: number, all: number): number {
  return length > all ? (all - length) / 2 : Math.min(Math.max(from, 0), all - length)
}
