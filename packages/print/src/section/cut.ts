/** The section itself: case, clamped parts, hole, bolt, engaged thread and the spot where it fails. */
import { boltShape, headRoom, STUD_END } from '../bolt/boltShape.ts'
import { zigzag } from '../bolt/breakLine.ts'
import { element, line, polyline, rect } from '../svg/element.ts'
import type { Seen } from './measures.ts'
import { clearOf, coneOf, drillOf, lacksStudEnd, type Sheet, standsBeside } from './sheet.ts'

const EDGE = 1.4
const THIN = 0.8

function caseAndBehind({ x, half, y, levels, hatch, palette, measures }: Sheet): string {
  const edge = { stroke: palette.ink, 'stroke-width': EDGE }
  const parts = [
    rect(x - half, y(0), 2 * half, y(levels.caseEnd) - y(0), { fill: hatch.fill('case'), 'data-part': 'case' }),
    line(x - half, y(0), x + half, y(0), { ...edge, 'data-part': 'seat' }),
  ]
  const open = measures.through && measures.bottom.known
  if (open) parts.push(line(x - half, y(levels.caseEnd), x + half, y(levels.caseEnd), { ...edge, 'data-part': 'wall' }))
  if (levels.wallBehind !== null) {
    const top = y(levels.wallBehind)
    parts.push(rect(x - half, top, 2 * half, y(levels.end) - top, { fill: hatch.fill('case') }))
    parts.push(line(x - half, top, x + half, top, { ...edge, 'data-part': 'wall behind' }))
  }
  return parts.join('')
}

/** The hole: edges full, the root of its thread thin (ISO 6410-1), what is not known dashed. */
function hole(sheet: Sheet): string {
  const { x, y, pixels, palette, measures, levels, input } = sheet
  const { mouth, threadDepth, bottom, through } = measures
  const d = input.thread.diameter
  const [drill, root, wide] = [drillOf(input) / 2, d / 2, clearOf(d) / 2].map((mm) => mm * pixels) as [
    number,
    number,
    number,
  ]
  const edge = { fill: 'none', stroke: palette.ink, 'stroke-width': EDGE }
  const thin = { stroke: palette.ink, 'stroke-width': THIN }
  const solid = mouth.at + threadDepth.at
  const sure = through ? (bottom.known ? levels.caseEnd : solid) : bottom.known ? bottom.at : Math.max(bottom.lo, solid)
  const depth = bottom.known ? sure : levels.caseEnd
  const cone = through || !bottom.known ? 0 : coneOf(drillOf(input))
  const parts = [
    rect(x - drill, y(mouth.at), 2 * drill, y(depth) - y(mouth.at), { fill: palette.paper }),
    mouth.at > 0 ? rect(x - wide, y(0), 2 * wide, y(mouth.at) - y(0), { fill: palette.paper }) : '',
    rect(x - drill, y(0), 2 * drill, 1.5, { fill: palette.paper }),
  ]
  for (const side of [-1, 1]) {
    if (mouth.at > 0) {
      parts.push(
        polyline(
          [
            [x + side * wide, y(0)],
            [x + side * wide, y(mouth.at)],
            [x + side * drill, y(mouth.at)],
          ],
          edge,
        ),
      )
    }
    parts.push(line(x + side * drill, y(mouth.at), x + side * drill, y(sure), edge))
    if (depth > sure) {
      parts.push(line(x + side * drill, y(sure), x + side * drill, y(depth), { ...thin, 'stroke-dasharray': '5 3' }))
    }
    parts.push(line(x + side * root, y(mouth.at), x + side * root, y(solid), { ...thin, 'data-part': 'hole thread' }))
    if (threadDepth.known) {
      if (!through) {
        parts.push(line(x + side * root, y(solid), x + side * drill, y(solid), { ...edge, 'data-part': 'thread end' }))
        const runOut = Math.min(1.5 * input.thread.pitch, Math.max(0, depth - solid))
        if (runOut > 0) parts.push(line(x + side * root, y(solid), x + side * drill, y(solid + runOut), thin))
      }
    } else {
      parts.push(line(x + side * root, y(solid), x + side * root, y(depth), { ...thin, 'stroke-dasharray': '2 4' }))
    }
  }
  if (cone > 0) {
    const tip: [number, number][] = [
      [x - drill, y(bottom.at)],
      [x, y(bottom.at + cone)],
      [x + drill, y(bottom.at)],
    ]
    parts.push(polyline(tip, { ...edge, fill: palette.paper }))
    parts.push(line(x - drill, y(bottom.at), x + drill, y(bottom.at), { ...thin, 'data-part': 'bottom' }))
  }
  return parts.join('')
}

function stack(sheet: Sheet): string {
  const { x, half, y, pixels, palette, hatch, levels, input, measures } = sheet
  const clear = (clearOf(input.thread.diameter) / 2) * pixels
  const edge = { fill: 'none', stroke: palette.ink, 'stroke-width': EDGE }
  const parts: string[] = []
  const layer = (top: number, foot: number, fill: string, name: string) => {
    if (foot <= top) return
    for (const side of [-1, 1]) {
      const left = side < 0 ? x - half : x + clear
      parts.push(rect(left, y(top), half - clear, y(foot) - y(top), { fill, 'data-part': name }))
      parts.push(line(x + side * clear, y(top), x + side * clear, y(foot), edge))
      parts.push(line(x + side * clear, y(top), x + side * half, y(top), edge))
      parts.push(line(x + side * clear, y(foot), x + side * half, y(foot), edge))
    }
  }
  layer(levels.part, levels.gasket, hatch.fill('part'), 'grip')
  layer(levels.gasket, 0, palette.gasket, 'gasket')
  layer(levels.bracket, levels.part, hatch.fill('bracket'), 'bracket')
  if (measures.washer.at > 0 && !standsBeside(input)) {
    const wide = Math.min(half - 2, 1.05 * input.thread.diameter * pixels)
    const height = y(levels.bracket) - y(levels.head)
    parts.push(rect(x - wide, y(levels.head), 2 * wide, height, { ...edge, fill: palette.bolt, 'data-part': 'washer' }))
  }
  return parts.join('')
}

function theBolt(sheet: Sheet): string {
  const { input, measures, levels, boltX, y, pixels, palette } = sheet
  const [bolt, own] = [input.bolt, measures.bolt]
  if (!bolt || !own) return ''
  const beside = standsBeside(input)
  const brokenAt = levels.boltBreak ?? (beside ? null : levels.stackBreak)
  return boltShape(
    bolt.kind,
    {
      diameter: bolt.thread.diameter,
      pitch: bolt.thread.pitch,
      length: own.length.at,
      threadLength: Math.min(own.threadLength.at, own.length.at),
      tip: own.tip.at,
      ...(brokenAt === null ? {} : { brokenAt: brokenAt - levels.head }),
    },
    { x: boltX, y: y(levels.head), pixels, palette },
  )
}

/** Where a level is uncertain: a pale band between the ends of its interval, dashed at both. */
function tolerance(sheet: Sheet, level: Seen | null, half: number, colour: string, name: string): string {
  if (!level?.known) return ''
  const [top, foot] = [sheet.y(level.lo), sheet.y(level.hi)]
  if (foot - top < 1) return ''
  const dash = { stroke: colour, 'stroke-width': 1, 'stroke-dasharray': '2.5 2', 'data-part': `${name} end` }
  const { x } = sheet
  return [
    rect(x - half, top, 2 * half, foot - top, { fill: colour, 'fill-opacity': 0.14, 'data-part': `${name} band` }),
    line(x - half, top, x + half, top, dash),
    line(x - half, foot, x + half, foot, dash),
  ].join('')
}

/** The stretch of the bolt or the hole, in mm, where the deciding line fails or may fail; null where that is no place. */
export function faultSpan({ input, measures }: Sheet): { from: number; to: number; wide: boolean } | null {
  const [bolt, own] = [input.bolt, measures.bolt]
  if (!bolt || !own?.stickOut || bolt.verdict === 'fits' || standsBeside(input)) return null
  const { mouth, threadDepth, bottom, behind, need } = measures
  const s = bolt.verdict === 'may' ? own.stickOut.hi : own.stickOut.at
  const span = (from: number, to: number, wide: boolean) => (to > from ? { from, to, wide } : null)
  const least = need === null ? null : bolt.verdict === 'may' ? need.hi : need.lo
  switch (bolt.line) {
    case 'bottom':
      return bottom.known ? span(bolt.verdict === 'may' ? bottom.lo : bottom.at, s, true) : null
    case 'run-out':
      return threadDepth.known ? span(mouth.at + threadDepth.at, s - own.tip.at, false) : null
    case 'behind':
      return behind.known ? span(bottom.at + behind.at, s, true) : null
    case 'shank':
      return span(mouth.at, s - own.threadLength.at, false)
    case 'engagement': {
      const end = Math.max(own.stickOut.at - own.tip.at, mouth.at)
      return least === null ? null : span(end, mouth.at + least, true)
    }
    case 'bolt thread': {
      const start = own.stickOut.at - own.threadLength.at
      return least === null ? null : span(own.stickOut.at - own.tip.at - least, start, false)
    }
    case 'hole thread':
      return least === null ? null : span(mouth.at + threadDepth.at, mouth.at + least, false)
    default:
      return null
  }
}

function engagedAndFault(sheet: Sheet): string {
  const { input, measures, x, y, pixels, palette, hatch } = sheet
  const [bolt, own] = [input.bolt, measures.bolt]
  if (!bolt || !own) return ''
  const half = (input.thread.diameter / 2) * pixels
  const parts: string[] = []
  if (own.engaged) {
    const [top, foot] = [y(own.engaged.from), y(own.engaged.to)]
    parts.push(rect(x - half, top, 2 * half, foot - top, { fill: hatch.fill('engaged'), 'data-part': 'engaged' }))
    for (const side of [-half, half]) {
      parts.push(line(x + side, top, x + side, foot, { stroke: palette.engaged, 'stroke-width': 3 }))
    }
  }
  if (lacksStudEnd(input)) {
    const d = bolt.thread.diameter
    const foot = y(sheet.levels.head - headRoom(bolt.kind, d).height)
    const height = STUD_END * d * pixels
    const ghost = { fill: hatch.fill('cannot'), 'fill-opacity': 0.35, stroke: palette.cannot, 'stroke-width': 1.6 }
    parts.push(
      rect(x - half, foot - height, 2 * half, height, { ...ghost, 'stroke-dasharray': '4 3', 'data-part': 'missing' }),
    )
  }
  const span = faultSpan(sheet)
  if (span && bolt.line !== 'engagement') {
    const colour = palette[bolt.verdict]
    const box = { fill: hatch.fill(bolt.verdict), stroke: colour, 'stroke-width': 2, 'data-part': 'fault' }
    const [top, height] = [y(span.from), y(span.to) - y(span.from)]
    if (span.wide) parts.push(rect(x - half, top, 2 * half, height, box))
    else for (const side of [x - half - 3, x + half - 3]) parts.push(rect(side, top, 6, height, box))
  }
  return parts.join('')
}

export function cut(sheet: Sheet): string {
  const { x, half, y, levels, palette, measures, input, pixels } = sheet
  const bolt = measures.bolt
  const beside = standsBeside(input)
  const radius = (input.thread.diameter / 2) * pixels
  const parts = [caseAndBehind(sheet), hole(sheet), stack(sheet)]
  const axis = { stroke: palette.quiet, 'stroke-width': THIN, 'stroke-dasharray': '10 3 2 3' }
  if (levels.stackBreak !== null) {
    const gap = y(levels.stackBreak)
    parts.push(rect(x - half - 2, gap - 4, 2 * half + 4, 8, { fill: palette.paper }))
    if (beside || !bolt) parts.push(zigzag(x - half - 4, x + half + 4, gap + 4, palette))
  }
  parts.push(line(x, y(levels.head) - 10, x, y(levels.end), axis))
  if (bolt) parts.push(theBolt(sheet))
  if (levels.stackBreak !== null) {
    const gap = y(levels.stackBreak)
    parts.push(rect(x - half - 2, gap - 3, 2 * half + 4, 6, { fill: palette.paper }))
    for (const off of [-3, 3]) parts.push(zigzag(x - half - 4, x + half + 4, gap + off, palette))
  }
  parts.push(engagedAndFault(sheet))
  if (bolt && !beside) parts.push(tolerance(sheet, bolt.stickOut, radius + 3, palette.engaged, 'tip'))
  if (!measures.through) parts.push(tolerance(sheet, measures.bottom, radius + 6, palette.ink, 'bottom'))
  const end = y(levels.end)
  if (levels.endBreak) {
    parts.push(rect(x - half - 2, end - 1, 2 * half + 4, 8, { fill: palette.paper }))
    parts.push(zigzag(x - half - 4, x + half + 4, end, palette))
  }
  return element('g', { 'data-part': 'section' }, ...parts)
}
