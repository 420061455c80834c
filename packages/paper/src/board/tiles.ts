/** How a board that is larger than a sheet is cut into sheets that overlap. */
import type { Box } from '../sheet.ts'

/** Both sheets show at least so many mm at a seam, and at most. */
const OVERLAP = { least: 16, most: 60 }

/** mm that both sheets show at a seam: the ring of any thread of the face is whole on at least one of them. */
export function overlapFor(diameters: readonly number[]): number {
  return Math.min(OVERLAP.most, Math.max(OVERLAP.least, ...diameters.map((diameter) => diameter + 4)))
}

export type Tile = {
  column: number
  row: number
  /** "A1": column letters from the left, row figures from above. */
  name: string
  /** The part of the board on this sheet, mm of the board. */
  box: Box
}

export type Tiling = {
  columns: number
  rows: number
  tiles: Tile[] /** mm that both sheets show at a seam. */
  overlap: number
  /** All of it together, mm of the board. */
  area: Box
}

/** Sheets with a window of `width` × `height` mm each that cover the content, which lies in the middle of them. */
export function tilesOver(content: Box, width: number, height: number, overlap: number): Tiling {
  const count = (length: number, window: number) =>
    Math.max(1, Math.ceil((length - overlap - 1e-6) / (window - overlap)))
  const [columns, rows] = [count(content.width, width), count(content.height, height)]
  const whole = (n: number, window: number) => n * (window - overlap) + overlap
  const area = {
    x: content.x + (content.width - whole(columns, width)) / 2,
    y: content.y + (content.height - whole(rows, height)) / 2,
    width: whole(columns, width),
    height: whole(rows, height),
  }
  const tiles = Array.from({ length: rows * columns }, (_, i): Tile => {
    const [column, row] = [i % columns, Math.floor(i / columns)]
    const [x, y] = [area.x + column * (width - overlap), area.y + row * (height - overlap)]
    return { column, row, name: `${letters(column)}${row + 1}`, box: { x, y, width, height } }
  })
  return { columns, rows, tiles, overlap, area }
}

function letters(column: number): string {
  const last = String.fromCharCode(65 + (column % 26))
  return column < 26 ? last : letters(Math.floor(column / 26) - 1) + last
}
