/** Everything of a board that is decided before it is drawn: sheets, upright or on their side, where each label stands and how large bolts are drawn. */
import type { Face } from '@gripbook/engine'
import { threadOf } from '@gripbook/print'
import { paperSize } from '../base/measures.ts'
import { type SideView, sideView } from '../bolt/sideView.ts'
import type { Box, PaperSize, Pen, Place } from '../sheet.ts'
import { words } from '../words.ts'
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

/** Sizes of the bolts beside the holes, largest first; 0: no room for them. */
const SCALES = [1, 1 / 2, 1 / 3, 1 / 4, 0] as const

/** Where sheets may lie under the drawing, in shares of the room that is left, the middle first. */
const SHIFTS = Array.from({ length: 41 }, (_, i) => ((i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2)) / 40)

export const TYPE = {
  number: { size: 14, bold: true },
  name: { size: 9, bold: true },
  said: { size: 6.5 },
} as const
/** mm: widest number and widest words of a label; heights of its lines. */
const MOST = { number: 16, words: 34 }
const LINE = { number: 5.2, name: 3.6, said: 2.7, gap: 0.8 }
const NUMBER_GAP = 1.2

/** Lines of a label wider than this, mm, are cut; its bolt may be longer. */
export type LabelledHole = {
  shown: ShownHole
  at: Place
  /** Of the thread, mm. */
  diameter: number
  clear: number
  number: string
  numberWidth: number
  name: string
  said: string[]
  view: SideView | undefined
  box: Box
}

export type BoardLayout = {
  landscape: boolean
  tiling: Tiling
  /** Tiles with something on them. */
  used: Tile[]
  boltScale: number
  holes: LabelledHole[]
  outlines: Place[][]
}

/** The part of a sheet on which the face is drawn, mm. */
export function windowOf(paper: PaperSize, landscape: boolean): { width: number; height: number } {
  const { width, height } = paperSize(paper, landscape)
  return { width: width - 2 * MARGIN, height: height - 2 * MARGIN - FOOT - ABOVE - BELOW }
}

type Standing = Omit<LabelledHole, 'box' | 'numberWidth' | 'number' | 'name' | 'said'>

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
  const tries = [content, grown(content, 14)].flatMap((area) =>
    [false, true].map((landscape) => laidOut(standing, places, area, paper, landscape, pen)),
  )
  const [best] = tries.sort(
    (a, b) =>
      Number(a.amiss > 1) - Number(b.amiss > 1) ||
      a.used.length - b.used.length ||
      b.boltScale - a.boltScale ||
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
    return { shown: each, at, diameter, clear: clearOf(diameter, view), view }
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
  for (const boltScale of SCALES) {
    const written = standing.map((hole) => writtenOn(hole, places, boltScale, pen))
    const { boxes, amiss } = placeLabels(
      written.map((hole) => ({ at: hole.at, clear: hole.clear, ...hole.size })),
      grown(tiling.area, -1),
      places.outlines,
    )
    const holes = written.map(({ size: _, ...hole }, i): LabelledHole => ({ ...hole, box: boxes[i]! }))
    const centred = shifted(tiling, holes, places.outlines)
    const used = centred.tiles.filter(({ box }) => hasSomething(box, holes, places.outlines))
    const tried = { landscape, tiling: centred, used, boltScale, holes, outlines: places.outlines, amiss }
    if (amiss <= 1) return tried
    if (!best || amiss < best.amiss) best = tried
  }
  return best!
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
  const rings = holes.map(({ at: [x, y], clear }) => ({
    x: x - clear,
    y: y - clear,
    width: 2 * clear,
    height: 2 * clear,
  }))
  const boxes = [...rings, ...holes.map(({ box }) => box)]
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

/** The words of a label, cut to their room, and the size of all of it. */
function writtenOn(hole: Standing, places: BoardPlaces, boltScale: number, pen: Pick<Pen, 'widthOf' | 'wrap'>) {
  const { shown, view } = hole
  const isLoose = places.without.includes(shown.hole.id)
  const number = pen.wrap(shown.hole.id, MOST.number, TYPE.number, 1)[0]!
  const name = shown.name === '' ? '' : pen.wrap(shown.name, MOST.words, TYPE.name, 1)[0]!
  const all = [shown.said, isLoose ? words.placeNotKnown : ''].filter((text) => text !== '').join('; ')
  const said = all === '' ? [] : pen.wrap(all, MOST.words, TYPE.said, 2)
  const numberWidth = pen.widthOf(number, TYPE.number)
  const isDrawn = view !== undefined && boltScale > 0
  const bolt = isDrawn
    ? { width: (view.head + view.length) * boltScale, height: 2 * view.radius * boltScale }
    : undefined
  const width = Math.max(
    pen.widthOf(name, TYPE.name),
    ...said.map((line) => pen.widthOf(line, TYPE.said)),
    bolt?.width ?? 0,
  )
  const height = (name === '' ? 0 : LINE.name) + (bolt ? bolt.height + LINE.gap : 0) + said.length * LINE.said
  const size = { width: numberWidth + (width > 0 ? NUMBER_GAP + width : 0), height: Math.max(LINE.number, height) }
  return { ...hole, number, numberWidth, name, said, view: isDrawn ? view : undefined, size }
}

/** Places of the parts of a label, mm: base lines and the bolt's axis. */
export function partsOf({ box, numberWidth, name, said, view }: LabelledHole, boltScale: number) {
  const x = box.x + numberWidth + NUMBER_GAP
  const underName = box.y + (name === '' ? 0 : LINE.name)
  const bolt = view ? { x, y: underName + LINE.gap / 2 + view.radius * boltScale } : undefined
  const underBolt = bolt && view ? bolt.y + view.radius * boltScale + LINE.gap / 2 : underName
  return {
    number: { x: box.x, y: box.y + 4.2 },
    name: { x, y: box.y + 2.9 },
    bolt,
    said: said.map((text, i) => ({ text, x, y: underBolt + (i + 0.8) * LINE.said })),
  }
}

function hasSomething(tile: Box, holes: readonly LabelledHole[], outlines: readonly (readonly Place[])[]): boolean {
  const meets = (box: Box) =>
    box.x < tile.x + tile.width &&
    tile.x < box.x + box.width &&
    box.y < tile.y + tile.height &&
    tile.y < box.y + box.height
  if (
    holes.some(
      ({ at: [x, y], clear, box }) =>
        meets(box) || meets({ x: x - clear, y: y - clear, width: 2 * clear, height: 2 * clear }),
    )
  )
    return true
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

function grown({ x, y, width, height }: Box, by: number): Box {
  return { x: x - by, y: y - by, width: width + 2 * by, height: height + 2 * by }
}
