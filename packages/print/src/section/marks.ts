/** Small drawn signs: the verdict's badge, arrowheads, dots. Shapes of our own, so that no font has to have them. */
import type { PairVerdict } from '@gripbook/engine'
import type { Palette } from '../look/palette.ts'
import { element, polyline } from '../svg/element.ts'

/** Round with a tick: fits. Diamond with a question mark: may. Square with a cross: cannot. `r` is half of its size. */
export function verdictMark(verdict: PairVerdict, x: number, y: number, r: number, palette: Palette): string {
  const fill = palette[verdict]
  const stroke = { fill: 'none', stroke: palette.onState, 'stroke-width': r / 3.5, 'stroke-linecap': 'round' }
  if (verdict === 'fits') {
    const tick = [
      [x - r * 0.45, y + r * 0.02],
      [x - r * 0.1, y + r * 0.4],
      [x + r * 0.5, y - r * 0.38],
    ] as const
    return element('circle', { cx: x, cy: y, r, fill }) + polyline(tick, { ...stroke, 'stroke-linejoin': 'round' })
  }
  if (verdict === 'may') {
    const diamond = [
      [x, y - r * 1.15],
      [x + r * 1.15, y],
      [x, y + r * 1.15],
      [x - r * 1.15, y],
    ] as const
    const hook = `M${x - r * 0.3} ${y - r * 0.3}C${x - r * 0.3} ${y - r * 0.75} ${x + r * 0.35} ${y - r * 0.7} ${x + r * 0.3} ${y - r * 0.25}C${x + r * 0.27} ${y - r * 0.02} ${x} ${y} ${x} ${y + r * 0.25}`
    return (
      polyline(diamond, { fill }, true) +
      element('path', { d: hook, ...stroke }) +
      element('circle', { cx: x, cy: y + r * 0.58, r: r * 0.15, fill: palette.onState })
    )
  }
  const a = r * 0.42
  return (
    element('rect', { x: x - r, y: y - r, width: 2 * r, height: 2 * r, rx: r * 0.2, fill }) +
    polyline(
      [
        [x - a, y - a],
        [x + a, y + a],
      ],
      stroke,
    ) +
    polyline(
      [
        [x - a, y + a],
        [x + a, y - a],
      ],
      stroke,
    )
  )
}

/** A filled arrowhead with its point at (x, y), pointing along `angle` radians. */
export function arrowhead(x: number, y: number, angle: number, size: number, fill: string): string {
  const back = (turn: number) => [x - size * Math.cos(angle + turn), y - size * Math.sin(angle + turn)] as const
  return polyline([[x, y], back(0.3), back(-0.3)], { fill }, true)
}

export function dot(x: number, y: number, fill: string, r = 1.8): string {
  return element('circle', { cx: x, cy: y, r, fill })
}
