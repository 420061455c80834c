import type { PaperSize } from '@gripbook/paper'

/** The paper that an option names, whatever its case. */
export function paperOf(text: string): PaperSize | undefined {
  return (['A4', 'Letter'] as const).find((size) => size.toLowerCase() === text.toLowerCase())
}
