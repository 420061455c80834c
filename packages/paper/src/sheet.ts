/**
 * What a sheet of paper is drawn with. Everything on paper is in mm from the upper left corner of the page, y downwards; only type is in
 * points, as printers count it. No type of the PDF library shows here, so that a page in a browser may load it late.
 */

export type PaperSize = 'A4' | 'Letter'

/** Font files, as bytes. `further`: for scripts that the first two lack; the first of them that holds a letter draws it. */
export type Fonts = { regular: Uint8Array; bold: Uint8Array; further?: readonly Uint8Array[] }

export type DocumentOptions = {
  title: string
  /** Of the text, as a language tag; "en" unless stated. */
  language?: string
  author?: string
  /** When it was made: the only clock. The same date and content give the same bytes. */
  made: Date
  fonts: Fonts
  paper: PaperSize
  /** The first page on its side. */
  landscape?: boolean
  /** From the paper's edge to the content, mm; 15 unless stated. */
  margin?: number
  /** Left and right above and below the content of every page. The page's number stands in the middle below. */
  header?: { left?: string; right?: string }
  footer?: { left?: string; right?: string }
}

export type Place = readonly [x: number, y: number]

/** Widths and dashes in mm, colours as "#rrggbb". No stroke and no fill draws nothing. */
export type Look = { stroke?: string; width?: number; dash?: readonly [on: number, off: number]; fill?: string }

/** Size in points; black, regular and from the left unless stated. */
export type Type = { size?: number; bold?: boolean; fill?: string; anchor?: 'start' | 'middle' | 'end' }

/** Draws anywhere on the page, whatever the margins. */
export type Pen = {
  line(points: readonly Place[], look: Look): void
  area(points: readonly Place[], look: Look): void
  rect(x: number, y: number, width: number, height: number, look: Look): void
  circle(x: number, y: number, radius: number, look: Look): void
  /** One line of text, `y` its base line. */
  text(text: string, x: number, y: number, type?: Type): void
  /** Bytes of a JPEG or PNG, stretched into the box. */
  image(bytes: Uint8Array, x: number, y: number, width: number, height: number): void
  /** What is drawn inside shows only within the box. */
  clipped(x: number, y: number, width: number, height: number, draw: () => void): void
  /** What is drawn inside has its origin at the place and is turned clockwise by so many degrees. */
  turned(degrees: number, x: number, y: number, draw: () => void): void
  /** Width of one line, mm. */
  widthOf(text: string, type?: Type): number
  /** Lines no wider than `width` mm; a word wider by itself is broken between its letters. With `most` lines the last one ends in "…". */
  wrap(text: string, width: number, type?: Type, most?: number): string[]
}

export type Box = { x: number; y: number; width: number; height: number }

export type Column = {
  title: string
  /** Share of the table's width, against the other columns' shares. */
  share: number
  align?: 'start' | 'end'
}

/** A cell is its text, or a text with its type. */
export type Cell = string | { text: string; bold?: boolean; fill?: string }

export type Table = {
  /** What a screen reader says of the table before its rows. */
  summary?: string
  columns: readonly Column[]
  rows: readonly (readonly Cell[])[]
  /** Type size in points; 9 unless stated. */
  size?: number
  /** The first cell of every row names the row; true unless stated. */
  rowHeads?: boolean
}

/**
 * A document that is written from top to bottom. What does not fit goes on to the next page. A screen reader meets all of it in the order
 * in which it was written, save what `aside` draws.
 */
export type Sheet = {
  /** The paper, mm. */
  readonly width: number
  readonly height: number
  /** Edges of the room for content, mm from the upper left corner. */
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  /** Where the next thing goes, mm from the upper edge. */
  y: number
  /** Number of the page that is written on, from 1. */
  readonly page: number
  /** The next page; upright or on its side as asked, else as the one before. */
  newPage(landscape?: boolean): void
  /** A new page unless so many mm are left on this one. */
  need(height: number): void
  gap(height: number): void
  heading(level: 1 | 2 | 3, text: string): void
  paragraph(text: string, type?: Type): void
  list(items: readonly string[], type?: Type): void
  /** Breaks over pages, between rows where it can; its head is repeated on each. */
  table(table: Table): void
  /**
   * A drawing of so many mm across the whole width, or `width` of it from the left; `alt` is read instead of it. Text in it can be selected.
   * `at`: not in the flow but there on this page.
   */
  figure(what: { alt: string; height: number; width?: number; at?: Place }, draw: (pen: Pen, box: Box) => void): void
  /** A photograph (JPEG or PNG), as wide as there is room and no higher than `most` mm, with what `draw` puts on it; one mark's pixel is `scale` mm. */
  picture(
    bytes: Uint8Array,
    what: { alt: string; most?: number; width?: number },
    draw?: (pen: Pen, box: Box, scale: number) => void,
  ): void
  /** A QR code of the text, `size` mm with its quiet margin; `at` as for a figure. */
  qr(text: string, what: { alt: string; size: number; at?: Place }): void
  /** Text at a place of its own, read where it is written. */
  textAt(text: string, x: number, y: number, type?: Type): void
  /** Drawn but not read out: frames, rules, marks for the printer. */
  aside(draw: (pen: Pen) => void): void
  /** Measuring without drawing. */
  readonly pen: Pick<Pen, 'widthOf' | 'wrap'>
}
