import type { Mark, Picture } from '../marks.ts'
import { onScreen, type ScreenPoint, type View } from './view.ts'

/** Pixels of the picture between the two marks that are nearest to each other; Infinity for fewer than two. */
export function crowding(marks: readonly Mark[], { width, height }: Picture): number {
  let least = Number.POSITIVE_INFINITY
  for (let i = 0; i < marks.length; i++)
    for (let j = 0; j < i; j++) {
      const a = marks[i]!
      const b = marks[j]!
      least = Math.min(least, Math.hypot((a.x - b.x) * width, (a.y - b.y) * height))
    }
  return least
}

/** The hole whose mark a finger meant: the nearest one within `miss` screen pixels; null where there is none. */
export function nearestMark(
  marks: readonly Mark[],
  view: View,
  picture: Picture,
  at: ScreenPoint,
  miss: number,
): string | null {
  let found: string | null = null
  let least = miss
  for (const mark of marks) {
    const there = onScreen(view, picture, mark)
    const off = Math.hypot(there.x - at.x, there.y - at.y)
    if (off <= least) {
      least = off
      found = mark.hole
    }
  }
  return found
}
