/** One bolt lying on its side beside a rule, to scale: true to size where a millimetre of the screen is known, so that the bolt in the hand can be laid on it. */
import { intervalOf, type Kind, type LengthUnit, MILLIMETRES_IN } from '@gripbook/engine'
import { PALETTES, type Palette } from '../look/palette.ts'
import type { DrawnThread, Look } from '../section/input.ts'
import { coordinate, element, escapeXml, line } from '../svg/element.ts'
import { figure, intervalFigures } from '../svg/figures.ts'
import { safePrefix } from '../svg/ids.ts'
import { textLine } from '../svg/text.ts'
import { boltShape, headRoom } from './boltShape.ts'
import { loneBolt } from './loneBolt.ts'

export type LyingBoltInput = {
  kind: Kind
  thread: DrawnThread
  title: string
  look: Look
  /** px in one true millimetre. */
  pixels: number
  /** px that there are from side to side, and from top to bottom. */
  room: { width: number; height: number }
  prefix?: string
}

export type LyingBolt = {
  svg: string
  /** Drawn size to true size: 1, 1/2, 1/4 …, or 2 and 4 where there is room and the bolt is small. */
  share: number
}

const MARGIN = 6
/** Under the bolt: the rule and its figures. */
const RULE = 30
const TYPE = 13
const SHARES = [1, 1 / 2, 1 / 4, 1 / 8, 1 / 16] as const

/**
 * The bolt as an SVG document of `room.width` px, head to the left, the rule's 0 under its head. Sizes in mm in, CSS px out. What is longer than the
 * room is drawn to half, a quarter … of its size, and says so in `share`. Errors: as `sectionDrawing`.
 */
export function lyingBolt({ kind, thread, title, look, pixels, room, prefix = 'bolt' }: LyingBoltInput): LyingBolt {
  const unit = look.unit ?? 'mm'
  const palette = PALETTES[look.theme]
  const id = safePrefix(prefix)
  const own = intervalOf(kind.length)
  const { known, ...lengths } = loneBolt(kind, thread)
  const { length } = lengths
  const head = headRoom(kind, thread.diameter)
  const radius = Math.max(head.radius, thread.diameter / 2)
  const free = { width: room.width - 2 * MARGIN - 8, height: room.height - RULE - 2 * MARGIN }
  const fits = (share: number) =>
    (head.height + length) * pixels * share <= free.width && 2 * radius * pixels * share <= free.height
  const share = SHARES.find(fits) ?? SHARES.at(-1)!
  const scale = pixels * share
  const seat = MARGIN + head.height * scale
  const axis = MARGIN + radius * scale
  const shape = boltShape(
    kind,
    {
      diameter: thread.diameter,
      pitch: thread.pitch,
      ...lengths,
      ...(known ? {} : { brokenAt: length }),
    },
    { x: 0, y: 0, pixels: scale, palette },
  )
  const foot = axis + radius * scale + 6
  const height = Math.ceil(foot + RULE)
  const said = own.lo === 0 && !known ? '?' : `${intervalFigures(own, unit)} ${unit}`
  return {
    share,
    svg: element(
      'svg',
      {
        xmlns: 'http://www.w3.org/2000/svg',
        viewBox: `0 0 ${room.width} ${height}`,
        width: room.width,
        height,
        role: 'img',
        'aria-labelledby': `${id}-title`,
        'data-pixels-per-mm': String(scale),
      },
      element('title', { id: `${id}-title` }, escapeXml(`${title}, ${said}`)),
      // A bolt stands head up in its own drawing; turned, it lies head to the left.
      element('g', { transform: `translate(${coordinate(seat)} ${coordinate(axis)}) rotate(-90)` }, shape),
      rule(seat, foot, length, scale, unit, palette),
    ),
  }
}

/** From 0 under the head to the end of the bolt, figures each 10 mm or half inch. */
function rule(from: number, y: number, mm: number, pixels: number, unit: LengthUnit, palette: Palette): string {
  const size = MILLIMETRES_IN[unit]
  const [labelled, small] = unit === 'mm' ? [10, pixels >= 2.5 ? 1 : 5] : [0.5, pixels >= 2.5 ? 0.0625 : 0.125]
  const spaced = labelled * size * pixels >= 24 ? labelled : labelled * 2
  const parts = [line(from, y, from + mm * pixels, y, { stroke: palette.ink, 'stroke-width': 1.2 })]
  for (let i = 0; i * small * size <= mm + 1e-9; i++) {
    const value = i * small
    const x = from + value * size * pixels
    const whole = Math.abs(value / spaced - Math.round(value / spaced)) < 1e-9
    const half = Math.abs((2 * value) / spaced - Math.round((2 * value) / spaced)) < 1e-9
    parts.push(
      line(x, y, x, y + (whole ? 9 : half ? 6 : 3.5), { stroke: palette.ink, 'stroke-width': whole ? 1.2 : 0.7 }),
    )
    if (whole)
      parts.push(
        textLine(figure(value * size, unit), x, y + 22, {
          size: TYPE,
          fill: palette.quiet,
          anchor: i === 0 ? 'start' : 'middle',
        }),
      )
  }
  return parts.join('')
}
