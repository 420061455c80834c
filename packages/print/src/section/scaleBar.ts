import { type LengthUnit, MILLIMETRES_IN } from '@gripbook/engine'
import type { Palette } from '../look/palette.ts'
import { line, rect } from '../svg/element.ts'
import { figure } from '../svg/figures.ts'
import { textLine, textWidth } from '../svg/text.ts'

const SIZE = 13
const STEPS: Record<LengthUnit, readonly number[]> = {
  mm: [100, 50, 20, 10, 5, 2, 1],
  in: [4, 2, 1, 0.5, 0.2, 0.1, 0.05],
}

/** A ruled bar at (x, y) px with the scale in words beside it, 34 px high. `pixels` per mm. */
export function scaleBar(
  x: number,
  y: number,
  pixels: number,
  words: string,
  unit: LengthUnit,
  palette: Palette,
): string {
  const steps = STEPS[unit]
  const step = steps.find((n) => n * MILLIMETRES_IN[unit] * pixels <= 120) ?? steps.at(-1)!
  const width = step * MILLIMETRES_IN[unit] * pixels
  const edge = { fill: 'none', stroke: palette.ink, 'stroke-width': 1 }
  const parts = [rect(x, y, width, 6, { ...edge, 'data-part': 'scale bar', 'data-mm': step * MILLIMETRES_IN[unit] })]
  for (let i = 0; i < 5; i += 2) parts.push(rect(x + (i * width) / 5, y, width / 5, 6, { fill: palette.ink }))
  parts.push(line(x, y - 3, x, y + 9, edge), line(x + width, y - 3, x + width, y + 9, edge))
  const far = `${figure(step * MILLIMETRES_IN[unit], unit)} ${unit}`
  parts.push(textLine('0', x, y + 22, { size: SIZE, fill: palette.quiet }))
  const right = Math.max(x + width, x + 16 + textWidth(far, SIZE))
  parts.push(textLine(far, right, y + 22, { size: SIZE, fill: palette.quiet, anchor: 'end' }))
  parts.push(textLine(words, right + 14, y + 8, { size: SIZE, fill: palette.ink, bold: true }))
  return parts.join('')
}
