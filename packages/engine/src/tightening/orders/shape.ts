/** What shape the bolts of a face make: their hull, their middle, the rectangle round them. Turned or mirrored bolts make the same, turned or mirrored. */
import type { Point } from '../../unit.ts'
import { areaOf } from '../plate/outline.ts'
import { distance, first, numbered, type Places } from './places.ts'

export type Shape = {
  middle: Point
  /** Greatest distance of a bolt from the middle, mm. */
  reach: number
  /** Corners of the convex hull, counter-clockwise; fewer than three when all bolts are in one line. */
  hull: Point[]
  /** Area of the hull, mm². */
  area: number
  /** Direction of the long sides of the smallest rectangle round all bolts, of length 1; its sides, mm, and its corners in turn. */
  along: Point
  length: number
  width: number
  corners: Point[]
}

/** Of 1: below this a hull is a line, and two figures are equal. */
const HAIR = 1e-9

export function shapeOf(places: Places): Shape {
  const points = places.map(({ at }) => at)
  const hull = hullOf(points)
  const area = areaOf(hull)
  const middle = middleOf(hull, area)
  const reach = Math.max(0, ...points.map((at) => distance(at, middle)))
  return { middle, reach, hull, area, ...rectangleOf(hull) }
}

/** Distance of a point from the edge of a hull, or of any closed line of corners, mm, and how far along the edge the nearest point of it is, mm counter-clockwise from the first corner. */
export function onEdge(at: Point, hull: readonly Point[]): { off: number; along: number } {
  let best = { off: hull.length === 0 ? 0 : Number.POSITIVE_INFINITY, along: 0 }
  let before = 0
  hull.forEach((from, i) => {
    const to = hull[(i + 1) % hull.length]!
    const length = distance(from, to)
    const share = length === 0 ? 0 : Math.min(1, Math.max(0, dot(minus(at, from), minus(to, from)) / length ** 2))
    const foot: Point = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]
    const off = distance(at, foot)
    if (off < best.off) best = { off, along: before + share * length }
    before += length
  })
  return best
}

export function minus([ax, ay]: Point, [bx, by]: Point): Point {
  return [ax - bx, ay - by]
}

export function dot([ax, ay]: Point, [bx, by]: Point): number {
  return ax * bx + ay * by
}

/** Convex hull by the monotone chain of A. M. Andrew (1979). Points inside an edge are no corners. */
function hullOf(points: Point[]): Point[] {
  const sorted = points.toSorted(([ax, ay], [bx, by]) => ax - bx || ay - by)
  const half = (from: Point[]) => {
    const chain: Point[] = []
    for (const at of from) {
      while (chain.length >= 2 && !turnsLeft(chain.at(-2)!, chain.at(-1)!, at)) chain.pop()
      if (chain.length === 0 || distance(chain.at(-1)!, at) > 0) chain.push(at)
    }
    return chain
  }
  const [lower, upper] = [half(sorted), half(sorted.toReversed())]
  return lower.length < 2 ? lower : [...lower.slice(0, -1), ...upper.slice(0, -1)]
}

function turnsLeft(a: Point, b: Point, c: Point): boolean {
  const [[ux, uy], [vx, vy]] = [minus(b, a), minus(c, b)]
  return ux * vy - uy * vx > HAIR * Math.hypot(ux, uy) * Math.hypot(vx, vy)
}

/** Where the hull would balance: many bolts close together do not draw it to them, as they would draw their mean. */
function middleOf(hull: Point[], area: number): Point {
  const [origin] = hull
  if (origin === undefined) return [0, 0]
  const span = Math.max(...hull.map((at) => distance(at, origin)))
  if (hull.length < 3 || area <= HAIR * span ** 2) {
    const far = hull.at(-1)!
    return [(origin[0] + far[0]) / 2, (origin[1] + far[1]) / 2]
  }
  let [x, y] = [0, 0]
  for (const i of numbered(hull.length)) {
    const [a, b] = [minus(hull[i]!, origin), minus(hull[(i + 1) % hull.length]!, origin)]
    const part = (a[0] * b[1] - b[0] * a[1]) / (6 * area)
    x += (a[0] + b[0]) * part
    y += (a[1] + b[1]) * part
  }
  return [origin[0] + x, origin[1] + y]
}

type Rectangle = Pick<Shape, 'along' | 'length' | 'width' | 'corners'>

/**
 * The smallest rectangle lies along one edge of the hull (H. Freeman and R. Shapira, 1975). Of equal ones (those along the sides of a triangle
 * are) the longest, then the one most nearly level.
 */
function rectangleOf(hull: Point[]): Rectangle {
  const all = hull.flatMap((from, i) => {
    const edge = minus(hull[(i + 1) % hull.length]!, from)
    const length = Math.hypot(...edge)
    return length === 0 ? [] : [rectangleAlong([edge[0] / length, edge[1] / length], hull)]
  })
  const span = Math.max(0, ...all.map(({ length }) => length))
  const best = first(
    numbered(all.length),
    HAIR,
    (i) => (all[i]!.length * all[i]!.width) / span ** 2,
    (i) => -all[i]!.length / span,
    (i) => -Math.abs(all[i]!.along[0]),
  )
  return best === undefined ? { along: [1, 0], length: 0, width: 0, corners: [...hull] } : all[best]!
}

function rectangleAlong(direction: Point, hull: Point[]): Rectangle {
  const across: Point = [-direction[1], direction[0]]
  const ends = (axis: Point) => {
    const values = hull.map((at) => dot(at, axis))
    return [Math.min(...values), Math.max(...values)] as const
  }
  const [[u0, u1], [v0, v1]] = [ends(direction), ends(across)]
  const corner = (u: number, v: number): Point => [u * direction[0] + v * across[0], u * direction[1] + v * across[1]]
  const [one, other] = [u1 - u0, v1 - v0]
  const isLong =
    one > other * (1 + HAIR) || (one >= other * (1 - HAIR) && Math.abs(direction[0]) >= Math.abs(across[0]))
  return {
    along: isLong ? direction : across,
    length: Math.max(one, other),
    width: Math.min(one, other),
    corners: [corner(u0, v0), corner(u1, v0), corner(u1, v1), corner(u0, v1)],
  }
}
