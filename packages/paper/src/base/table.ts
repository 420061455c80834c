import type { Cell, Table } from '../sheet.ts'
import { lineHeight, MM_PER_POINT } from './measures.ts'
import type { Element } from './tags.ts'
import type { Writing } from './writing.ts'

const PADDING = { x: 1.2, y: 0.9 }
const RULE = { stroke: '#000000', width: 0.35 }
const HAIRLINE = { stroke: '#9a9a9a', width: 0.15 }

type Laid = { lines: string[]; bold: boolean; fill: string }

/** A table that breaks over pages: between rows, or inside a row that is higher than a page. Its head is repeated for the eye. */
export function writeTable(writing: Writing, table: Table): void {
  const { tags, pen } = writing
  const { left, right } = writing.format
  const size = table.size ?? 9
  const rowHeads = table.rowHeads ?? true
  const shares = table.columns.reduce((sum, { share }) => sum + share, 0)
  const widths = table.columns.map(({ share }) => ((right - left) * share) / shares)
  const starts = widths.map((_, i) => left + widths.slice(0, i).reduce((sum, width) => sum + width, 0))
  const lay = (cell: Cell, i: number, bold: boolean): Laid => {
    const { text, fill = '#000000', ...rest } = typeof cell === 'string' ? { text: cell } : cell
    const isBold = rest.bold ?? bold
    return { lines: pen.wrap(text, widths[i]! - 2 * PADDING.x, { size, bold: isBold }), bold: isBold, fill }
  }
  const line = lineHeight(size)
  const heightOf = (lines: number) => lines * line + 2 * PADDING.y

  /** Lines `from` to `to` of each cell at the place of writing; `mark` ties a cell to its element. */
  const drawRow = (cells: Laid[], from: number, to: number, mark: (i: number, draw: () => void) => void) => {
    for (const [i, { lines, bold, fill }] of cells.entries()) {
      const shown = lines.slice(from, to)
      const isEnd = table.columns[i]?.align === 'end'
      const x = isEnd ? starts[i]! + widths[i]! - PADDING.x : starts[i]! + PADDING.x
      if (shown.length === 0) continue
      mark(i, () => {
        for (const [n, text] of shown.entries())
          pen.text(
            isEnd || from + n === lines.length - 1 ? text : `${text} `,
            x,
            writing.y + PADDING.y + n * line + size * MM_PER_POINT,
            {
              size,
              bold,
              fill,
              anchor: isEnd ? 'end' : 'start',
            },
          )
      })
    }
    writing.y += heightOf(to - from)
  }
  const rule = (look: { stroke: string; width: number }) =>
    tags.aside(() =>
      pen.line(
        [
          [left, writing.y],
          [right, writing.y],
        ],
        look,
      ),
    )

  const head = table.columns.map(({ title }, i) => lay(title, i, true))
  const headLines = Math.max(...head.map(({ lines }) => lines.length))
  const rows = table.rows.map((cells) => cells.map((cell, i) => lay(cell, i, false)))
  const rowLines = (cells: Laid[]) => Math.max(1, ...cells.map(({ lines }) => lines.length))

  writing.need(heightOf(headLines) + (rows[0] ? Math.min(heightOf(rowLines(rows[0])), 60) : 0))
  const element = tags.open('Table', table.summary === undefined ? {} : { alt: table.summary })
  const headRow = tags.open('TR', {}, element)
  const headCells = head.map(() => tags.open('TH', { scope: 'Column' }, headRow))
  drawRow(head, 0, headLines, (i, draw) => tags.mark(headCells[i]!, 'TH', draw))
  rule(RULE)

  const onNextPage = () => {
    writing.newPage()
    tags.aside(() => drawRow(head, 0, headLines, (_, draw) => draw()), 'Pagination')
    rule(RULE)
  }
  for (const cells of rows) {
    const all = rowLines(cells)
    if (writing.y + heightOf(all) > writing.format.bottom && writing.fits(heightOf(headLines) + heightOf(all)))
      onNextPage()
    const row = tags.open('TR', {}, element)
    const elements: Element[] = cells.map((_, i) =>
      i === 0 && rowHeads ? tags.open('TH', { scope: 'Row' }, row) : tags.open('TD', {}, row),
    )
    for (let from = 0; from < all; ) {
      const room = Math.floor((writing.format.bottom - writing.y - 2 * PADDING.y + 1e-6) / line)
      if (room < 1) {
        onNextPage()
        continue
      }
      const to = Math.min(all, from + room)
      drawRow(cells, from, to, (i, draw) => tags.mark(elements[i]!, i === 0 && rowHeads ? 'TH' : 'TD', draw))
      from = to
    }
    rule(HAIRLINE)
  }
}
