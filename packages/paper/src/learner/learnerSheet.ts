import {
  type Face,
  type FaceAnswer,
  type Hole,
  intervalOf,
  type Kind,
  type Quantity,
  type Unit,
} from '@gripbook/engine'
import { boltName, intervalFigures, trayOf } from '@gripbook/print'
import type { Board } from '../board/boltBoard.ts'
import { boardPlaces, type Marks } from '../board/places.ts'
import { drawSideView, sideView } from '../bolt/sideView.ts'
import { makeDocument } from '../document.ts'
import type { Fonts, PaperSize, Sheet } from '../sheet.ts'
import { words } from '../words.ts'
import { faceSketch } from './faceSketch.ts'
import { type Question, questionsOf } from './questions.ts'

export type LearnerOptions = { paper: PaperSize; fonts: Fonts; made: Date; marks?: Marks }

const MARGIN = 15
/** mm: the face; the words between it and the questions; a bolt of the tray. */
const HIGH = { least: 45, most: 90, words: 33, bolt: 20 }
const IN_A_ROW = 4
const TO_WRITE = { line: 6.5, lines: 2 }
const READINGS = { size: 8.5 } as const
const RULE = { stroke: '#8a8a8a', width: 0.2 } as const

/**
 * A sheet for a learner as a PDF: the face, the bolts on the bench, what was measured, and questions with room to write; on a page of its own what belongs and
 * why, out of the placement answer. The face is drawn as large as there is room. Refused: a face without holes.
 */
export async function learnerSheet(
  unit: Unit,
  face: Face,
  answer: FaceAnswer,
  options: LearnerOptions,
): Promise<Board> {
  if (face.holes.length === 0) return { ok: false, fault: { code: 'no-holes', face: face.id } }
  const { paper, fonts, made, marks } = options
  const tray = trayOf(unit, face)
  const questions = questionsOf(face, tray, answer)
  const name = face.name ?? face.id
  const title = words.learner.title(name)
  const footer = { left: unit.name ?? '', right: words.rules }
  const bytes = await makeDocument({ title, made, fonts, paper, margin: MARGIN, footer }, (sheet) => {
    sheet.heading(1, title)
    writeWho(sheet)
    writeFace(sheet, face, marks, roomForFace(sheet, tray, questions))
    writeTray(sheet, tray)
    sheet.paragraph(words.learner.how, { size: 8.5 })
    writeQuestions(sheet, questions)
    sheet.newPage()
    writeAnswers(sheet, face, tray, answer, questions)
  })
  return { ok: true, bytes }
}

function writeWho(sheet: Sheet): void {
  const y = sheet.y + 5
  const middle = sheet.left + (sheet.right - sheet.left) * 0.65
  const { name, date } = words.learner
  for (const [text, x, end] of [
    [name, sheet.left, middle - 5],
    [date, middle, sheet.right],
  ] as const) {
    sheet.textAt(text, x, y, { size: 9 })
    sheet.aside((pen) =>
      pen.line(
        [
          [x + 12, y + 0.6],
          [end, y + 0.6],
        ],
        RULE,
      ),
    )
  }
  sheet.y = y + 4
}

/** What the rest of the page leaves for the face, so that it stands with its questions on one page where that can be. */
function roomForFace(sheet: Sheet, tray: ReadonlyMap<string, Kind>, questions: readonly Question[]): number {
  const trayHigh = tray.size === 0 ? 0 : 9 + Math.ceil(tray.size / IN_A_ROW) * 15
  const asked = questions.reduce((sum, question) => sum + heightOf(sheet, question), 0)
  return Math.min(HIGH.most, Math.max(HIGH.least, sheet.bottom - sheet.y - trayHigh - HIGH.words - asked))
}

function writeFace(sheet: Sheet, face: Face, marks: Marks | undefined, most: number): void {
  const places = boardPlaces(face, marks)
  const sketch = faceSketch(face, places, sheet.right - sheet.left, most)
  const { drawn, notToScale, figure } = words.learner
  const said = places.scale !== 'true' ? notToScale : `1 : ${Number((1 / sketch.scale).toFixed(1))}`
  sheet.figure(
    {
      alt: figure(
        face.name ?? face.id,
        face.holes.map(({ id }) => id),
      ),
      height: sketch.height,
    },
    sketch.draw,
  )
  sheet.gap(1)
  sheet.paragraph(drawn(said), { size: 7.5 })
}

/** The kinds in a row, as many as there is room for, to the largest common scale of 1 : 1, 1 : 1.5 and so on. */
function writeTray(sheet: Sheet, tray: ReadonlyMap<string, Kind>): void {
  const kinds = [...tray.values()]
  if (kinds.length === 0) return
  sheet.heading(3, words.learner.tray)
  const views = kinds.map((kind) => ({ kind, view: sideView(kind) }))
  const across = Math.max(1, Math.min(kinds.length, IN_A_ROW))
  const column = (sheet.right - sheet.left) / across
  const longest = Math.max(...views.map(({ view }) => view.head + view.length))
  const thickest = Math.max(...views.map(({ view }) => view.radius))
  const scale = Math.min(1, (column - 3) / longest, HIGH.bolt / (2 * thickest))
  const type = { size: 8.5 }
  const nameOf = (kind: Kind) => {
    const count = kind.count === undefined ? '' : `, ${words.learner.pieces(kind.count)}`
    return `${boltName(kind.id, tray)}${count}`
  }
  for (let from = 0; from < views.length; from += across) {
    const row = views.slice(from, from + across)
    const lines = row.map(({ kind }) => sheet.pen.wrap(nameOf(kind), column - 3, type, 2))
    const wordsHigh = Math.max(...lines.map((each) => each.length)) * 3.6
    const bolts = 2 * Math.max(...row.map(({ view }) => view.radius)) * scale
    const alt = words.learner.trayAlt(row.map(({ kind }) => nameOf(kind)))
    sheet.figure({ alt, height: wordsHigh + bolts + 3 }, (pen, { x, y }) => {
      for (const [i, { view }] of row.entries()) {
        for (const [n, line] of lines[i]!.entries()) pen.text(line, x + i * column, y + 3 + n * 3.6, type)
        drawSideView(pen, view, x + i * column + 0.2, y + wordsHigh + 1.2 + bolts / 2, scale)
      }
    })
  }
}

/** "Read there, mm: grip 20.9 ± 0.1, thread depth 15.2 ± 0.3": what a question is answered from. */
function readingsOf(hole: Hole): string {
  const { readings, read, nothingRead } = words.learner
  const names = ['grip', 'bracket', 'threadDepth', 'bottomDepth'] as const
  const figures = names.flatMap((name) => {
    const quantity: Quantity | undefined = hole[name]
    return quantity === undefined ? [] : [`${readings[name]} ${intervalFigures(intervalOf(quantity), 'mm')}`]
  })
  return figures.length === 0 ? nothingRead : `${read} ${figures.join(', ')}`
}

function writeQuestions(sheet: Sheet, questions: readonly Question[]): void {
  sheet.heading(2, words.learner.questions)
  for (const question of questions) {
    sheet.need(heightOf(sheet, question))
    sheet.paragraph(question.text, { bold: true })
    sheet.paragraph(readingsOf(question.hole), READINGS)
    sheet.aside((pen) => {
      for (let i = 1; i <= TO_WRITE.lines; i++) {
        const y = sheet.y + i * TO_WRITE.line - 1
        pen.line(
          [
            [sheet.left, y],
            [sheet.right, y],
          ],
          RULE,
        )
      }
    })
    sheet.y += TO_WRITE.lines * TO_WRITE.line + 2
  }
}

/** mm that a question takes with its readings and the lines to write on. */
function heightOf(sheet: Sheet, { text, hole }: Question): number {
  const room = sheet.right - sheet.left
  const lines = sheet.pen.wrap(text, room, { bold: true }).length * 4.6
  return lines + sheet.pen.wrap(readingsOf(hole), room, READINGS).length * 3.9 + 3 + TO_WRITE.lines * TO_WRITE.line + 2
}

function writeAnswers(
  sheet: Sheet,
  face: Face,
  tray: ReadonlyMap<string, Kind>,
  answer: FaceAnswer,
  questions: readonly Question[],
): void {
  const { answers, all } = words.learner
  const { columns } = words.board
  sheet.heading(1, answers(face.name ?? face.id))
  for (const question of questions) {
    sheet.heading(3, question.text)
    sheet.list(question.answer, { size: 9 })
  }
  sheet.heading(2, all)
  sheet.table({
    columns: [
      { title: columns.hole, share: 2 },
      { title: columns.bolt, share: 5 },
      { title: columns.why, share: 13 },
    ],
    rows: face.holes.map(({ id }) => {
      const here = answer.holes[id]
      return [
        { text: id, bold: true },
        (here?.may ?? []).map((kind) => boltName(kind, tray)).join(' / '),
        here?.why ?? '',
      ]
    }),
  })
}
