/** How the answers of steps, tighten and joint are set for a person at the bench. */
import { wrap } from './jointFigures.ts'
import type { painter } from './paint.ts'
import { width } from './width.ts'

/** The narrowest and the widest that the text is set. */
const COLUMNS = { least: 40, most: 80 }

export function wideOf(columns: number): number {
  return Math.min(COLUMNS.most, Math.max(COLUMNS.least, columns))
}

/** The title over a line, and under it what to know first. */
export function headed(title: string, first: string, wide: number, paint: ReturnType<typeof painter>): string[] {
  const heading = wrap(title, wide)
  return [
    ...heading.map((line) => paint(line, 'bold')),
    '─'.repeat(Math.min(wide, Math.max(...heading.map(width)))),
    ...wrap(first, wide).map((line) => paint(line, 'bold')),
  ]
}

/** Items under a title; nothing where there is none. */
export function section(title: string, items: readonly string[], wide: number): string[] {
  return items.length === 0 ? [] : ['', title, ...items.flatMap((item) => wrap(item, wide, '  · '))]
}
