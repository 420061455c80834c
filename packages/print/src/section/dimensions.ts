/** Dimension lines on the left of the section, each with its name and value in a column of their own. */
import type { Interval, LengthUnit } from '@gripbook/engine'
import { element, line, polyline } from '../svg/element.ts'
import { intervalFigures } from '../svg/figures.ts'
import { textLine, textWidth } from '../svg/text.ts'
import { spread } from './column.ts'
import { arrowhead, dot } from './marks.ts'
import type { Measures, Seen } from './measures.ts'
import type { Sheet } from './sheet.ts'
import { NAMES } from './words.ts'

export const TYPE = 13
const LINE = 15.5
export const LANE = 11

export type Dimension = {
  name: string
  value: string
  /** mm from the seat; `to` is where the line ends as drawn. null: the place is not known, so only the words stand. */
  span: { from: number; to: number; open: boolean } | null
  /** Uncertain ends, mm from the seat. */
  ends: Interval | null
  lane: 1 | 2 | 3
  /** Where the words would like to stand, mm from the seat. */
  wish: number
}

/** The dimensions of a hole in no order. Layers that are not there (0 mm) have none. */
export function dimensionsOf(
  measures: Measures,
  levels: Sheet['levels'],
  unit: LengthUnit,
  beside: boolean,
): Dimension[] {
  const list: Dimension[] = []
  const layer = (name: string, value: Seen, top: number, foot: number) => {
    if (value.known && value.hi === 0) return
    const span = { from: top, to: foot, open: !value.known }
    list.push({ name, value: intervalFigures(value, unit), span, ends: null, lane: 1, wish: (top + foot) / 2 })
  }
  const { mouth, threadDepth, bottom, through, behind, bolt } = measures
  if (bolt) layer(NAMES.washer, measures.washer, levels.head, levels.bracket)
  layer(NAMES.bracket, measures.bracket, levels.bracket, levels.part)
  layer(NAMES.grip, measures.grip, levels.part, levels.gasket)
  layer(NAMES.gasket, measures.gasket, levels.gasket, 0)
  layer(NAMES.mouth, mouth, 0, mouth.at)
  const below = (name: string, value: Seen, from: number, to: number, lane: 1 | 2 | 3, share: number) => {
    const end = value.known ? to : levels.caseEnd
    list.push({
      name,
      value: intervalFigures(value, unit),
      span: { from, to: end, open: !value.known },
      ends: value.known && value.hi > value.lo ? { lo: to - value.at + value.lo, hi: to - value.at + value.hi } : null,
      lane,
      wish: from + (end - from) * share,
    })
  }
  below(NAMES.threadDepth, threadDepth, mouth.at, mouth.at + threadDepth.at, 1, 0.3)
  if (bolt && !beside) {
    const s = bolt.stickOut
    const value = intervalFigures(s ?? { lo: 0, hi: Number.POSITIVE_INFINITY }, unit)
    const span = s && { from: Math.min(0, s.at), to: Math.max(0, s.at), open: false }
    const ends = s && s.hi > s.lo ? { lo: s.lo, hi: s.hi } : null
    list.push({ name: NAMES.stickOut, value, span, ends, lane: 2, wish: s ? s.at * 0.75 : 0.2 * levels.caseEnd })
  }
  if (!through) below(NAMES.bottom, bottom, 0, bottom.at, 3, 0.97)
  if (through && bottom.known) {
    const end = levels.wallBehind ?? levels.end
    const span = { from: bottom.at, to: end, open: !behind.known }
    list.push({
      name: NAMES.behind,
      value: intervalFigures(behind, unit),
      span,
      ends: null,
      lane: 1,
      wish: (bottom.at + end) / 2,
    })
  }
  return list.sort((a, b) => a.wish - b.wish)
}

export function columnWidth(dimensions: readonly Dimension[]): number {
  return Math.max(0, ...dimensions.flatMap(({ name, value }) => [textWidth(name, TYPE), textWidth(value, TYPE, true)]))
}

/** SVG and the lowest y in px. `left`: the column's left edge, `width` its width; words are set towards the section. */
export function drawDimensions(
  sheet: Sheet,
  dimensions: readonly Dimension[],
  left: number,
  width: number,
  top: number,
) {
  const { x, half, y, palette } = sheet
  const laneX = (lane: number) => x - half - 4 - lane * LANE
  const height = 2 * LINE
  const tops = spread(
    dimensions.map(({ wish }) => ({ centre: y(wish), height })),
    top,
    6,
  )
  const under: string[] = []
  const over: string[] = []
  const reach = new Map<number, number>()
  dimensions.forEach(({ name, value, span, ends, lane, wish }, i) => {
    const middle = tops[i]! + height / 2
    const [edge, outer, at] = [left + width, laneX(3) - 7, laneX(lane)]
    const aim = span ? Math.min(Math.max(middle, y(span.from) + 2), Math.max(y(span.from), y(span.to) - 2)) : y(wish)
    const quiet = { fill: 'none', stroke: palette.quiet, 'stroke-width': 0.8 }
    under.push(
      polyline(
        [
          [edge + 4, middle],
          [outer, aim],
          [at, aim],
        ],
        quiet,
      ),
    )
    over.push(textLine(name, edge, middle - 3, { size: TYPE, fill: palette.quiet, anchor: 'end' }))
    over.push(textLine(value, edge, middle + LINE - 4, { size: TYPE, fill: palette.ink, bold: true, anchor: 'end' }))
    if (!span) return
    const [from, to] = [y(span.from), y(span.to)]
    for (const level of span.open ? [from] : [from, to]) reach.set(level, Math.min(reach.get(level) ?? at, at))
    const stroke = { stroke: palette.ink, 'stroke-width': 1 }
    over.push(line(at, from, at, to, { stroke: palette.paper, 'stroke-width': 5 }))
    if (ends) {
      const band = { stroke: palette.quiet, 'stroke-width': 4, 'stroke-opacity': 0.45 }
      over.push(line(at, y(ends.lo), at, y(ends.hi), { ...band, 'data-part': 'tolerance' }))
      for (const end of [ends.lo, ends.hi]) over.push(line(at - 3, y(end), at + 3, y(end), stroke))
    }
    const solidTo = span.open ? Math.max(from, to - 14) : to
    over.push(line(at, from, at, solidTo, { ...stroke, 'data-part': name }))
    if (span.open) over.push(line(at, solidTo, at, to, { ...stroke, 'stroke-dasharray': '2 3' }))
    const size = Math.min(7, (to - from) / 2.2)
    if (size >= 3) {
      over.push(arrowhead(at, from, -Math.PI / 2, size, palette.ink))
      if (!span.open) over.push(arrowhead(at, to, Math.PI / 2, size, palette.ink))
    } else {
      over.push(dot(at, from, palette.ink, 1.6))
      if (!span.open) over.push(dot(at, to, palette.ink, 1.6))
    }
    over.push(dot(at, aim, palette.quiet, 2))
  })
  const extension = [...reach].map(([level, to]) =>
    line(x - half, level, to - 4, level, { stroke: palette.quiet, 'stroke-width': 0.7 }),
  )
  const inner = [...reach.keys()].map((level) =>
    line(x - half, level, x - half + 8, level, { stroke: palette.quiet, 'stroke-width': 0.7 }),
  )
  return {
    svg: element('g', { 'data-part': 'dimensions' }, ...under, ...extension, ...inner, ...over),
    bottom: tops.length === 0 ? top : tops.at(-1)! + height,
  }
}
