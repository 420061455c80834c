import type { Face, FaceAnswer, Unit } from '@gripbook/engine'
import { trayOf } from '@gripbook/print'
import { makeDocument } from '../document.ts'
import type { Fonts, PaperSize, Sheet } from '../sheet.ts'
import { words } from '../words.ts'
import { writeList } from './boardList.ts'
import { type BoardLayout, layOut, MARGIN, sheetsFor } from './layout.ts'
import { type BoardPlaces, boardPlaces, type Marks } from './places.ts'
import { shownHoles } from './shown.ts'
import { drawJoints, drawTile, holesOn, windowOn, writeFoot } from './tileDrawing.ts'

export type BoardFace = {
  face: Face
  /** What belongs; absent: the board shows what came out. */
  answer?: FaceAnswer
  /** Where the face has no places in mm: its marks on the photograph. */
  marks?: Marks
}

export type BoardOptions = {
  paper: PaperSize
  fonts: Fonts
  /** The date of the document: the only clock. */
  made: Date
  /** Show what came out even where it is settled what belongs. */
  asFound?: boolean
}

/** `no-holes`: there is nothing to stick a bolt through. `too-large`: more sheets than a board has, with the size of the face in mm. */
export type BoardFault =
  | { code: 'no-holes'; face: string }
  | { code: 'too-large'; face: string; sheets: number; width: number; height: number }

export type Board = { ok: true; bytes: Uint8Array } | { ok: false; fault: BoardFault }

/** Larger faces are places in another unit than mm, or a slip of the hand. */
export const MOST_SHEETS = 36

type Prepared = BoardFace & { places: BoardPlaces }

/**
 * The bolt board of faces of a unit as a PDF: each face at true scale, to stick its bolts through while the unit is apart. Every hole has its number, a
 * ring of its thread's size with a cross, room for the head, and beside it the bolt that belongs, or dashed the one that came out where that is open or
 * contradicted. A face larger than a sheet goes over several that overlap and are joined by crosses. A face whose places are only marks on a photograph is said not to
 * be to scale on every sheet.
 *
 * Every sheet carries a bar of 100 mm to check the printer with. After a face's sheets come its holes as a list, with the reasons, and its bolts at
 * true size. `faces`: at least one.
 */
export async function boltBoard(unit: Unit, faces: readonly BoardFace[], options: BoardOptions): Promise<Board> {
  const prepared: Prepared[] = []
  for (const each of faces) {
    const { face } = each
    if (face.holes.length === 0) return { ok: false, fault: { code: 'no-holes', face: face.id } }
    const places = boardPlaces(face, each.marks)
    const { sheets, content } = sheetsFor(face, places, options.paper)
    if (sheets > MOST_SHEETS) {
      const { width, height } = content
      return { ok: false, fault: { code: 'too-large', face: face.id, sheets, width, height } }
    }
    prepared.push({ ...each, places })
  }
  const names = faces.map(({ face }) => face.name ?? face.id)
  const { paper, fonts, made, asFound = false } = options
  const title = names.join(', ') + words.board.title(undefined, true)
  const footer = { left: unit.name ?? '', right: words.rules }
  const bytes = await makeDocument({ title, made, fonts, paper, margin: MARGIN, footer }, (sheet) => {
    for (const each of prepared) writeFace(sheet, unit, each, paper, asFound)
  })
  return { ok: true, bytes }
}

function writeFace(
  sheet: Sheet,
  unit: Unit,
  { face, answer, places }: Prepared,
  paper: PaperSize,
  asFound: boolean,
): void {
  const tray = trayOf(unit, face)
  const isComputed = answer !== undefined && !asFound
  const shown = shownHoles(face, tray, answer, asFound)
  const layout = layOut(shown, places, paper, sheet.pen)
  const name = face.name ?? face.id
  for (const tile of layout.used) {
    sheet.newPage(layout.landscape)
    const label = layout.used.length > 1 ? tile.name : undefined
    writeTitle(sheet, name, words.board.title(label, isComputed))
    sheet.paragraph(underTitle(layout, places, isComputed), {
      size: 8,
      bold: places.scale !== 'true',
    })
    const box = windowOn(sheet)
    const ids = holesOn(layout, tile).map(({ shown: { hole } }) => hole.id)
    sheet.figure(
      { alt: words.board.figure(name, label, ids), width: box.width, height: box.height, at: [box.x, box.y] },
      (pen) => drawTile(pen, layout, tile, box),
    )
    sheet.aside((pen) => drawJoints(pen, layout, tile, box))
    writeFoot(sheet, layout, tile, places.scale === 'true')
  }
  sheet.newPage(false)
  writeList(sheet, name, shown, tray, isComputed ? answer : undefined)
}

/** On one line: the window below it is at the same place on every sheet. A long name is cut; the list has it whole. */
function writeTitle(sheet: Sheet, name: string, rest: string): void {
  const type = { size: 18, bold: true }
  const room = sheet.right - sheet.left - sheet.pen.widthOf(rest, type)
  sheet.heading(1, sheet.pen.wrap(name, room, type, 1)[0]! + rest)
}

function underTitle({ style: { boltScale } }: BoardLayout, places: BoardPlaces, isComputed: boolean): string {
  const { scale, shows, noBolts } = words.board
  const bolts =
    boltScale === 0 ? noBolts : words.board.boltScale(boltScale === 1 ? 'at true size' : `at 1 : ${1 / boltScale}`)
  return [scale[places.scale], isComputed ? shows : '', bolts].filter((text) => text !== '').join(' ')
}
