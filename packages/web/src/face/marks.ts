/** What the marks on the photograph show: which question was picked, and how each hole stands to it. */
import type { Face, FaceAnswer, Hole } from '@gripbook/engine'
import type { FaceWork } from '@gripbook/record'
import { isMoved, movesLeft, rightlyPut } from './lead.ts'

export const QUESTIONS = ['came out', 'belongs', 'to do'] as const
export type Question = (typeof QUESTIONS)[number]

/** The shape of a mark; each has its own outline, so that no colour is needed to tell them apart. */
export type Shape = 'plain' | 'noted' | 'settled' | 'open' | 'contradicted'

export type Badge = 'swap' | 'measure' | 'missing' | 'check'

export type Mark = {
  hole: string
  /** Share of the picture's width and height, 0 to 1. */
  x: number
  y: number
  shape: Shape
  badge: Badge | null
  /** Kinds whose short names stand under the mark; or what stands there in place of them. */
  under: readonly string[] | 'empty' | 'not noted' | 'none fits' | 'no kinds'
  /** Nothing of this hole answers the question. */
  dim: boolean
  /** What stands in the mark in place of its hole, and what a screen reader is told in place of its verdict. */
  number?: string
  said?: string
}

/** Pixels of the sheet on which holes are marked while there is no photograph. */
export const BLANK = { width: 1600, height: 1200 }

export type Picture = { width: number; height: number; photograph?: string; pixelsPerMillimetre?: number }

export function pictureOf(work: FaceWork | undefined): Picture {
  return work?.photograph?.value ?? BLANK
}

/** Holes that a person should look at now, and why. Contradictions lead. */
export function toDoOf(answer: FaceAnswer | null, work?: FaceWork): Map<string, Badge> {
  const todo = new Map<string, Badge>()
  if (answer === null) return todo
  const put = (hole: string, badge: Badge) => todo.has(hole) || todo.set(hole, badge)
  for (const conflict of [answer.conflict, ...(answer.furtherConflicts ?? [])])
    for (const hole of conflict?.holes ?? []) put(hole, 'check')
  for (const round of movesLeft(answer, work))
    for (const move of round) if (!isMoved(move, work)) put(move.hole, 'swap')
  for (const { hole } of answer.wanted) put(hole, 'missing')
  const next = answer.next?.reading
  if (next?.place === 'hole') put(next.of, 'measure')
  return todo
}

/**
 * A mark in millimetres of the face, x to the right and y upwards from the photograph's lower left corner, to a hundredth; `scale` is pixels to a
 * millimetre. The photograph is taken as seen straight from above.
 */
export function millimetresAt([x, y]: readonly [number, number], height: number, scale: number): [number, number] {
  const rounded = (pixels: number) => Math.round((pixels / scale) * 100) / 100
  return [rounded(x), rounded(height - y)]
}

/** Every hole that has a place on the picture, as its mark. */
export function marksOf(
  face: Pick<Face, 'holes'>,
  work: FaceWork | undefined,
  answer: FaceAnswer | null,
  question: Question,
): Mark[] {
  const picture = pictureOf(work)
  const todo = toDoOf(answer, work)
  const places = placesOf(face, work, picture)
  return face.holes.flatMap((hole) => {
    const place = places.get(hole.id)
    if (place === undefined) return []
    return [
      { hole: hole.id, x: place[0], y: place[1], ...lookOf(hole, work, answer, question, todo.get(hole.id) ?? null) },
    ]
  })
}

function lookOf(
  hole: Hole,
  work: FaceWork | undefined,
  answer: FaceAnswer | null,
  question: Question,
  todo: Badge | null,
): Pick<Mark, 'shape' | 'badge' | 'under' | 'dim'> {
  if (question === 'came out') {
    const { asFound } = hole
    const under = asFound === undefined ? 'not noted' : asFound === 'none' ? 'empty' : [asFound]
    return { shape: asFound === undefined ? 'plain' : 'noted', badge: null, under, dim: false }
  }
  const here = answer?.holes[hole.id]
  if (here === undefined) return { shape: 'plain', badge: null, under: 'no kinds', dim: false }
  const wrong = here.asFound?.verdict === 'must change' && rightlyPut(here, work?.holes[hole.id]) === null
  const under = here.may.length > 0 ? likeliestFirst(here.may, here.likely) : 'none fits'
  const badge = question === 'to do' ? todo : wrong && here.verdict !== 'contradicted' ? 'swap' : null
  return { shape: here.verdict, badge, under, dim: question === 'to do' && todo === null }
}

function likeliestFirst(may: readonly string[], likely: Readonly<Record<string, number>>): string[] {
  return [...may].sort((a, b) => (likely[b] ?? 0) - (likely[a] ?? 0))
}

/** Where the holes are on the picture, as shares of it. A face that came from a file has no marks: its holes are laid out by their millimetres. */
export function placesOf(
  face: Pick<Face, 'holes'>,
  work: FaceWork | undefined,
  picture: Picture,
): Map<string, [number, number]> {
  const places = new Map<string, [number, number]>()
  const rest: Hole[] = []
  for (const hole of face.holes) {
    const mark = work?.holes[hole.id]?.mark?.value
    if (mark) places.set(hole.id, [mark[0] / picture.width, mark[1] / picture.height])
    else rest.push(hole)
  }
  if (places.size > 0 && picture.photograph !== undefined) return places
  const known = rest.filter((hole) => hole.at !== undefined)
  const xs = known.map(({ at }) => at![0])
  const ys = known.map(({ at }) => at![1])
  const wide = Math.max(1, Math.max(...xs) - Math.min(...xs))
  const high = Math.max(1, Math.max(...ys) - Math.min(...ys))
  const scale = Math.min((0.8 * picture.width) / wide, (0.8 * picture.height) / high)
  for (const { id, at } of known)
    places.set(id, [
      0.5 + ((at![0] - Math.min(...xs) - wide / 2) * scale) / picture.width,
      0.5 - ((at![1] - Math.min(...ys) - high / 2) * scale) / picture.height,
    ])
  // What has no place at all lies in a row at the bottom edge, where it can be picked up and put where it belongs.
  const unplaced = rest.filter((hole) => hole.at === undefined)
  unplaced.forEach(({ id }, i) => {
    places.set(id, [(i + 0.5) / unplaced.length, 0.96])
  })
  return places
}

/**
 * The next number of a hole: one above the highest that was ever given on this face, so that no number ever means two holes. `given` is the
 * last one that this page has given and may not have read back yet: fingers are quicker than disks.
 */
export function nextHole(entries: readonly { type: string; body: unknown }[], face: string, given = 0): number {
  let highest = given
  for (const { type, body } of entries) {
    const { face: of, hole } = body as { face?: string; hole?: string }
    if (type === 'hole-marked' && of === face && hole !== undefined && /^\d{1,6}$/.test(hole))
      highest = Math.max(highest, Number(hole))
  }
  return highest + 1
}
