/** Outlines in millimetres of the face: round the holes, with a corner more, with a corner less. */
import { type Hole, type Point, readThread } from '@gripbook/engine'

/** From the middle of a bolt to the rim, in thread diameters: room for the head and a wall. Common practice, no source. */
const RIM = 1.5
/** Turned by more than this at one corner, a corner of the hull becomes several; fewer corners are easier to drag. */
const TURN = (100 * Math.PI) / 180

/** mm from the middle of the outermost bolts to the rim that suits the thickest of them; M8 where no thread can be read. */
export function marginFor(holes: readonly Pick<Hole, 'thread'>[]): number {
  const diameters = holes.flatMap(({ thread }) =>
    [thread].flat().flatMap((name) => {
      const read = readThread(name)
      return read.ok ? [read.value.diameter] : []
    }),
  )
  return tenth(RIM * (diameters.length === 0 ? 8 : Math.max(...diameters)))
}

/** A cover round the holes: their convex hull, with `margin` of plate beyond it, mm. Null without a hole that has a place. */
export function outlineAround(places: readonly Point[], margin: number): Point[] | null {
  const hull = hullOf(places)
  if (hull.length === 0) return null
  if (hull.length === 1) return cornersAt(hull[0]!, 0, 2 * Math.PI, margin)
  return hull.flatMap((here, i) => {
    const before = hull[(i + hull.length - 1) % hull.length]!
    const after = hull[(i + 1) % hull.length]!
    const into = direction(before, here)
    // Hulls run counter-clockwise: every corner turns left, the end of a row of holes right round.
    const turn = (direction(here, after) - into + 4 * Math.PI) % (2 * Math.PI)
    return cornersAt(here, into - Math.PI / 2, turn, margin)
  })
}

/** Corners that lie round an arc of this radius from outside, each turning by less than TURN. */
function cornersAt([x, y]: Point, from: number, turn: number, radius: number): Point[] {
  const count = Math.max(1, Math.ceil(turn / TURN))
  const each = turn / count
  return Array.from({ length: count }, (_, i) => {
    const angle = from + each * (i + 0.5)
    const far = radius / Math.cos(each / 2)
    return [tenth(x + far * Math.cos(angle)), tenth(y + far * Math.sin(angle))]
  })
}

/** Counter-clockwise, without what lies on its edges. Two points for holes in a row. */
export function hullOf(places: readonly Point[]): Point[] {
  const sorted = [...new Map(places.map((place) => [place.join(), place])).values()].sort(
    (a, b) => a[0] - b[0] || a[1] - b[1],
  )
  if (sorted.length < 3) return sorted
  const half = (points: readonly Point[]) => {
    const chain: Point[] = []
    for (const point of points) {
      while (chain.length > 1 && left(chain.at(-2)!, chain.at(-1)!, point) <= 1e-9) chain.pop()
      chain.push(point)
    }
    return chain.slice(0, -1)
  }
  return [...half(sorted), ...half([...sorted].reverse())]
}

/** The outline with one more corner, in the side that lies nearest to it. */
export function withCorner(outline: readonly Point[], corner: Point): Point[] {
  if (outline.length < 3) return [...outline, corner]
  let side = 0
  let least = Number.POSITIVE_INFINITY
  outline.forEach((from, i) => {
    const off = distanceToSide(corner, from, outline[(i + 1) % outline.length]!)
    if (off < least) {
      least = off
      side = i
    }
  })
  return [...outline.slice(0, side + 1), corner, ...outline.slice(side + 1)]
}

/** Area in mm², whichever way round the corners run. */
export function areaOf(outline: readonly Point[]): number {
  return Math.abs(
    outline.reduce((sum, [x, y], i) => {
      const [nextX, nextY] = outline[(i + 1) % outline.length]!
      return sum + (x * nextY - nextX * y) / 2
    }, 0),
  )
}

export function distanceToSide([x, y]: Point, [ax, ay]: Point, [bx, by]: Point): number {
  const square = (bx - ax) ** 2 + (by - ay) ** 2
  const along = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square))
  return Math.hypot(x - ax - along * (bx - ax), y - ay - along * (by - ay))
}

const direction = ([ax, ay]: Point, [bx, by]: Point) => Math.atan2(by - ay, bx - ax)
const left = (a: Point, b: Point, c: Point) => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
const tenth = (value: number) => Math.round(value * 10) / 10
