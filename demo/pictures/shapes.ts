/** Outlines as signed distances: below 0 inside, above 0 outside, all in millimetres of the face. */
export type Shape = (x: number, y: number) => number
export type Place = readonly [number, number]

export function disc([cx, cy]: Place, radius: number): Shape {
  return (x, y) => Math.hypot(x - cx, y - cy) - radius
}

/** A box with rounded corners, its middle, its half width and half height. */
export function box([cx, cy]: Place, halfWidth: number, halfHeight: number, round: number): Shape {
  return (x, y) => {
    const dx = Math.abs(x - cx) - halfWidth + round
    const dy = Math.abs(y - cy) - halfHeight + round
    return Math.hypot(Math.max(dx, 0), Math.max(dy, 0)) + Math.min(Math.max(dx, dy), 0) - round
  }
}

/** A bar with round ends. */
export function bar([ax, ay]: Place, [bx, by]: Place, radius: number): Shape {
  const dx = bx - ax
  const dy = by - ay
  const square = dx * dx + dy * dy || 1
  return (x, y) => {
    const t = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / square))
    return Math.hypot(x - ax - dx * t, y - ay - dy * t) - radius
  }
}

/** A closed outline through corners. */
export function outline(corners: readonly Place[]): Shape {
  return (x, y) => {
    let nearest = Number.POSITIVE_INFINITY
    let inside = false
    for (let i = 0, j = corners.length - 1; i < corners.length; j = i++) {
      const [ax, ay] = corners[i]!
      const [bx, by] = corners[j]!
      const ex = bx - ax
      const ey = by - ay
      const t = Math.min(1, Math.max(0, ((x - ax) * ex + (y - ay) * ey) / (ex * ex + ey * ey)))
      nearest = Math.min(nearest, (x - ax - ex * t) ** 2 + (y - ay - ey * t) ** 2)
      if (ay > y !== by > y && x < ((bx - ax) * (y - ay)) / (by - ay) + ax) inside = !inside
    }
    return inside ? -Math.sqrt(nearest) : Math.sqrt(nearest)
  }
}

/** A piece of a ring: middle line of a radius, half its width, from one angle to another in degrees. */
export function arc([cx, cy]: Place, radius: number, half: number, from: number, to: number): Shape {
  const middle = ((from + to) / 2) * (Math.PI / 180)
  const spread = ((to - from) / 2) * (Math.PI / 180)
  return (x, y) => {
    const angle = Math.atan2(y - cy, x - cx) - middle
    const turned = Math.atan2(Math.sin(angle), Math.cos(angle))
    const held = Math.min(spread, Math.max(-spread, turned)) + middle
    return Math.hypot(x - cx - radius * Math.cos(held), y - cy - radius * Math.sin(held)) - half
  }
}

export function grown(shape: Shape, by: number): Shape {
  return (x, y) => shape(x, y) - by
}

/** All of the shapes, with a fillet where they meet. */
export function joined(shapes: readonly Shape[], fillet: number): Shape {
  return (x, y) => {
    let sum = Number.POSITIVE_INFINITY
    for (const shape of shapes) {
      const d = shape(x, y)
      const h = Math.max(0, fillet - Math.abs(sum - d)) / (fillet || 1)
      sum = Math.min(sum, d) - (Number.isFinite(sum) ? (h * h * fillet) / 4 : 0)
    }
    return sum
  }
}

/** The first shape without the second. */
export function without(shape: Shape, less: Shape): Shape {
  return (x, y) => Math.max(shape(x, y), -less(x, y))
}
