/** The holes of a board in words, and its bolts at true size. */
import type { FaceAnswer, Kind } from '@gripbook/engine'
import { boltName } from '@gripbook/print'
import { drawSideView, sideView } from '../bolt/sideView.ts'
import type { Sheet } from '../sheet.ts'
import { words } from '../words.ts'
import type { ShownHole } from './shown.ts'

export function writeList(
  sheet: Sheet,
  face: string,
  shown: readonly ShownHole[],
  tray: ReadonlyMap<string, Kind>,
  answer: FaceAnswer | undefined,
): void {
  const { columns } = words.board
  sheet.heading(2, words.board.list(face))
  sheet.table({
    summary: words.board.listSummary,
    columns: [
      { title: columns.hole, share: 3 },
      { title: columns.bolt, share: 5 },
      { title: columns.as, share: 6 },
      ...(answer ? [{ title: columns.why, share: 12 }] : []),
    ],
    rows: shown.map(({ hole, kind, as, said }) => [
      { text: hole.id, bold: true },
      kind ? boltName(kind.id, tray) : '',
      as === 'belongs' ? words.board.belongs : said === '' ? words.asFound : said,
      ...(answer ? [answer.holes[hole.id]?.why ?? ''] : []),
    ]),
  })
  const kinds = [...tray.values()]
  if (kinds.length === 0) return
  sheet.heading(2, words.board.trueSize)
  sheet.paragraph(words.board.layOn)
  for (const kind of kinds) writeBolt(sheet, kind, tray, shown)
}

function writeBolt(sheet: Sheet, kind: Kind, tray: ReadonlyMap<string, Kind>, shown: readonly ShownHole[]): void {
  const name = boltName(kind.id, tray)
  const holes = shown.filter((each) => each.kind?.id === kind.id).map(({ hole }) => hole.id)
  const view = sideView(kind)
  const long = view.head + view.length
  const height = 2 * view.radius + 3
  const room = sheet.right - sheet.left
  const notes = [view.broken ? words.board.lengthNotKnown : '', long > room ? words.board.cutOff : ''].filter(
    (note) => note !== '',
  )
  const lines = sheet.pen.wrap([words.board.bolt(name, holes), ...notes].join(', '), room, { size: 9 })
  sheet.need(lines.length * 4.2 + height + 3)
  sheet.paragraph(lines.join('\n'), { size: 9 })
  const alt = words.board.boltAlt(name)
  sheet.figure({ alt, height, width: Math.min(room, long + 1) }, (pen, { x, y }) => {
    const draw = () => drawSideView(pen, view, x + 0.2, y + view.radius + 0.5, 1)
    if (long > room) pen.clipped(x, y, room, height, draw)
    else draw()
  })
}
