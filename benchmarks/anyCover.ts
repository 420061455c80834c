/** Covers as a seed draws them: outlines of five kinds, 6 to 24 bolts, some with openings, hollows below and thicker parts; hand-snug bolts over soft to hard beds. */
import { type Random, random } from '../packages/engine/src/placement/testing/random.ts'
import { distance } from '../packages/engine/src/tightening/orders/places.ts'
import { onEdge } from '../packages/engine/src/tightening/orders/shape.ts'
import { areaOf, boxOf, isInside, sidesOf } from '../packages/engine/src/tightening/plate/outline.ts'
import type { Bed, Cover, Point, Unit } from '../packages/engine/src/unit.ts'

const SHAPES = ['rectangular', 'L', 'U', 'round', 'irregular'] as const

type Shape = (typeof SHAPES)[number]
export type AnyCover = {
  shape: Shape
  unit: Unit
  face: Unit['faces'][number]
  cover: Cover
  bed: Bed
  points: Point[]
}

/** From the edge to the middle of a bolt, and between two bolts at least, mm. */
const EDGE = 10
const APART = 16
/** mm²: no part of a cover is thicker only so far. */
const SLIVER = 100

/** The shapes come in turn. `most` bolts at most. */
export function anyCover(seed: number, most = 24): AnyCover {
  const draw = random(seed)
  const shape = SHAPES[seed % SHAPES.length]!
  const outline = outlineOf(shape, draw)
  const points = boltsIn(shape, outline, draw.whole(6, most), draw)
  const thickness = draw.between(4, 14)
  const openings = draw.chance(0.3) ? [holeIn(outline, points, draw, 16)] : []
  const hollows = draw.chance(0.4) ? [holeIn(outline, [...points, ...openings.flat()], draw, 25)] : []
  const regions = draw.chance(0.4)
    ? [{ outline: partOf(outline, draw), thickness: thickness * draw.between(1.2, 2) }]
    : []
  const soft = 10 ** draw.between(0, 2.7)
  const bed: Bed = {
    stiffness: draw.chance(1 / 3) ? { atLeast: soft, atMost: Math.min(500, soft * draw.between(2, 10)) } : soft,
    ...(hollows.length > 0 ? { hollows } : {}),
  }
  const cover: Cover = {
    outline,
    thickness,
    ...(openings.length > 0 ? { openings } : {}),
    ...(regions.some((region) => areaOf(region.outline) > SLIVER) ? { regions } : {}),
  }
  const face = {
    id: 'cover',
    holes: points.map((at, j) => ({ id: String(j + 1), thread: 'M6', at })),
    cover,
    bed,
    clamp: 8_000,
    boltStiffness: draw.between(100_000, 300_000),
    snug: true,
  }
  return { shape, unit: { gripbook: 'unit/1', faces: [face] }, face, cover, bed, points }
}

function outlineOf(shape: Shape, draw: Random): Point[] {
  const [width, height] = [draw.between(140, 260), draw.between(100, 180)]
  switch (shape) {
    case 'rectangular':
      return [
        [0, 0],
        [width, 0],
        [width, height],
        [0, height],
      ]
    case 'L': {
      const [x, y] = [width * draw.between(0.35, 0.6), height * draw.between(0.4, 0.6)]
      return [
        [0, 0],
        [width, 0],
        [width, y],
        [x, y],
        [x, height],
        [0, height],
      ]
    }
    case 'U': {
      const [left, right] = [width * draw.between(0.28, 0.4), width * draw.between(0.6, 0.72)]
      const low = height * draw.between(0.4, 0.6)
      return [
        [0, 0],
        [width, 0],
        [width, height],
        [right, height],
        [right, low],
        [left, low],
        [left, height],
        [0, height],
      ]
    }
    case 'round':
      return onEllipse(
        Array.from({ length: 48 }, (_, k) => k / 48),
        height / 2,
        height / 2,
      )
    case 'irregular': {
      const corners = draw.whole(5, 9)
      return onEllipse(
        Array.from({ length: corners }, (_, k) => (k + draw.between(-0.3, 0.3)) / corners),
        width / 2,
        height / 2,
      )
    }
  }
}

/** Places on an ellipse at shares of a whole turn. */
function onEllipse(turns: readonly number[], a: number, b: number): Point[] {
  return turns.map((turn) => [a * Math.cos(2 * Math.PI * turn), b * Math.sin(2 * Math.PI * turn)])
}

/** Round the rim about evenly, evenly on a circle where the cover is round; of covers that are not round every third has one or two bolts inside. */
function boltsIn(shape: Shape, outline: readonly Point[], count: number, draw: Random): Point[] {
  const rim = rimOf(outline)
  const inner = shape !== 'round' && draw.chance(1 / 3) ? draw.whole(1, 2) : 0
  const around = count - inner
  const jitter = shape === 'round' ? 0 : 0.25
  const points: Point[] = []
  for (let k = 0; k < around; k++) {
    const share = (k + draw.between(-jitter, jitter) + 1) / around
    const at = rim[Math.floor(share * rim.length) % rim.length]!
    if (points.every((other) => distance(at, other) >= APART)) points.push(at)
  }
  for (let k = 0; k < inner; k++) {
    const at = roomiest(outline, points, draw)
    if (at.room >= APART) points.push(at.at)
  }
  return points
}

/** Places at bolt's distance from the edge, 1 mm apart, once round. */
function rimOf(outline: readonly Point[]): Point[] {
  return sidesOf(outline).flatMap(([a, b]) => {
    const length = distance(a, b)
    const [ux, uy] = [(b[0] - a[0]) / length, (b[1] - a[1]) / length]
    return Array.from(
      { length: Math.ceil(length) },
      (_, k): Point => [a[0] + k * ux - EDGE * uy, a[1] + k * uy + EDGE * ux],
    ).filter((at) => isInside(at, outline) && onEdge(at, outline).off >= 0.99 * EDGE)
  })
}

/** Of some places by chance the one farthest from all bolts and from the edge, and how far, mm. */
function roomiest(outline: readonly Point[], points: readonly Point[], draw: Random): { at: Point; room: number } {
  const { left, right, low, high } = boxOf(outline)
  let best = { at: points[0]!, room: 0 }
  for (let k = 0; k < 200; k++) {
    const at: Point = [draw.between(left, right), draw.between(low, high)]
    if (!isInside(at, outline)) continue
    const room = Math.min(onEdge(at, outline).off, ...points.map((other) => distance(at, other)))
    if (room > best.room) best = { at, room }
  }
  return best
}

/** Six corners that keep clear of the edge and of given places, of `most` mm radius at most. */
function holeIn(outline: readonly Point[], clear: readonly Point[], draw: Random, most: number): Point[] {
  const { at, room } = roomiest(outline, clear, draw)
  const radius = Math.min(most, room * 0.7)
  return onEllipse(
    [0, 1, 2, 3, 4, 5].map((k) => k / 6),
    radius,
    radius * draw.between(0.6, 1),
  ).map(([x, y]) => [at[0] + x, at[1] + y])
}

/** A rectangle somewhere on the cover; what of it lies off the cover does not count. */
function partOf(outline: readonly Point[], draw: Random): Point[] {
  const [x, y] = draw.pick(outline)
  const [toX, toY] = draw.pick(outline.filter((corner) => corner[0] !== x && corner[1] !== y))
  const shares = [draw.between(0.1, 0.4), draw.between(0.5, 0.9)] as const
  const [x0, x1] = shares.map((share) => x + share * (toX - x)) as [number, number]
  const [y0, y1] = shares.map((share) => y + share * (toY - y)) as [number, number]
  return [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ]
}
