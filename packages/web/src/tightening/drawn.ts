/** What is drawn on the photograph: which part of the cover, its corners, and what a tap does to them. */
import type { Point } from '@gripbook/engine'
import type { Draft } from './draft.ts'
import { withCorner } from './outline.ts'

export const AREAS = ['openings', 'hollows', 'regions', 'lines'] as const
export type Area = (typeof AREAS)[number]

/** The outline, or one of a list. */
export type Target = { at: 'outline' } | { at: Area; index: number }

export function cornersOf(draft: Draft, target: Target): Point[] {
  if (target.at === 'outline') return draft.outline
  if (target.at === 'openings' || target.at === 'hollows') return draft[target.at][target.index] ?? []
  return draft[target.at][target.index]?.corners ?? []
}

/** The draft with other corners there; one past the end of its list is a new one. */
export function withCorners(draft: Draft, target: Target, corners: Point[]): Draft {
  if (target.at === 'outline') return { ...draft, outline: corners }
  const { at, index } = target
  if (at === 'openings' || at === 'hollows') return { ...draft, [at]: put(draft[at], index, corners) }
  if (at === 'regions')
    return {
      ...draft,
      regions: put(draft.regions, index, { thickness: '', ...draft.regions[index], corners }),
    }
  return { ...draft, lines: put(draft.lines, index, { name: '', ...draft.lines[index], corners }) }
}

export function without(draft: Draft, { at, index }: { at: Area; index: number }): Draft {
  return { ...draft, [at]: (draft[at] as unknown[]).filter((_, i) => i !== index) }
}

/** How many corners make it whole. */
export function leastCorners(target: Target): number {
  return target.at === 'lines' ? 2 : 3
}

/**
 * A tap on the ground. While an outline is drawn, corners come one behind the other; once it is closed a new one goes into the side beside it.
 * A line has two ends: a third tap moves the nearer one.
 */
export function withTap(corners: readonly Point[], target: Target, closed: boolean, at: Point): Point[] {
  if (target.at !== 'lines') return closed ? withCorner(corners, at) : [...corners, at]
  if (corners.length < 2) return [...corners, at]
  const [from, to] = corners as [Point, Point]
  return off(from, at) < off(to, at) ? [at, to] : [from, at]
}

function put<T>(list: readonly T[], index: number, item: T): T[] {
  return [...list.slice(0, index), item, ...list.slice(index + 1)]
}

const off = ([ax, ay]: Point, [bx, by]: Point) => Math.hypot(ax - bx, ay - by)
