/** One sheet of a board: its part of the face, the marks that join it to the next, the bar that checks the printer. */
import { around, meet } from '../base/boxes.ts'
import { MM_PER_POINT } from '../base/measures.ts'
import { drawSideView } from '../bolt/sideView.ts'
import type { Box, Look, Pen, Place, Sheet } from '../sheet.ts'
import { words } from '../words.ts'
import { lineTo } from './labels.ts'
import { ABOVE, BELOW, type BoardLayout, type LabelledHole } from './layout.ts'
import type { Tile } from './tiles.ts'

const INK: Look = { stroke: '#000000', width: 0.3 }
const THIN: Look = { stroke: '#000000', width: 0.15 }
const QUIET: Look = { stroke: '#8a8a8a', width: 0.15 }
const PLAN = { width: 30, height: 15 }
const BAR = 100
/** Half a cross, mm, and where it may stand along a seam: from its end to its middle. */
const CROSS = 4
const ALONG = Array.from({ length: 20 }, (_, i) => 0.06 + i * 0.0225)

export function windowOn(sheet: Sheet): Box {
  return {
    x: sheet.left,
    y: sheet.top + ABOVE,
    width: sheet.right - sheet.left,
    height: sheet.bottom - BELOW - sheet.top - ABOVE,
  }
}

/** The face inside the window; `at` tells where a place of the board lies on the paper. */
export function drawTile(pen: Pen, layout: BoardLayout, tile: Tile, box: Box): void {
  const at = onPaper(tile, box)
  pen.clipped(box.x, box.y, box.width, box.height, () => {
    for (const outline of layout.outlines) pen.area(outline.map(at), { stroke: '#6a6a6a', width: 0.35 })
    const shown = layout.holes.filter((hole) => meet(tile.box, around(hole.at, hole.clear)) || meet(tile.box, hole.box))
    for (const hole of shown) drawLeader(pen, hole, isClose(hole, layout.holes), at)
    for (const hole of shown) drawHole(pen, hole, at)
    for (const hole of shown) if (meet(tile.box, hole.box)) drawLabel(pen, hole, tile.box, at)
  })
}

/** Holes whose ring lies wholly on the sheet. */
export function holesOn(layout: BoardLayout, { box }: Tile): LabelledHole[] {
  return layout.holes.filter(
    ({ at: [x, y], diameter: d }) =>
      x - d / 2 >= box.x && x + d / 2 <= box.x + box.width && y - d / 2 >= box.y && y + d / 2 <= box.y + box.height,
  )
}

function isClose(hole: LabelledHole, all: readonly LabelledHole[]): boolean {
  return all.some(
    (other) =>
      other !== hole &&
      Math.hypot(other.at[0] - hole.at[0], other.at[1] - hole.at[1]) < other.clear + hole.clear - 1e-6,
  )
}

function onPaper(tile: Tile, box: Box): (place: Place) => Place {
  return ([x, y]) => [box.x + x - tile.box.x, box.y + y - tile.box.y]
}

/** A ring where the bolt goes through, a cross in its middle, and the room of its head. */
function drawHole(pen: Pen, { at: place, diameter, clear }: LabelledHole, at: (place: Place) => Place): void {
  const [x, y] = at(place)
  pen.circle(x, y, clear, QUIET)
  pen.circle(x, y, diameter / 2, INK)
  drawCross(pen, [x, y], diameter / 2 + 1.5, THIN)
}

/** From the ring of the head's room; from the bolt's own ring where that room overlaps another's, so that no line seems to come from the neighbour. */
function drawLeader(
  pen: Pen,
  { at: place, clear, diameter, box }: LabelledHole,
  isClose: boolean,
  at: (place: Place) => Place,
): void {
  if (lineTo(box, { at: place, clear }) === undefined) return
  const line = lineTo(box, { at: place, clear: isClose ? diameter / 2 : clear })!
  pen.line(line.map(at), THIN)
}

/** Only what is seen of it: a word that the sheet's edge hides would still be found and read out there. */
function drawLabel(
  pen: Pen,
  { label: { texts, bolt }, box, shown }: LabelledHole,
  tile: Box,
  at: (place: Place) => Place,
): void {
  if (bolt) {
    const [x, y] = at([box.x + bolt.x, box.y + bolt.y])
    drawSideView(pen, bolt.view, x, y, bolt.scale, shown.as === 'as found')
  }
  for (const { text, x, y, type } of texts) {
    const height = type.size * MM_PER_POINT
    const line = { x: box.x + x, y: box.y + y - 0.75 * height, width: pen.widthOf(text, type), height: 0.75 * height }
    if (meet(tile, line)) pen.text(text, ...at([box.x + x, box.y + y]), type)
  }
}

/** Crosses in the middle of each overlap, at the same places of the board on both sheets, and the line to cut along. */
export function drawJoints(pen: Pen, { used, holes, tiling: { overlap } }: BoardLayout, tile: Tile, box: Box): void {
  const at = onPaper(tile, box)
  const neighbour = (column: number, row: number) =>
    used.find((one) => one.column === tile.column + column && one.row === tile.row + row)
  const seams = [
    { other: neighbour(1, 0), upright: true, far: true },
    { other: neighbour(-1, 0), upright: true, far: false },
    { other: neighbour(0, 1), upright: false, far: true },
    { other: neighbour(0, -1), upright: false, far: false },
  ]
  for (const { other, upright, far } of seams) {
    if (!other) continue
    const { x, y, width, height } = tile.box
    const middle = upright
      ? x + (far ? width - overlap / 2 : overlap / 2)
      : y + (far ? height - overlap / 2 : overlap / 2)
    const along = (share: number): Place => at(upright ? [middle, y + share * height] : [x + share * width, middle])
    pen.line([along(0), along(1)], { ...THIN, dash: [2, 2] })
    const isFree = (share: number) =>
      isClear(holes, upright ? [middle, y + share * height] : [x + share * width, middle])
    const first = (shares: number[]) => shares.find(isFree) ?? shares[0]!
    drawJoint(pen, along(first(ALONG)))
    drawJoint(pen, along(first(ALONG.map((share) => 1 - share))))
    const [cx, cy] = along(first(ALONG.toReversed()))
    pen.turned(upright ? -90 : 0, cx, cy, () =>
      pen.text(words.board.joins(other.name), 0, far ? -1.2 : 3.2, { size: 7, anchor: 'middle' }),
    )
  }
}

/** Whether a cross at a place of the board lies on no hole and no label. */
function isClear(holes: readonly LabelledHole[], [x, y]: Place): boolean {
  const off = (box: Box) =>
    x < box.x - CROSS || x > box.x + box.width + CROSS || y < box.y - CROSS || y > box.y + box.height + CROSS
  return holes.every(({ at: [cx, cy], clear, box }) => Math.hypot(x - cx, y - cy) > clear + CROSS && off(box))
}

function drawJoint(pen: Pen, [x, y]: Place): void {
  pen.circle(x, y, 2, INK)
  drawCross(pen, [x, y], CROSS, INK)
}

function drawCross(pen: Pen, [x, y]: Place, arm: number, look: Look): void {
  pen.line(
    [
      [x - arm, y],
      [x + arm, y],
    ],
    look,
  )
  pen.line(
    [
      [x, y - arm],
      [x, y + arm],
    ],
    look,
  )
}

/** The bar with its words, and where this sheet lies among the others. */
export function writeFoot(sheet: Sheet, layout: BoardLayout, tile: Tile, isToScale: boolean): void {
  const [x, y] = [sheet.left, sheet.bottom - BELOW + 3]
  sheet.figure({ alt: words.board.barAlt, width: BAR, height: 8, at: [x, y] }, (pen) => {
    pen.rect(x, y, BAR, 1.2, { fill: '#000000' })
    for (let mm = 0; mm <= BAR; mm += 10) {
      const inside = Math.min(Math.max(mm, 0.1), BAR - 0.1)
      pen.line(
        [
          [x + inside, y],
          [x + inside, y + (mm % 50 === 0 ? 4 : 2.6)],
        ],
        { stroke: '#000000', width: 0.2 },
      )
    }
    pen.text('0', x, y + 7, { size: 7.5 })
    pen.text('50', x + BAR / 2, y + 7, { size: 7.5, anchor: 'middle' })
    pen.text('100 mm', x + BAR, y + 7, { size: 7.5, anchor: 'end' })
  })
  const isTiled = layout.used.length > 1
  const left = x + BAR + 6
  const room = sheet.right - left - (isTiled ? PLAN.width + 4 : 0)
  const texts = [isToScale ? words.board.bar : words.board.barNotToScale, ...(isTiled ? [words.board.join] : [])]
  const type = { size: 7.5 }
  const lines = texts.flatMap((text) => sheet.pen.wrap(text, room, type))
  for (const [i, line] of lines.entries()) sheet.textAt(line, left, y + 2 + i * 3.1, type)
  if (isTiled) writePlan(sheet, layout, tile, { x: sheet.right - PLAN.width, y: y - 1, ...PLAN })
}

function writePlan(sheet: Sheet, { tiling, used, holes }: BoardLayout, tile: Tile, box: Box): void {
  const { columns, rows, area } = tiling
  const scale = Math.min(box.width / area.width, box.height / area.height)
  const left = box.x + box.width - area.width * scale
  const at = ([x, y]: Place): Place => [left + (x - area.x) * scale, box.y + (y - area.y) * scale]
  sheet.figure(
    { alt: words.board.plan(tile.name, columns, rows), width: box.width, height: box.height, at: [box.x, box.y] },
    (pen) => {
      const framed = (one: Tile, look: Look) =>
        pen.rect(...at([one.box.x, one.box.y]), one.box.width * scale, one.box.height * scale, look)
      framed(tile, { fill: '#d0d0d0' })
      for (const one of used) framed(one, THIN)
      for (const one of used)
        pen.text(one.name, ...at([one.box.x + one.box.width / 2, one.box.y + one.box.height * 0.62]), {
          size: 6,
          anchor: 'middle',
          fill: '#6a6a6a',
        })
      for (const { at: place } of holes) pen.circle(...at(place), 0.35, { fill: '#000000' })
      pen.rect(...at([tile.box.x, tile.box.y]), tile.box.width * scale, tile.box.height * scale, INK)
    },
  )
}
