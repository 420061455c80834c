/** Names and the reason in words on the right of the section, each with a leader to its spot. */
import { intervalOf, type PairVerdict } from '@gripbook/engine'
import { headRoom, STUD_END } from '../bolt/boltShape.ts'
import { element, line, polyline, rect } from '../svg/element.ts'
import { intervalFigures, length } from '../svg/figures.ts'
import { named, textLine, textWidth, wrap } from '../svg/text.ts'
import { spread } from './column.ts'
import { faultSpan } from './cut.ts'
import { TYPE } from './dimensions.ts'
import { arrowhead, dot, verdictMark } from './marks.ts'
import { drillOf, lacksStudEnd, missingFeatures, type Sheet, standsBeside } from './sheet.ts'
import { NAMES, spotWords } from './words.ts'

const LINE = 16
const PAD = 7
/** Holds the place of the verdict's mark: four spaces that are never broken, 20.8 px at 13 px. */
const MARK = '\u00a0\u00a0\u00a0\u00a0'

export type Note = {
  /** The spot in px. */
  x: number
  y: number
  text: string
  bold?: boolean
  colour?: string
  /** A note with a verdict is the reason itself: boxed, with the verdict's mark and an arrow. */
  verdict?: PairVerdict
}

/** "b1 · M6 × 45": what a bolt is called. */
export function boltName({ input }: Sheet): string {
  const { bolt, look } = input
  if (!bolt) return NAMES.empty
  const unit = look.unit ?? 'mm'
  const own = bolt.kind.length
  const figures =
    typeof own === 'object' && 'nominal' in own && (own.unit ?? 'mm') === unit
      ? String(own.nominal)
      : intervalFigures(intervalOf(own), unit)
  const size = own === undefined ? bolt.thread.name : `${bolt.thread.name} × ${figures}`.replaceAll(' ', '\u00a0')
  return [named(bolt.kind.id), size, bolt.kind.class].filter((word) => word !== undefined).join('\u00a0· ')
}

function holeNotes(sheet: Sheet): Note[] {
  const { input, measures, levels, x, half, y, pixels } = sheet
  const { mouth, threadDepth, bottom, through } = measures
  const d = input.thread.diameter
  const solid = mouth.at + threadDepth.at
  const edge = x + half - 6
  const list: Note[] = [{ x: edge, y: y(0), text: NAMES.seat }]
  const material = typeof input.hole.material === 'object' ? input.hole.material.name : input.hole.material
  const threadAt = y(mouth.at + (threadDepth.known ? threadDepth.at : levels.caseEnd - mouth.at) * 0.35)
  list.push({
    x: x + (d / 2) * pixels,
    y: threadAt,
    text: `hole ${named(input.hole.id)}: ${input.thread.name}`,
    bold: true,
  })
  if (material) list.push({ x: edge, y: y(Math.min(solid, levels.caseEnd * 0.7)), text: named(material) })
  const drill = (drillOf(input) / 2) * pixels
  if (!through && bottom.known && threadDepth.known && bottom.at - solid > 0.5 * input.thread.pitch) {
    list.push({
      x: x + drill,
      y: y(solid + Math.min(input.thread.pitch, (bottom.at - solid) / 2)),
      text: NAMES.incomplete,
    })
  }
  if (through && bottom.known) {
    const where = levels.wallBehind ?? levels.end
    const text = measures.behind.known ? NAMES.passage : `${NAMES.passage}, ${NAMES.behindUnknown}`
    list.push({ x: x + drill, y: y((bottom.at + where) / 2), text })
  } else if (!bottom.known) {
    list.push({ x: x + drill, y: y(levels.end), text: through ? NAMES.wallUnknown : NAMES.bottomUnknown })
  }
  if (levels.stackBreak !== null) list.push({ x: edge, y: y(levels.stackBreak), text: NAMES.gripUnknown })
  return list
}

/** Where the reason points: the middle of the failing stretch, else the place that the line is about. */
function spotOf(sheet: Sheet): { x: number; y: number } {
  const { input, measures, levels, x, half, boltX, y, pixels } = sheet
  const [bolt, own] = [input.bolt!, measures.bolt!]
  const radius = (bolt.thread.diameter / 2) * pixels
  const span = faultSpan(sheet)
  if (standsBeside(input)) {
    return {
      x: boltX + radius,
      y: y(levels.head + (own.length.known ? own.length.at * 0.75 : 0.5 * input.thread.diameter)),
    }
  }
  if (span && bolt.line === 'engagement') return { x: x + half + 14, y: y((span.from + span.to) / 2) }
  if (span) return { x: x + radius, y: y((span.from + span.to) / 2) }
  if (lacksStudEnd(input)) {
    const head = headRoom(bolt.kind, bolt.thread.diameter).height
    return { x: x + radius, y: y(levels.head - head - STUD_END * 0.6 * bolt.thread.diameter) }
  }
  if (bolt.line === 'feature' || bolt.line === 'kind') return { x: x + radius, y: y(levels.head) - 6 }
  const s = own.stickOut
  if (!s || bolt.line === 'hole') return { x: x + radius, y: y(0) + 6 }
  const { mouth, threadDepth } = measures
  const at = {
    engagement: own.engaged?.to ?? s.at - own.tip.at,
    shank: Math.min(s.at - own.threadLength.at, mouth.at),
    'run-out': s.at - own.tip.at,
    'bolt thread': s.at - own.threadLength.at,
    'hole thread': mouth.at + threadDepth.at,
  }
  const level = bolt.line in at ? at[bolt.line as keyof typeof at] : s.at
  return { x: x + radius * (level === s.at ? 0.7 : 1), y: y(level) }
}

function boltNotes(sheet: Sheet): Note[] {
  const { input, measures, levels, x, boltX, y, pixels, palette } = sheet
  const [bolt, own] = [input.bolt, measures.bolt]
  if (!bolt || !own) return []
  const unit = input.look.unit ?? 'mm'
  const radius = (bolt.thread.diameter / 2) * pixels
  const role = bolt.role ? `, ${bolt.role}` : ''
  const list: Note[] = [{ x: boltX + radius, y: y(levels.head) - 5, text: `${boltName(sheet)}${role}`, bold: true }]
  if (levels.boltBreak !== null) list.push({ x: boltX + radius, y: y(levels.boltBreak), text: NAMES.lengthUnknown })
  if (own.engagement) {
    const engaged = `${NAMES.engaged} ${intervalFigures(own.engagement, unit)}`
    const needed = measures.need ? `, ${NAMES.needed} ${intervalFigures(measures.need, unit)}` : ''
    const at = own.engaged ? (own.engaged.from + own.engaged.to * 2) / 3 : Math.max(measures.mouth.at, 0)
    list.push({ x: x + radius, y: y(at), text: `${engaged}${needed}`, colour: palette.engaged })
  }
  const missing = missingFeatures(input)
  const words =
    bolt.line === 'feature' && missing.length > 0
      ? `missing: ${missing.map(named).join(', ')}`
      : bolt.line === 'thread'
        ? `${bolt.thread.name} does not go into ${input.thread.name}`
        : spotWords(bolt.line, bolt.verdict, bolt.margin, (mm) => length(mm, unit))
  list.push({ ...spotOf(sheet), text: words, verdict: bolt.verdict })
  return list
}

/** The engaged length, and what is short of the need, as brackets beside the section. */
function brackets(sheet: Sheet): string {
  const { measures, input, x, half, y, palette, hatch } = sheet
  const own = measures.bolt
  if (!own || standsBeside(input)) return ''
  const at = x + half + 9
  const parts: string[] = []
  const bracket = (from: number, to: number, colour: string, part: string) => {
    for (const level of [from, to])
      parts.push(line(x + half - 4, y(level), at + 4, y(level), { stroke: colour, 'stroke-width': 0.8 }))
    parts.push(line(at, y(from), at, y(to), { stroke: colour, 'stroke-width': 1.4, 'data-part': part }))
    const size = Math.min(7, (y(to) - y(from)) / 2.2)
    if (size < 3) return
    parts.push(arrowhead(at, y(from), -Math.PI / 2, size, colour), arrowhead(at, y(to), Math.PI / 2, size, colour))
  }
  if (own.engaged) bracket(own.engaged.from, own.engaged.to, palette.engaged, 'engagement')
  const span = input.bolt?.line === 'engagement' ? faultSpan(sheet) : null
  if (span) {
    const [colour, verdict] = [palette[input.bolt!.verdict], input.bolt!.verdict]
    const box = { fill: hatch.fill(verdict), stroke: colour, 'stroke-width': 1.6, 'data-part': 'shortfall' }
    parts.push(rect(at - 4, y(span.from), 8, y(span.to) - y(span.from), box))
  }
  return parts.join('')
}

export function notesOf(sheet: Sheet): Note[] {
  return [...holeNotes(sheet), ...boltNotes(sheet)].sort((a, b) => a.y - b.y)
}

/** SVG and the lowest y in px. `left` and `width`: the column of words. */
export function drawNotes(sheet: Sheet, notes: readonly Note[], left: number, width: number, top: number) {
  const { palette } = sheet
  const boxes = notes.map((note) => {
    const boxed = note.verdict !== undefined
    const room = boxed ? width - 2 * PAD : width
    // The mark stands before the first words: a space as wide as itself keeps its place.
    const text = boxed ? `${MARK}${note.text}` : note.text
    const lines = wrap(text, room, TYPE, { bold: note.bold === true, most: 12 })
    return { note, lines, height: lines.length * LINE + (boxed ? 2 * PAD - 2 : 0), first: boxed ? PAD + 8 : 8 }
  })
  const tops = spread(
    boxes.map(({ note, height, first }) => ({ centre: note.y + height / 2 - first, height })),
    top,
    6,
  )
  const under: string[] = []
  const over: string[] = []
  const bend = left - 12
  boxes.forEach(({ note, lines, height, first }, i) => {
    const y = tops[i]!
    const from = y + first
    const colour = note.verdict ? palette[note.verdict] : (note.colour ?? palette.quiet)
    const inset = note.verdict ? PAD : 0
    if (note.verdict) {
      under.push(
        rect(left, y, width, height, {
          fill: palette.paper,
          stroke: colour,
          'stroke-width': note.verdict === 'cannot' ? 2.2 : 1.4,
          'stroke-dasharray': note.verdict === 'may' ? '5 3' : undefined,
          rx: 3,
        }),
      )
      const path: [number, number][] = [
        [left, from],
        [bend, note.y],
        [note.x + 6, note.y],
      ]
      over.push(polyline(path, { fill: 'none', stroke: palette.paper, 'stroke-width': 4.5 }))
      over.push(polyline(path, { fill: 'none', stroke: colour, 'stroke-width': 2 }))
      over.push(arrowhead(note.x, note.y, Math.PI, 11, colour))
      over.push(verdictMark(note.verdict, left + PAD + 7, from, 7, palette))
    } else {
      const path: [number, number][] = [
        [left - 3, from],
        [bend, note.y],
        [note.x, note.y],
      ]
      under.push(polyline(path, { fill: 'none', stroke: colour, 'stroke-width': 0.9 }))
      under.push(dot(note.x, note.y, colour, 2.2))
    }
    const fill = note.verdict || note.bold ? palette.ink : colour
    lines.forEach((line, row) => {
      const base = from + row * LINE + 4.5
      const shown = line.replace(MARK, '')
      const indent = shown === line ? 0 : textWidth(MARK, TYPE)
      over.push(textLine(shown, left + inset + indent, base, { size: TYPE, fill, bold: note.bold === true }))
    })
  })
  return {
    svg: element('g', { 'data-part': 'notes' }, brackets(sheet), ...under, ...over),
    bottom: tops.length === 0 ? top : tops.at(-1)! + boxes.at(-1)!.height,
  }
}
