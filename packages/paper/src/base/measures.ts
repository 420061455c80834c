import type { PaperSize } from '../sheet.ts'

/** A point of type, 1/72 in: what a PDF counts in. */
export const MM_PER_POINT = 25.4 / 72

/** Upright, mm. @source ISO 216 (A4); ANSI/ASME Y14.1, size A (Letter, 8½ × 11 in) */
const SIZES: Record<PaperSize, readonly [number, number]> = { A4: [210, 297], Letter: [215.9, 279.4] }

export function paperSize(paper: PaperSize, landscape = false): { width: number; height: number } {
  const [short, long] = SIZES[paper]
  return landscape ? { width: long, height: short } : { width: short, height: long }
}

export function points(mm: number): number {
  return mm / MM_PER_POINT
}

/** Height of a line of type of so many points, mm. */
export function lineHeight(size: number): number {
  return size * 1.3 * MM_PER_POINT
}
