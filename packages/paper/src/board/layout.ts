/** Everything of a board that is decided before it is drawn: sheets, upright or on their side, where each label stands and how large bolts are drawn. */
import type { Face } from '@gripbook/engine'
import { threadOf } from '@gripbook/print'
import { around, grown, meet } from '../base/boxes.ts'
import { paperSize } from '../base/measures.ts'
import { type SideView, sideView } from '../bolt/sideView.ts'
import type { Box, PaperSize, Pen, Place } from '../sheet.ts'
import { words } from '../words.ts'
import { LABEL_STYLES, type Label, type LabelStyle, type LabelWords, labelOf } from './label.ts'
import { placeLabels } from './labels.ts'
import type { BoardPlaces } from './places.ts'
import type { ShownHole } from './shown.ts'
import { overlapFor, type Tile, type Tiling, tilesOver } from './tiles.ts'

/** mm: from the paper's edge to anything, above and below the window for title and bar. */
export const MARGIN = 10
export const ABOVE = 16.5
export const BELOW = 17
const FOOT = 6.9

/** Room around a hole for the head of a bolt that is stuck through: what its head needs and a little more, at least this, mm. */
const CLEAR = { more: 1, least: 5 }
const USUAL_HEAD = 0.95

/** A label so far from its hole, mm, is looked for; with more than this share of such labels another style is tried. */
const FAR = { away: 9, share: 0.15 }

/** Where sheets may lie under the drawing, in shares of the room that is left, the middle first. */
const SHIFTS = Array.from({ length: 41 }, (_, i) => ((i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2)) / 40)

export type LabelledHole = {
  shown: ShownHole
  at: Place
  /** Of the thread, mm. */
  diameter: number
  /** Radius that the bolt's head needs. */
  clear: number
  label: Label
  /** Where the label stands. */
  box: Box
}

export type BoardLayout = {
  landscape: boolean
  tiling: Tiling
  /** Tiles with something on them. */
  used: Tile[]
  style: LabelStyle
  holes: LabelledHole[]
  outlines: Place[][]
}

/** The part of a sheet on which the face is drawn, mm. */
export function windowOf(paper: PaperSize, landscape: boolean): { width: number; height: number } {
  const { width, height } = paperSize(paper, landscape)
  return { width: width - 2 * MARGIN, height: height - 2 * MARGIN - FOOT - ABOVE - BELOW }
}

type Standing = Omit<LabelledHole, 'label' | 'box'> & { words: LabelWords }

/** Sheets that a face takes, whatever is written on it. */
export function sheetsFor(face: Face, places: BoardPlaces, paper: PaperSize): { sheets: number; content: Box } {
  const diameters = face.holes.map(({ thread }) => threadOf(thread).diameter)
  const standing = face.holes.map((hole, i) => ({
    at: places.holes.get(hole.id) ?? ([0, 0] as const),
    clear: clearOf(diameters[i]!, undefined),
  }))
  const content = contentOf(standing, places.outlines)
  const sheets = [false, true].map((landscape) => {
    const { width, height } = windowOf(paper, landscape)
    const { columns, rows } = tilesOver(content, width, height, overlapFor(diameters))
    return columns * rows
  })
  return { sheets: Math.min(...sheets), content }
}

export function layOut(
  shown: ShownHole[],
  places: BoardPlaces,
  paper: PaperSize,
  pen: Pick<Pen, 'widthOf' | 'wrap'>,
): BoardLayout {
  const standing = standingOf(shown, places)
  const content = contentOf(standing, places.outlines)
  const tried = (area: Box) => [false, true].map((landscape) => laidOut(standing, places, area, paper, landscape, pen))
  const tight = tried(content)
  // Labels that have no room inside the sheets that the holes need may have it on more of them.
  const tries = tight.every(({ amiss }) => amiss > 1) ? [...tight, ...tried(grown(content, 14))] : tight
  const [best] = tries.sort(
    (a, b) =>
      Number(a.amiss > 1) - Number(b.amiss > 1) ||
      a.used.length - b.used.length ||
      LABEL_STYLES.indexOf(a.style) - LABEL_STYLES.indexOf(b.style) ||
      a.amiss - b.amiss,
  )
  return best!
}

/** Holes whose place is not known stand in rows under the others. */
function standingOf(shown: ShownHole[], places: BoardPlaces): Standing[] {
  const known = [...places.holes.values()]
  const [left, below] = [Math.min(...known.map(([x]) => x)), Math.max(...known.map(([, y]) => y))]
  return shown.map((each) => {
    const view = each.kind ? sideView(each.kind) : undefined
    const { diameter } = threadOf(each.hole.thread)
    const i = places.without.indexOf(each.hole.id)
    const at = places.holes.get(each.hole.id) ?? ([left + (i % 4) * 42, below + 40 + Math.floor(i / 4) * 34] as const)
    const said = [each.said, i < 0 ? '' : words.placeNotKnown].filter((text) => text !== '').join('; ')
    const written = { number: each.hole.id, name: each.name, said, view }
    return { shown: each, at, diameter, clear: clearOf(diameter, view), words: written }
  })
}

function clearOf(diameter: number, view: SideView | undefined): number {
  return Math.max(CLEAR.least, (view?.radius ?? USUAL_HEAD * diameter) + CLEAR.more)
}

function contentOf(holes: readonly { at: Place; clear: number }[], outlines: readonly (readonly Place[])[]): Box {
  const corners = [
    ...holes.flatMap(({ at: [x, y], clear }): Place[] => [
      [x - clear, y - clear],
      [x + clear, y + clear],
    ]),
    ...outlines.flat(),
  ]
  const [xs, ys] = [corners.map(([x]) => x), corners.map(([, y]) => y)]
  const [x, y] = [Math.min(...xs), Math.min(...ys)]
  return grown({ x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y }, 0.5)
}

type Tried = BoardLayout & { amiss: number }

function laidOut(
  standing: Standing[],
  places: BoardPlaces,
  content: Box,
  paper: PaperSize,
  landscape: boolean,
  pen: Pick<Pen, 'widthOf' | 'wrap'>,
): Tried {
  const { width, height } = windowOf(paper, landscape)
  const tiling = tilesOver(content, width, height, overlapFor(standing.map(({ diameter }) => diameter)))
  let best: Tried | undefined
  for (const style of LABEL_STYLES) {
    const written = standing.map((hole) => ({ ...hole, label: labelOf(hole.words, style, pen) }))
    const { boxes, amiss } = placeLabels(
      written.map(({ at, clear, label }) => ({ at, clear, width: label.width, height: label.height })),
      grown(tiling.area, -1),
      places.outlines,
    )
    const holes = written.map(({ words: _, ...hole }, i): LabelledHole => ({ ...hole, box: boxes[i]! }))
    const moved = shifted(tiling, holes, places.outlines)
    const used = moved.tiles.filter(({ box }) => hasSomething(box, holes, places.outlines))
    const tried = { landscape, tiling: moved, used, style, holes, outlines: places.outlines, amiss }
    const far = holes.filter(({ at, clear, box }) => distanceTo(box, at) - clear > FAR.away).length
    if (amiss <= 1 && far <= FAR.share * holes.length) return tried
    if (!best || amiss < best.amiss - 0.01 || (amiss <= best.amiss + 0.01 && style.stacked)) best = tried
  }
  return best!
}

function distanceTo({ x, y, width, height }: Box, [px, py]: Place): number {
  return Math.hypot(Math.max(x - px, 0, px - x - width), Math.max(y - py, 0, py - y - height))
}

/**
 * The sheets moved under the drawing with all its labels: so that it lies in the middle of a single sheet, and so that the seams of several cut as little as
 * can be.
 */
function shifted(tiling: Tiling, holes: readonly LabelledHole[], outlines: readonly (readonly Place[])[]): Tiling {
  const { area, tiles, overlap } = tiling
  const all = contentOf(holes, [...outlines, ...holes.map(({ box }) => cornersOf(box))])
  const slack = { x: area.width - all.width, y: area.height - all.height }
  if (slack.x < 0 || slack.y < 0) return tiling
  const boxes = holes.flatMap(({ at, clear, box }) => [around(at, clear), box])
  const along = (axis: 'x' | 'y', size: 'width' | 'height'): number => {
    const seams = [...new Set(tiles.map(({ box }) => box[axis]))].filter((start) => start > area[axis] + 1)
    const cut = (start: number) =>
      boxes.filter((box) => seams.some((seam) => inside(start + seam - area[axis] + overlap / 2, box[axis], box[size])))
        .length
    // The middle first: of starts that cut as much, the first one stays.
    const starts = SHIFTS.map((share) => all[axis] - (0.5 + share) * slack[axis])
    return starts.reduce((best, start) => (cut(start) < cut(best) ? start : best))
  }
  const [x, y] = [along('x', 'width'), along('y', 'height')]
  const move = (box: Box): Box => ({ ...box, x: box.x + x - area.x, y: box.y + y - area.y })
  return { ...tiling, area: move(area), tiles: tiles.map((tile) => ({ ...tile, box: move(tile.box) })) }
}

function inside(place: number, start: number, length: number): boolean {
  return place > start - 1 && place < start + length + 1
}

function cornersOf({ x, y, width, height }: Box): Place[] {
  return [
    [x, y],
    [x + width, y + height],
  ]
}

function hasSomething(tile: Box, holes: readonly LabelledHole[], outlines: readonly (readonly Place[])[]): boolean {
  const meets = (box: Box) => meet(tile, box)
  if (holes.some(({ at, clear, box }) => meets(box) || meets(around(at, clear)))) return true
  return outlines.some((outline) =>
    outline.some(([x, y], i) => {
      const [x2, y2] = outline[(i + 1) % outline.length]!
      return meets({
        x: Math.min(x, x2),
        y: Math.min(y, y2),
        width: Math.abs(x - x2) + 0.01,
        height: Math.abs(y - y2) + 0.01,
      })
    }),
  )
}
