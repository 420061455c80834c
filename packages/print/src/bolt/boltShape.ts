import type { Kind } from '@gripbook/engine'
import type { Palette } from '../look/palette.ts'
import { element, line, polyline, rect } from '../svg/element.ts'
import { zigzag } from './breakLine.ts'
import { hasStudEnd, headShape } from './headShape.ts'

/** Root diameter of a bolt's thread in pitches under the nominal one: d3 = d − 1.226869 P. @source ISO 724 and ISO 68-1 profile (d3: ISO 898-1) */
const ROOT = 1.226869

/** Length of a stud end on a head in diameters, drawn thin: it is in no reading (common practice, no source). */
export const STUD_END = 1.6

export type BoltPlace = {
  /** The axis and the underside of the head, px. */
  x: number
  y: number
  pixels: number
  palette: Palette
}

export type BoltSizes = {
  diameter: number
  pitch: number
  /** mm from the head's underside to the tip; the rest follows from it. */
  length: number
  threadLength: number
  tip: number
  /** Where the bolt is broken off because more is not known, mm from the head's underside. */
  brokenAt?: number
}

/** mm that the head stands above its seat, stud end included. */
export function headRoom(kind: Kind, diameter: number): { height: number; radius: number } {
  const head = headShape(kind.head, diameter)
  const onTop = head.form === 'nut' ? 0.5 * diameter : hasStudEnd(kind.features) ? STUD_END * diameter : 0
  return { height: head.height + onTop, radius: head.radius }
}

/** A threaded end with its root as a thin line (ISO 6410-1), from `from` to `to` px, the chamfer at `to`. */
function threadedEnd(
  place: BoltPlace,
  d: number,
  pitch: number,
  from: number,
  to: number,
  chamfer: number,
  stated: boolean,
) {
  const { x, pixels, palette } = place
  const [outer, root] = [(d / 2) * pixels, ((d - ROOT * pitch) / 2) * pixels]
  const full = to - Math.sign(to - from) * Math.min(chamfer * pixels, Math.abs(to - from))
  const outline = [
    [x - outer, from],
    [x - outer, full],
    [x - root, to],
    [x + root, to],
    [x + outer, full],
    [x + outer, from],
  ] as const
  const thin = { stroke: palette.boltLine, 'stroke-width': 0.8 }
  return [
    polyline(
      outline,
      { fill: palette.bolt, stroke: palette.boltLine, 'stroke-width': stated ? 1.4 : 0.8, 'stroke-linejoin': 'round' },
      true,
    ),
    line(x - root, from, x - root, full, thin),
    line(x + root, from, x + root, full, thin),
    line(x - outer, full, x + outer, full, thin),
  ].join('')
}

function head(kind: Kind, d: number, place: BoltPlace): string {
  const { x, y, pixels, palette } = place
  const shape = headShape(kind.head, d)
  const at = ([mmX, mmY]: readonly [number, number]) => [x + mmX * pixels, y - mmY * pixels] as const
  const width = shape.stated ? 1.4 : 0.8
  const parts = [
    polyline(
      shape.outline.map(at),
      {
        fill: palette.bolt,
        stroke: palette.boltLine,
        'stroke-width': width,
        'stroke-linejoin': 'round',
        'data-part': 'head',
      },
      true,
    ),
    ...shape.edges.map(([a, b]) =>
      polyline([at(a), at(b)], { stroke: palette.boltLine, 'stroke-width': 0.8, fill: 'none' }),
    ),
    ...shape.hidden.map(([a, b]) =>
      polyline([at(a), at(b)], {
        stroke: palette.boltLine,
        'stroke-width': 0.8,
        fill: 'none',
        'stroke-dasharray': '3 2',
      }),
    ),
  ]
  return parts.join('')
}

/** A bolt in view (fasteners are never cut in a section), true to its sizes, with the head's underside at `place.y`. */
export function boltShape(kind: Kind, sizes: BoltSizes, place: BoltPlace): string {
  const { x, y, pixels, palette } = place
  const { diameter: d, pitch, brokenAt } = sizes
  const shape = headShape(kind.head, d)
  const parts: string[] = []
  const top = y - shape.height * pixels
  if (shape.form === 'nut') parts.push(threadedEnd(place, d, pitch, top, top - 0.5 * d * pixels, pitch, false))
  else if (hasStudEnd(kind.features))
    parts.push(threadedEnd(place, d, pitch, top, top - STUD_END * d * pixels, pitch, false))
  const half = (d / 2) * pixels
  const solid = { fill: palette.bolt, stroke: palette.boltLine, 'stroke-width': 1.4 }
  if (brokenAt !== undefined) {
    const end = y + brokenAt * pixels
    parts.push(rect(x - half, y, 2 * half, end - y, { fill: palette.bolt }))
    for (const side of [-half, half]) parts.push(line(x + side, y, x + side, end, solid))
    parts.push(zigzag(x - half - 5, x + half + 5, end, palette))
  } else {
    const threadTop = y + (sizes.length - sizes.threadLength) * pixels
    const tip = y + sizes.length * pixels
    if (threadTop > y) parts.push(rect(x - half, y, 2 * half, threadTop - y, { ...solid, 'data-part': 'shank' }))
    parts.push(threadedEnd(place, d, pitch, threadTop, tip, sizes.tip, true))
    parts.push(line(x - half, threadTop, x + half, threadTop, { stroke: palette.boltLine, 'stroke-width': 1.4 }))
  }
  parts.push(head(kind, d, place))
  return element('g', { 'data-part': 'bolt' }, ...parts)
}
