/** The bolts of a tray side by side, heads on one line, to one scale beside a rule. */
import { intervalOf, type Kind, type LengthUnit, MILLIMETRES_IN } from '@gripbook/engine'
import { boltShape, headRoom } from '../bolt/boltShape.ts'
import { loneBolt } from '../bolt/loneBolt.ts'
import { PALETTES, type Palette } from '../look/palette.ts'
import type { DrawnThread, Look } from '../section/input.ts'
import { largestScale } from '../section/scale.ts'
import { element, escapeXml, line, polyline, rect } from '../svg/element.ts'
import { figure, intervalFigures } from '../svg/figures.ts'
import { safePrefix } from '../svg/ids.ts'
import { named, textLine, wrap } from '../svg/text.ts'

export type TrayBolt = {
  kind: Kind
  thread: DrawnThread
  /** How many of them no hole of the face wants; how many are wanted and not there. */
  leftOver?: number
  missing?: number
}

export type TrayInput = { title: string; bolts: readonly TrayBolt[]; look: Look; prefix?: string }

const WIDTH = 420
const MARGIN = 10
const RULE = 34
const TYPE = 13
const LINE = 16
const GAP = 6
/** px: the longest bolt below its head, and the widest head. */
const ROOM = { width: 84, height: 340 }
/** Least width of a bolt's words: "M10 × 45" in bold type. */
const WORDS = 86
/** px from a column's edge to the words beside a mark. */
const INDENT = 15

type Words = { text: string; bold: boolean; fill: string; mark?: 'left over' | 'missing' }
type Column = { bolt: TrayBolt; width: number; words: Words[]; lone: ReturnType<typeof loneBolt>; head: number }

function sizeName({ kind, thread }: TrayBolt, unit: LengthUnit): string {
  const own = kind.length
  if (own === undefined) return `${thread.name}, ? length`
  const nominal = typeof own === 'object' && 'nominal' in own && (own.unit ?? 'mm') === unit
  const figures = nominal ? String(own.nominal) : intervalFigures(intervalOf(own), unit)
  return `${thread.name} × ${figures}`
}

function wordsOf(bolt: TrayBolt, unit: LengthUnit, width: number, palette: Palette): Words[] {
  const { kind, leftOver = 0, missing = 0 } = bolt
  const said: Words[] = [
    { text: named(kind.id), bold: true, fill: palette.ink },
    { text: sizeName(bolt, unit), bold: false, fill: palette.ink },
  ]
  if (kind.class !== undefined) said.push({ text: kind.class, bold: false, fill: palette.quiet })
  if (kind.count !== undefined) {
    said.push({ text: kind.count === 1 ? '1 piece' : `${kind.count} pieces`, bold: false, fill: palette.quiet })
  }
  if (leftOver > 0) said.push({ text: `${leftOver} left over`, bold: false, fill: palette.may, mark: 'left over' })
  if (missing > 0) said.push({ text: `${missing} missing`, bold: false, fill: palette.cannot, mark: 'missing' })
  return said.flatMap(({ text, mark, ...look }) =>
    wrap(text, width - (mark ? INDENT : 0), TYPE, { bold: look.bold, most: 3 }).map((piece, i) => ({
      text: piece,
      ...look,
      ...(mark && i === 0 ? { mark } : {}),
    })),
  )
}

/** A ring that is open: left over. A cross in a dashed square: missing. */
function trayMark(mark: 'left over' | 'missing', x: number, y: number, palette: Palette): string {
  if (mark === 'left over') {
    const ring = { cx: x, cy: y, r: 5, fill: 'none', stroke: palette.may, 'stroke-width': 2.4 }
    return element('circle', { ...ring, 'stroke-dasharray': '24 8' })
  }
  const stroke = { fill: 'none', stroke: palette.cannot, 'stroke-width': 2 }
  const diagonal = (turn: 1 | -1) =>
    polyline(
      [
        [x - 3, y - 3 * turn],
        [x + 3, y + 3 * turn],
      ],
      stroke,
    )
  return rect(x - 6, y - 6, 12, 12, { ...stroke, 'stroke-dasharray': '3 2', rx: 2 }) + diagonal(1) + diagonal(-1)
}

/** A rule from 0 at the heads' undersides to `mm`, with figures each 10 mm or half inch and a thin line across at each. */
function rule(top: number, mm: number, pixels: number, unit: LengthUnit, palette: Palette): string {
  const size = MILLIMETRES_IN[unit]
  const [labelled, small] = unit === 'mm' ? [10, pixels >= 3 ? 1 : 5] : [0.5, pixels >= 3 ? 0.0625 : 0.125]
  const spaced = labelled * size * pixels >= 18 ? labelled : labelled * 2
  const x = MARGIN + RULE - 6
  const parts: string[] = []
  const steps = Math.ceil(mm / size / small + 1e-9)
  for (let i = 0; i <= steps; i++) {
    const value = i * small
    const y = top + value * size * pixels
    const whole = Math.abs(value / spaced - Math.round(value / spaced)) < 1e-9
    const half = Math.abs((2 * value) / spaced - Math.round((2 * value) / spaced)) < 1e-9
    parts.push(
      line(x, y, x - (whole ? 9 : half ? 6 : 3.5), y, {
        stroke: palette.ink,
        'stroke-width': whole ? 1.2 : 0.7,
        'data-part': whole ? 'rule' : undefined,
        'data-mm': whole ? value * size : undefined,
      }),
    )
    if (!whole) continue
    parts.push(line(x, y, WIDTH - MARGIN, y, { stroke: palette.quiet, 'stroke-width': 0.5, 'stroke-opacity': 0.35 }))
    const text = figure(value * size, unit)
    parts.push(textLine(text, x - 11, y + 4.5, { size: TYPE, fill: palette.quiet, anchor: 'end' }))
  }
  parts.push(line(x, top, x, top + steps * small * size * pixels, { stroke: palette.ink, 'stroke-width': 1.2 }))
  return parts.join('')
}

function rowsOf(columns: readonly Column[]): Column[][] {
  const rows: Column[][] = []
  let used = Number.POSITIVE_INFINITY
  for (const column of columns) {
    if (used + column.width > WIDTH - 2 * MARGIN - RULE) {
      rows.push([])
      used = 0
    }
    rows.at(-1)!.push(column)
    used += column.width + GAP
  }
  return rows
}

function drawBolt({ bolt, lone, head }: Column, x: number, seat: number, pixels: number, palette: Palette) {
  const { kind, thread } = bolt
  const { known, ...lengths } = lone
  const { length } = lengths
  const shape = boltShape(
    kind,
    {
      diameter: thread.diameter,
      pitch: thread.pitch,
      ...lengths,
      ...(known ? {} : { brokenAt: length }),
    },
    { x, y: seat, pixels, palette },
  )
  if (!bolt.missing || (kind.count ?? 0) > 0) return shape
  const half = Math.max(headRoom(kind, thread.diameter).radius, thread.diameter / 2) * pixels + 4
  const frame = { fill: 'none', stroke: palette.cannot, 'stroke-width': 1.6, 'stroke-dasharray': '5 4', rx: 3 }
  const ghost = element('g', { opacity: 0.4 }, shape)
  return ghost + rect(x - half, seat - head * pixels - 4, 2 * half, (head + length) * pixels + 8, frame)
}

function tell({ kind, leftOver = 0, missing = 0, thread }: TrayBolt, unit: LengthUnit): string {
  const count = kind.count === undefined ? '' : `, ${kind.count}`
  const over = leftOver > 0 ? `, ${leftOver} left over` : ''
  const short = missing > 0 ? `, ${missing} missing` : ''
  return `${kind.id}: ${sizeName({ kind, thread }, unit)}${count}${over}${short}.`
}

/**
 * The bolts of a tray as an SVG document, side by side to one stated scale: undersides of the heads on one line, a rule beside each row.
 * A kind of which none is there but some are missing is drawn pale in a dashed frame. Sizes in mm in, CSS px out. Errors: as `sectionDrawing`.
 */
export function trayDrawing({ title, bolts, look, prefix = 'tray' }: TrayInput): string {
  const unit = look.unit ?? 'mm'
  const palette = PALETTES[look.theme]
  const id = safePrefix(prefix)
  const sizes = bolts.map((bolt) => {
    const room = headRoom(bolt.kind, bolt.thread.diameter)
    const radius = Math.max(room.radius, bolt.thread.diameter / 2)
    return { bolt, lone: loneBolt(bolt.kind, bolt.thread), head: room.height, radius }
  })
  const most = (of: (size: (typeof sizes)[number]) => number) => Math.max(1, ...sizes.map(of))
  const tall = most(({ lone, head }) => lone.length + head)
  const scale = largestScale(
    { width: most(({ radius }) => 2 * radius), height: tall },
    ROOM,
    look.theme === 'print' ? 1 : 2,
  )
  const columns = sizes.map(({ radius, ...rest }): Column => {
    const width = Math.max(WORDS, 2 * radius * scale.pixels + 8)
    return { ...rest, width, words: wordsOf(rest.bolt, unit, width, palette) }
  })
  const parts: string[] = []
  let y = 10
  for (const text of wrap(title, WIDTH - 2 * MARGIN, 17, { bold: true, most: 4 })) {
    y += 20
    parts.push(textLine(text, MARGIN, y, { size: 17, fill: palette.ink, bold: true }))
  }
  y += 22
  const said = `Scale ${scale.name}${scale.name === '1 : 1' && look.theme === 'print' ? ', true size at 100 %' : ''}, ${unit}`
  parts.push(textLine(said, MARGIN, y, { size: TYPE, fill: palette.quiet }))
  y += 16
  for (const row of rowsOf(columns)) {
    const seat = y + Math.max(...row.map(({ head }) => head)) * scale.pixels + 6
    const longest = Math.max(...row.map(({ lone }) => lone.length))
    parts.push(rule(seat, longest, scale.pixels, unit, palette))
    const foot = seat + longest * scale.pixels + 14
    let x = MARGIN + RULE
    for (const column of row) {
      const middle = x + column.width / 2
      parts.push(
        element('g', { 'data-kind': column.bolt.kind.id }, drawBolt(column, middle, seat, scale.pixels, palette)),
      )
      column.words.forEach(({ text, mark, ...type }, i) => {
        const base = foot + 14 + i * LINE
        if (mark) parts.push(trayMark(mark, x + 6, base - 4.5, palette))
        const at = mark ? { x: x + INDENT, anchor: 'start' as const } : { x: middle, anchor: 'middle' as const }
        parts.push(textLine(text, at.x, base, { size: TYPE, ...type, anchor: at.anchor }))
      })
      x += column.width + GAP
    }
    y = foot + 14 + Math.max(...row.map(({ words }) => words.length)) * LINE + 12
  }
  const height = Math.ceil(y)
  const print = { width: `${WIDTH * (MILLIMETRES_IN.in / 96)}mm`, height: `${height * (MILLIMETRES_IN.in / 96)}mm` }
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${WIDTH} ${height}`,
      ...(look.theme === 'print' ? print : { width: WIDTH, height }),
      role: 'img',
      'aria-labelledby': `${id}-title ${id}-desc`,
      'data-pixels-per-mm': String(scale.pixels),
    },
    element('title', { id: `${id}-title` }, escapeXml(title)),
    element(
      'desc',
      { id: `${id}-desc` },
      escapeXml([`Scale ${scale.name}.`, ...bolts.map((b) => tell(b, unit))].join(' ')),
    ),
    rect(0, 0, WIDTH, height, { fill: palette.paper }),
    ...parts,
  )
}
