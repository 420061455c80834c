/** A face small enough for a page, its holes by their numbers and nothing else. */
import type { Face } from '@gripbook/engine'
import type { BoardPlaces } from '../board/places.ts'
import type { Box, Pen, Place } from '../sheet.ts'

/** Radius of a numbered ring, mm, and the room around all of them. */
const RING = 3.4
const NUMBER = { size: 9, bold: true } as const

export type Sketch = {
  /** mm of paper for one mm of the face. */ scale: number
  height: number
  draw: (pen: Pen, box: Box) => void
}

/** Fits into `width` × `most` mm; never larger than true. A number too wide for its ring is cut; the list has it whole. */
export function faceSketch(face: Face, { holes, without, outlines }: BoardPlaces, width: number, most: number): Sketch {
  const known = [...holes.values()]
  const below = Math.max(...known.map(([, y]) => y))
  const left = Math.min(...known.map(([x]) => x))
  const placed = new Map(holes)
  for (const [i, id] of without.entries()) placed.set(id, [left + i * 3 * RING, below + 5 * RING])
  const all = [...placed.values(), ...outlines.flat()]
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)]
  const [x0, y0] = [Math.min(...xs), Math.min(...ys)]
  const across = Math.max(...xs) - x0
  const down = Math.max(...ys) - y0
  const room = 2 * RING + 1
  const scale = Math.min(1, (width - room) / Math.max(across, 1), (most - room) / Math.max(down, 1))
  const height = down * scale + room
  return {
    scale,
    height,
    draw(pen, box) {
      const start: Place = [box.x + (box.width - across * scale) / 2, box.y + room / 2]
      const at = ([x, y]: Place): Place => [start[0] + (x - x0) * scale, start[1] + (y - y0) * scale]
      for (const outline of outlines) pen.area(outline.map(at), { stroke: '#6a6a6a', width: 0.35 })
      for (const { id } of face.holes) {
        const [x, y] = at(placed.get(id)!)
        pen.circle(x, y, RING, { stroke: '#000000', width: 0.35, fill: '#ffffff' })
        pen.text(pen.wrap(id, 2 * RING - 0.6, NUMBER, 1)[0]!, x, y + 1.15, { ...NUMBER, anchor: 'middle' })
      }
    },
  }
}
