import type { PairVerdict } from '@gripbook/engine'
import type { Palette } from '../look/palette.ts'
import { textLine, wrap } from '../svg/text.ts'
import { verdictMark } from './marks.ts'
import { VERDICT } from './words.ts'

/** Title, verdict with its mark, and the sentence of the sum. SVG and the y in px below it. */
export function header(
  { title, verdict, why }: { title: string; verdict?: PairVerdict | undefined; why?: string | undefined },
  left: number,
  width: number,
  palette: Palette,
) {
  const parts: string[] = []
  let y = 10
  for (const text of wrap(title, width, 17, { bold: true, most: 4 })) {
    y += 20
    parts.push(textLine(text, left, y, { size: 17, fill: palette.ink, bold: true }))
  }
  if (verdict) {
    y += 26
    parts.push(verdictMark(verdict, left + 9, y - 5, 8.5, palette))
    parts.push(textLine(VERDICT[verdict], left + 26, y, { size: 15, fill: palette[verdict], bold: true }))
  }
  if (why) {
    y += 4
    for (const text of wrap(why, width, 13.5, { most: 10 })) {
      y += 17.5
      parts.push(textLine(text, left, y, { size: 13.5, fill: palette.ink }))
    }
  }
  return { svg: parts.join(''), bottom: y + 8 }
}
