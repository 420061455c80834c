import type { Fault, FaultPath } from '../faults.ts'
import { intervalOf } from '../quantity/interval.ts'
import { readThread } from '../threads/readThread.ts'
import type { Bed, Cover, Face, Hole, Point } from '../unit.ts'
import { ON_A_LINE, pointsBetween } from './bow.ts'
import { coverOf } from './coverOf.ts'
import { bendingLength, firstStep } from './plate/condense.ts'
import { areaOf, boxOf, isInside, liesOn, meeting, sidesOf } from './plate/outline.ts'
import { areaOfPiece, cellsOf, spotAt } from './plate/pieces.ts'
import { gridOver } from './plate/plate.ts'

type Place = { code: string }
type Told = (
  path: FaultPath,
  fault: Fault extends infer F ? (F extends Place ? Omit<F, 'path'> : never) : never,
) => void

/** What keeps a face from being computed, each fault with its place; empty when there is nothing. `path`: of the face in its unit. */
export function coverFaults(face: Face, path: FaultPath): Fault[] {
  const faults: Fault[] = []
  const told: Told = (where, fault) => faults.push({ path: [...path, ...where], ...fault } as Fault)
  if (face.holes.length < 2) told(['holes'], { code: 'tightening-needs', missing: 'two bolts' })
  face.holes.forEach(({ at }, i) => {
    if (at === undefined) told(['holes', i], { code: 'tightening-needs', missing: 'place' })
  })
  if (face.bed === undefined) told([], { code: 'tightening-needs', missing: 'bed' })
  else if (!(bedEnds(face).lo > 0)) told(['bed', 'stiffness'], { code: 'bed-not-above-zero' })
  if (face.cover === undefined) told([], { code: 'tightening-needs', missing: 'cover' })
  else outlineFaults(face, told)
  sharedPlaces(face.holes, told)
  return faults
}

/** The ends of the bed's stiffness, N/mm³; an end that is missing is the other one. */
export function bedEnds(face: Face): { lo: number; hi: number } {
  const { lo, hi } = intervalOf(face.bed?.stiffness)
  return hi === Number.POSITIVE_INFINITY ? { lo, hi: lo } : { lo: lo === 0 ? hi : lo, hi }
}

function outlineFaults(face: Face, told: Told): void {
  const { bed, holes } = face
  const cover = coverOf(face)
  const openings = cover.openings ?? []
  const whole = [
    lineFaults(cover.outline, ['cover', 'outline'], told),
    ...openings.map((opening, i) => lineFaults(opening, ['cover', 'openings', i], told)),
    ...(cover.regions ?? []).map(({ outline }, i) => lineFaults(outline, ['cover', 'regions', i, 'outline'], told)),
    ...(bed?.hollows ?? []).map((hollow, i) => lineFaults(hollow, ['bed', 'hollows', i], told)),
  ]
  if (whole.includes(false)) return
  openings.forEach((opening, i) => {
    const path = ['cover', 'openings', i]
    const leaves = crossing(opening, cover.outline) ?? (isInside(opening[0]!, cover.outline) ? null : opening[0]!)
    if (leaves !== null) told(path, { code: 'opening-leaves-cover', near: leaves })
    openings.slice(0, i).forEach((other, j) => {
      const near = crossing(opening, other)
      if (near !== null) told(path, { code: 'openings-cross', other: j, near })
    })
  })
  holes.forEach(({ at }, i) => {
    if (at === undefined) return
    const opening = openings.findIndex((one) => isInside(at, one))
    if (!isInside(at, cover.outline) || sidesOf(cover.outline).some((side) => liesOn(at, side)))
      told(['holes', i, 'at'], { code: 'bolt-outside-cover', at })
    else if (opening >= 0) told(['holes', i, 'at'], { code: 'bolt-in-opening', at, opening })
  })
  cover.lines?.forEach(({ from, to }, i) => {
    const off = pointsBetween(from, to, ON_A_LINE).find((at) => spotAt(cover, [], at).thickness === 0)
    if (off !== undefined) told(['cover', 'lines', i], { code: 'line-leaves-cover', near: off })
  })
  if (seatedArea(cover, bed?.hollows) < LEAST_SEAT * areaOf(cover.outline))
    told(['bed', 'hollows'], { code: 'nothing-to-lie-on' })
  const { left, right, low, high } = boxOf(cover.outline)
  const { lo } = bedEnds(face)
  if (lo > 0 && bendingLength(cover, lo) < Math.max(right - left, high - low) / MOST_LENGTHS)
    told(['cover', 'thickness'], { code: 'cover-too-soft' })
  const stiffest = Math.max(cover.thickness, ...(cover.regions ?? []).map(({ thickness }) => thickness))
  if (lo > 0 && bendingLength({ ...cover, thickness: stiffest }, lo) > MOST_STEPS * firstStep(cover, lo))
    told(['cover', 'thickness'], { code: 'cover-too-stiff' })
}

/** A cover that lies on less than this share of its area lies on nothing. */
const LEAST_SEAT = 1e-3
/** How many bending lengths a cover may be long: beyond it no grid that can be computed follows its bend, and no bolt feels the next. */
const MOST_LENGTHS = 500
/** How many steps of the grid a bending length may be: its fourth power is how much stiffer the cover is than the bed, and beyond that the bed is lost in rounding. A steel block has 10. */
const MOST_STEPS = 1000
/** Cells along the cover when the area of its seat is summed. */
const CELLS = 24

function seatedArea(cover: Cover, hollows: Bed['hollows']): number {
  const { left, right, low, high } = boxOf(cover.outline)
  const step = Math.max(right - left, high - low) / CELLS
  return cellsOf(cover, hollows, gridOver(cover, step)).reduce((sum, cell) => {
    if ('whole' in cell) return sum + (cell.whole.seated ? step ** 2 : 0)
    const seated = cell.pieces.filter((piece) => piece.seated)
    return sum + seated.reduce((area, piece) => area + areaOfPiece(piece), 0)
  }, 0)
}

/** Whether a closed line of corners is a plain outline; its fault is told. A corner that is given twice in a row, or again at the end, does no harm. */
function lineFaults(corners: readonly Point[], path: FaultPath, told: Told): boolean {
  const sides = sidesOf(corners)
    .map((side, index) => ({ side, index }))
    .filter(({ side: [a, b] }) => a[0] !== b[0] || a[1] !== b[1])
  const boxes = sides.map(
    ({ side: [a, b] }) =>
      [Math.min(a[0], b[0]), Math.max(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[1], b[1])] as const,
  )
  for (let i = 0; i < sides.length; i++)
    for (let j = i + 1; j < sides.length; j++) {
      const [p, q] = [boxes[i]!, boxes[j]!]
      if (p[0] > q[1] || q[0] > p[1] || p[2] > q[3] || q[2] > p[3]) continue
      const [one, other] = [sides[i]!, sides[j]!]
      const near =
        j === i + 1
          ? foldedBack(one.side, other.side)
          : i === 0 && j === sides.length - 1
            ? foldedBack(other.side, one.side)
            : meeting(one.side, other.side)
      if (near === null) continue
      told([...path, one.index], { code: 'outline-crosses-itself', other: other.index, near })
      return false
    }
  if (areaOf(corners) > 1e-6) return true
  told(path, { code: 'outline-without-area' })
  return false
}

/** Two sides that share a corner cross only when the second runs back over the first. */
function foldedBack([a, b]: [Point, Point], [, c]: [Point, Point]): Point | null {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], c[0] - b[0], c[1] - b[1]]
  const size = Math.hypot(ux, uy) * Math.hypot(vx, vy)
  return Math.abs(ux * vy - uy * vx) <= 1e-9 * size && ux * vx + uy * vy < 0 ? b : null
}

/** A place where two outlines cross or touch. */
function crossing(a: readonly Point[], b: readonly Point[]): Point | null {
  for (const side of sidesOf(a))
    for (const other of sidesOf(b)) {
      const near = meeting(side, other)
      if (near !== null) return near
    }
  return null
}

/** Two bolts nearer than the thinner of them is thick cannot both be there. */
function sharedPlaces(holes: readonly Hole[], told: Told): void {
  holes.forEach(({ at, thread }, i) => {
    if (at === undefined) return
    const other = holes
      .slice(0, i)
      .find((one) => one.at !== undefined && apart(one.at, at) < Math.min(thickness(one.thread), thickness(thread)))
    if (other !== undefined)
      told(['holes', i, 'at'], {
        code: 'bolts-at-one-place',
        other: other.id,
        apart: apart(other.at!, at),
        least: Math.min(thickness(other.thread), thickness(thread)),
      })
  })
}

const apart = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1])

function thickness(thread: Hole['thread']): number {
  const read = readThread(Array.isArray(thread) ? thread[0]! : thread)
  return read.ok ? read.value.diameter : 1
}
