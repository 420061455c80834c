import { headRoom, STUD_END } from '../bolt/boltShape.ts'
import { PALETTES } from '../look/palette.ts'
import { element, escapeXml, rect } from '../svg/element.ts'
import { safePrefix } from '../svg/ids.ts'
import { cut } from './cut.ts'
import { describe } from './describe.ts'
import { columnWidth, dimensionsOf, drawDimensions, LANE } from './dimensions.ts'
import { hatches } from './hatch.ts'
import { header } from './header.ts'
import type { SectionInput } from './input.ts'
import { measure } from './measures.ts'
import { drawNotes, notesOf } from './notes.ts'
import { largestScale, PIXELS_PER_MM } from './scale.ts'
import { scaleBar } from './scaleBar.ts'
import { lacksStudEnd, levelsOf, type Sheet, standsBeside } from './sheet.ts'

/** Natural width in px: a phone held upright. Type of 13 px then stays above 12 px on a screen of 390. */
const WIDTH = 420
const MARGIN = 10
/** px for the section across, and down at most. */
const ROOM = { width: 114, height: 520 }
/** Room in px between the columns of words and the section: bend of the leaders, brackets. */
const BEND = 12
const BRACKET = 18

/**
 * Section drawing of one hole with a bolt in it, as an SVG document, true to one stated scale. Lengths are drawn at the middle of their
 * interval with a band between its ends; what is not known is broken off. Conventions: threads ISO 6410-1, hatching and break lines ISO 128,
 * drill lead 118°. The head is drawn seated: what is too long shows as an overlap in the pattern of a fault.
 * Sizes in mm in, CSS px out. Errors: none for a unit that has passed the file's checks; a figure that is no number throws `Bug`.
 */
export function sectionDrawing(input: SectionInput): string {
  const { look, hole, bolt, title, thread } = input
  const unit = look.unit ?? 'mm'
  const palette = PALETTES[look.theme]
  const prefix = safePrefix(input.prefix ?? `hole-${hole.id}`)
  const hatch = hatches(prefix, palette)
  const measures = measure(input)
  const levels = levelsOf(input, measures)
  const beside = standsBeside(input)
  const head = bolt ? { ...headRoom(bolt.kind, bolt.thread.diameter) } : { height: 0, radius: 0 }
  if (bolt && lacksStudEnd(input)) head.height += STUD_END * bolt.thread.diameter
  const halfMm = Math.max(1.25 * thread.diameter, beside ? 0 : 1.04 * head.radius)
  const besideMm = beside ? 2 * head.radius + 0.4 * thread.diameter : 0
  const tall = levels.end - levels.head + head.height
  const wide = 2 * halfMm + besideMm
  const room = { width: ROOM.width + (beside ? 20 : 0), height: ROOM.height }
  const printed = look.theme === 'print' && wide <= room.width / PIXELS_PER_MM && tall <= 200
  const scale = printed
    ? largestScale({ width: 0, height: 0 }, room, 1)
    : largestScale({ width: wide, height: tall }, room)

  const dimensions = dimensionsOf(measures, levels, unit, beside)
  const words = columnWidth(dimensions)
  const half = halfMm * scale.pixels
  const x = MARGIN + words + BEND + 3 * LANE + 6 + half
  const top = header({ title, verdict: bolt?.verdict, why: bolt?.why }, MARGIN, WIDTH - 2 * MARGIN, palette)
  const start = top.bottom + 12
  const seat = start + (head.height - levels.head) * scale.pixels
  const sheet: Sheet = {
    input,
    measures,
    levels,
    palette,
    hatch,
    pixels: scale.pixels,
    x,
    half,
    boltX: beside ? x + half + (besideMm - head.radius) * scale.pixels : x,
    y: (mm) => seat + mm * scale.pixels,
  }
  const right = x + half + besideMm * scale.pixels + BRACKET + BEND
  const left = drawDimensions(sheet, dimensions, MARGIN, words, start)
  const notes = drawNotes(sheet, notesOf(sheet), right, WIDTH - MARGIN - right, start)
  const foot = Math.max(left.bottom, notes.bottom, sheet.y(levels.end) + 8) + 20
  const height = Math.ceil(foot + 38)
  const said =
    scale.name === '1 : 1' && look.theme === 'print'
      ? `Scale ${scale.name}, ${unit}, true size at 100 %`
      : `Scale ${scale.name}, ${unit}`
  const size =
    look.theme === 'print'
      ? { width: `${(WIDTH / PIXELS_PER_MM).toFixed(3)}mm`, height: `${(height / PIXELS_PER_MM).toFixed(3)}mm` }
      : { width: WIDTH, height }
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${WIDTH} ${height}`,
      ...size,
      role: 'img',
      'aria-labelledby': `${prefix}-title ${prefix}-desc`,
      'data-pixels-per-mm': String(scale.pixels),
      'data-seat': String(seat),
    },
    element('title', { id: `${prefix}-title` }, escapeXml(title)),
    element('desc', { id: `${prefix}-desc` }, escapeXml(describe(input, measures, scale.name))),
    hatch.defs,
    rect(0, 0, WIDTH, height, { fill: palette.paper }),
    top.svg,
    cut(sheet),
    left.svg,
    notes.svg,
    scaleBar(MARGIN, foot, scale.pixels, said, unit, palette),
  )
}
