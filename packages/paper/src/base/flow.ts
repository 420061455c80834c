/** What a document is written with, from top to bottom. */
import type { Box, Pen, Place, Sheet, Type } from '../sheet.ts'
import { lineHeight, MM_PER_POINT, points } from './measures.ts'
import { drawQr } from './qr.ts'
import { writeTable } from './table.ts'
import type { Tag } from './tags.ts'
import type { Writing } from './writing.ts'

const HEADINGS = {
  1: { size: 18, before: 0, after: 2 },
  2: { size: 13, before: 5, after: 1.5 },
  3: { size: 10.5, before: 3, after: 1 },
} as const

/** Under a heading there is room for so much of what it is the head of, mm. */
const UNDER_HEADING = 18

const BULLET = { text: '•', indent: 4 }

export function sheetOn(writing: Writing): Sheet {
  const { tags, pen } = writing
  return {
    get width() {
      return writing.format.width
    },
    get height() {
      return writing.format.height
    },
    get left() {
      return writing.format.left
    },
    get right() {
      return writing.format.right
    },
    get top() {
      return writing.format.top
    },
    get bottom() {
      return writing.format.bottom
    },
    get y() {
      return writing.y
    },
    set y(y) {
      writing.y = y
    },
    get page() {
      return writing.formats.length
    },
    pen,
    newPage: (landscape) => writing.newPage(landscape),
    need: (height) => writing.need(height),
    gap: (height) => {
      if (writing.y > writing.format.top) writing.y += height
    },
    heading(level, text) {
      const { size, before, after } = HEADINGS[level]
      const type = { size, bold: true }
      const lines = pen.wrap(text, writing.format.right - writing.format.left, type)
      if (writing.y > writing.format.top) writing.y += before
      writing.need(lines.length * lineHeight(size) + UNDER_HEADING)
      if (level < 3) writing.doc.outline.addItem(text)
      lined(writing, `H${level}`, lines, type)
      writing.y += after
    },
    paragraph(text, type = {}) {
      lined(writing, 'P', pen.wrap(text, writing.format.right - writing.format.left, type), type)
      writing.y += 1.5
    },
    list(items, type = {}) {
      const list = tags.open('L')
      for (const text of items) {
        writing.need(lineHeight(type.size ?? 10))
        const item = tags.open('LI', {}, list)
        const label = tags.open('Lbl', {}, item)
        const baseline = writing.y + baseOf(type)
        tags.mark(label, 'Lbl', () => pen.text(BULLET.text, writing.format.left, baseline, type))
        const width = writing.format.right - writing.format.left - BULLET.indent
        lined(writing, 'LBody', pen.wrap(text, width, type), type, { indent: BULLET.indent, parent: item })
      }
      writing.y += 1.5
    },
    table(table) {
      writeTable(writing, table)
      writing.y += 2
    },
    figure({ alt, height, width = writing.format.right - writing.format.left, at }, draw) {
      placed(writing, { alt, width, height, at }, draw)
    },
    picture(bytes, { alt, most = writing.format.bottom - writing.format.top, width }, draw) {
      const pixels = writing.pictures.sizeOf(bytes)
      const scale = Math.min((width ?? writing.format.right - writing.format.left) / pixels.width, most / pixels.height)
      const size = { width: pixels.width * scale, height: pixels.height * scale }
      placed(writing, { alt, ...size, at: undefined }, (drawing, box) => {
        drawing.image(bytes, box.x, box.y, box.width, box.height)
        draw?.(drawing, box, scale)
      })
      writing.y += 2
    },
    qr(text, { alt, size, at }) {
      placed(writing, { alt, width: size, height: size, at }, (drawing, { x, y }) => drawQr(drawing, text, x, y, size))
    },
    textAt(text, x, y, type) {
      writing.begin()
      tags.mark(tags.open('P'), 'P', () => pen.text(text, x, y, type))
    },
    aside(draw) {
      writing.begin()
      tags.aside(() => draw(pen))
    },
  }
}

/** Lines of type from the place of writing on, over as many pages as they need; never one line alone at the foot of a page. */
function lined(
  writing: Writing,
  tag: Tag,
  lines: string[],
  type: Type,
  { indent = 0, parent }: { indent?: number; parent?: PDFKit.PDFStructureElement } = {},
): void {
  const height = lineHeight(type.size ?? 10)
  const element = parent ? writing.tags.open(tag, {}, parent) : writing.tags.open(tag)
  const { left, right } = writing.format
  const x = type.anchor === 'end' ? right : type.anchor === 'middle' ? (left + right) / 2 : left + indent
  for (let from = 0; from < lines.length; ) {
    const room = Math.floor((writing.format.bottom - writing.y + 1e-6) / height)
    const rest = lines.length - from
    if ((room < Math.min(2, rest) || room < 1) && writing.y > writing.format.top) {
      writing.newPage()
      continue
    }
    const shown = lines.slice(from, from + Math.max(1, room))
    writing.tags.mark(element, tag, () => {
      for (const [i, line] of shown.entries()) {
        // The space that the break took: words read on from line to line stay apart.
        const space = i + from < lines.length - 1 && type.anchor === undefined ? ' ' : ''
        if (line !== '') writing.pen.text(line + space, x, writing.y + baseOf(type), type)
        writing.y += height
      }
    })
    from += shown.length
  }
}

function baseOf({ size = 10 }: Type): number {
  return size * 1.02 * MM_PER_POINT
}

function placed(
  writing: Writing,
  { alt, width, height, at }: { alt: string; width: number; height: number; at: Place | undefined },
  draw: (pen: Pen, box: Box) => void,
): void {
  if (!at) writing.need(height)
  writing.begin()
  const [x, y] = at ?? [writing.format.left, writing.y]
  const bbox: [number, number, number, number] = [points(x), points(y), points(x + width), points(y + height)]
  const figure = writing.tags.open('Figure', { alt, bbox })
  writing.tags.mark(figure, 'Figure', () => draw(writing.pen, { x, y, width, height }))
  if (!at) writing.y += height
}
