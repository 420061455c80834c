/** The pages of one face: its photograph with the marks, each hole as found and as built, and how it was tightened. */
import { writeQuantity } from '@gripbook/engine'
import type { BuiltFace, BuiltHole, BuiltPass, Instrument } from '@gripbook/record'
import type { Box, Cell, Pen, Sheet } from '../sheet.ts'
import { boltWords, byWords, faceWords, sizesWords, timeWords, torqueWords, whoWords } from './figureWords.ts'
import type { Picture } from './picture.ts'
import { words } from './words.ts'

const MARK = { radius: 3.2, size: 8.5 }
const LABEL = { size: 7, high: 3.4 }
const MOST_HIGH = 82

export function writeFace(sheet: Sheet, face: BuiltFace, picture: Picture | undefined, withWork: boolean): void {
  // The photograph stays under its heading.
  if (picture instanceof Uint8Array) sheet.need(MOST_HIGH + 20)
  sheet.heading(2, faceWords(face))
  writePicture(sheet, face, picture)
  if (!withWork) writeFound(sheet, face)
  else {
    writeBuilt(sheet, face)
    writeTightened(sheet, face)
    const lines = [
      ...(face.closed === undefined
        ? [words.face.notClosed]
        : [words.face.closed(whoWords(face.closed.who), timeWords(face.closed.at))]),
      ...(face.released === undefined
        ? []
        : [words.face.released(whoWords(face.released.who), timeWords(face.released.at))]),
    ]
    sheet.paragraph(lines.join(' '))
  }
}

function writePicture(sheet: Sheet, face: BuiltFace, picture: Picture | undefined): void {
  const { photograph, holes } = face
  if (photograph === undefined) {
    sheet.paragraph(words.face.noPhotograph)
    return
  }
  if (picture === undefined || picture === 'absent' || picture === 'unreadable') {
    sheet.paragraph(picture === 'unreadable' ? words.face.photographUnreadable : words.face.photographAbsent)
    return
  }
  const byId = new Map(holes.map((hole) => [hole.id, hole]))
  sheet.picture(
    picture,
    {
      alt: words.face.photographAlt(
        faceWords(face),
        photograph.marks.map(({ hole }) => hole),
      ),
      most: MOST_HIGH,
    },
    (pen, box) => {
      for (const { hole, at } of photograph.marks)
        drawMark(pen, box, face, byId.get(hole), hole, placeIn(box, photograph, at))
    },
  )
  sheet.paragraph(
    words.face.marks(
      faceWords(face),
      holes.some(({ changed }) => changed === true),
    ),
    { size: 8 },
  )
}

/** A mark in pixels of the photograph as it was taken; what is printed may be a smaller picture of it. */
function placeIn(
  box: Box,
  { width, height }: { width: number; height: number },
  [x, y]: [number, number],
): [number, number] {
  return [box.x + (x / width) * box.width, box.y + (y / height) * box.height]
}

function drawMark(
  pen: Pen,
  box: Box,
  face: BuiltFace,
  hole: BuiltHole | undefined,
  id: string,
  [x, y]: [number, number],
): void {
  const changed = hole?.changed === true
  const [fill, ink] = changed ? ['#000000', '#ffffff'] : ['#ffffff', '#000000']
  pen.circle(x, y, MARK.radius + 0.7, { fill: changed ? '#ffffff' : '#000000' })
  pen.circle(x, y, MARK.radius, { fill })
  pen.text(id, x, y + 1.1, { size: id.length > 2 ? 6 : MARK.size, bold: true, fill: ink, anchor: 'middle' })
  if (!changed || hole?.found === undefined || hole.placed === undefined) return
  const [was, is] = sizesWords(face, [hole.found, hole.placed.kind])
  const label = words.face.now(was!, is!)
  const width = pen.widthOf(label, { size: LABEL.size, bold: true }) + 2
  const left = Math.min(Math.max(x - width / 2, box.x), box.x + box.width - width)
  const isLow = y + MARK.radius + 1 + LABEL.high > box.y + box.height
  const top = isLow ? y - MARK.radius - 1 - LABEL.high : y + MARK.radius + 1
  pen.rect(left, top, width, LABEL.high, { fill: '#ffffff', stroke: '#000000', width: 0.2 })
  pen.text(label, left + 1, top + 2.5, { size: LABEL.size, bold: true })
}

function writeBuilt(sheet: Sheet, face: BuiltFace): void {
  const say = words.face
  if (face.holes.length === 0) return
  sheet.heading(3, say.built)
  sheet.table({
    summary: say.builtSummary,
    columns: [
      { title: say.hole, share: 0.7 },
      { title: say.found, share: 2.3 },
      { title: say.placed, share: 2 },
      { title: say.change, share: 1.3 },
      { title: say.belongs, share: 3 },
    ],
    rows: face.holes.map((hole) => [
      hole.id,
      foundWords(face, hole),
      hole.placed === undefined
        ? { text: say.notPlaced, bold: true }
        : { text: boltWords(face, hole.placed.kind), bold: hole.changed === true },
      hole.changed === undefined ? say.unknown : { text: hole.changed ? say.moved : say.same, bold: hole.changed },
      belongsCell(face, hole),
    ]),
    size: 8.5,
  })
}

/** Of a unit file, which does not hold what went in. */
function writeFound(sheet: Sheet, face: BuiltFace): void {
  const say = words.face
  if (face.holes.length === 0) return
  sheet.table({
    summary: say.foundSummary,
    columns: [
      { title: say.hole, share: 1 },
      { title: say.found, share: 3 },
      { title: say.belongs, share: 5 },
    ],
    rows: face.holes.map((hole) => [
      hole.id,
      { text: foundWords(face, hole), bold: hole.belongs?.asFound === 'must change' },
      belongsCell(face, hole),
    ]),
    size: 8.5,
  })
}

function foundWords(face: BuiltFace, { found, condition }: BuiltHole): string {
  const bolt = found === undefined ? words.face.notKnown : boltWords(face, found)
  return condition === undefined ? bolt : `${bolt}: ${condition}`
}

function belongsCell(face: BuiltFace, { belongs, placed }: BuiltHole): Cell {
  const say = words.face
  if (belongs === undefined) return say.unknown
  if (belongs.verdict === 'contradicted') return { text: say.contradicted, bold: true }
  const may = belongs.may.map((kind) => boltWords(face, kind))
  if (placed !== undefined && !belongs.may.includes(placed.kind)) return { text: say.doesNot(may), bold: true }
  return may.length === 1 && placed !== undefined ? say.only : say.fits(may)
}

function writeTightened(sheet: Sheet, face: BuiltFace): void {
  const say = words.face
  const { order, holes } = face
  if (holes.length === 0) return
  sheet.heading(3, say.torques)
  if (order !== undefined)
    sheet.paragraph(
      [
        say.order(order.name, order.passes.length),
        ...order.passes.map(({ share, sequence }) => say.sequence(share, sequence)),
      ].join('. '),
      { size: 8.5 },
    )
  sheet.table({
    summary: say.torquesSummary,
    columns: [
      { title: say.hole, share: 0.6 },
      { title: say.wanted, share: 1.1 },
      { title: say.before, share: 1.6 },
      { title: say.final, share: 2.1 },
      { title: say.wrench, share: 3 },
      { title: say.who, share: 2.8 },
    ],
    rows: holes.map((hole) => tightenedRow(hole)),
    size: 8,
  })
}

function tightenedRow(hole: BuiltHole): Cell[] {
  const say = words.face
  const final = hole.passes.filter((pass) => pass.final).at(-1)
  const before = hole.passes.filter((pass) => pass !== final)
  const wanted = final?.wanted ?? hole.wanted
  const stages = [
    ...before.map(torqueWords),
    ...(hole.turns === undefined ? [] : [say.turns(hole.turns.turns, hole.turns.seated)]),
  ]
  return [
    hole.id,
    wanted === undefined ? say.unknown : writeQuantity(wanted, 'torque'),
    stages.length === 0 ? say.unknown : stages.join('; '),
    final === undefined ? { text: say.notTightened, bold: true } : finalCell(final, hole),
    final?.tool === undefined ? say.unknown : wrenchCell(final),
    final === undefined ? say.unknown : byWords(final),
  ]
}

function finalCell(final: BuiltPass, { witnessMark }: BuiltHole): Cell {
  const say = words.face
  const text = [
    torqueWords(final),
    ...(final.outOfBand ? [say.outOfBand] : []),
    ...(witnessMark === undefined ? [] : [say.witness]),
  ].join(', ')
  return { text, bold: final.outOfBand || final.byFeel }
}

/** By its number where it has one: its name stands among the wrenches. */
function wrenchWords({ name, number, calibratedUntil }: Instrument): string {
  return `${number ?? name}${calibratedUntil === undefined ? '' : `, ${words.face.until(calibratedUntil)}`}`
}

function wrenchCell({ tool, inCalibration, byFeel }: BuiltPass): Cell {
  if (tool === undefined) return words.face.unknown
  if (byFeel) return tool.name
  const out = inCalibration === false
  return { text: `${wrenchWords(tool)}${out ? `: ${words.face.outOfCalibration}` : ''}`, bold: out }
}
