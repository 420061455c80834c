/** Outlines of bolt heads in mm. What is not stated is in the usual proportion and drawn thin. */
import { type Head, intervalOf } from '@gripbook/engine'

type Point = readonly [x: number, y: number]

/** x from the axis, y up from the underside of the head. */
export type HeadShape = {
  form: 'hexagon' | 'flange' | 'socket' | 'round' | 'countersunk' | 'nut' | 'not stated'
  /** Above the underside, without a stud end. */
  height: number
  radius: number
  outline: readonly Point[]
  /** Edges seen on the head. */
  edges: readonly (readonly [Point, Point])[]
  /** Edges hidden in it. */
  hidden: readonly (readonly [Point, Point])[]
  /** Form and size are stated, so the outline is drawn full; otherwise thin. */
  stated: boolean
}

type Form = HeadForm['form']
type HeadForm = Pick<HeadShape, 'form'>

/** Studs first: "stud end" is a feature, "stud" a form. The words are those in use at the bench; anything else is shown as a plain block. */
function formOf(head: Head | undefined): Form {
  const word = head?.form.toLowerCase() ?? ''
  if (/\bstud\b/.test(word)) return 'nut'
  if (/flange/.test(word)) return 'flange'
  if (/counter|flat head/.test(word)) return 'countersunk'
  if (/button|pan|round|dome|cheese/.test(word)) return 'round'
  if (/socket|cap|lobe|spline/.test(word)) return 'socket'
  return /hex/.test(word) ? 'hexagon' : 'not stated'
}

function block(halfWidth: number, from: number, to: number, chamfer: number): Point[] {
  return [
    [-halfWidth, from],
    [-halfWidth, to - chamfer],
    [-halfWidth + chamfer * 1.7, to],
    [halfWidth - chamfer * 1.7, to],
    [halfWidth, to - chamfer],
    [halfWidth, from],
  ]
}

/** A hexagon seen over a corner: three sides, the middle one half of the width over corners. */
function hexagonEdges(acrossCorners: number, from: number, to: number, chamfer: number): [Point, Point][] {
  const x = acrossCorners / 4
  return [
    [
      [-x, from],
      [-x, to - chamfer],
    ],
    [
      [x, from],
      [x, to - chamfer],
    ],
  ]
}

/**
 * Shape of a head for a thread of `d` mm.
 * Proportions: hexagon s 1.6 d, height 0.65 d (ISO 4014 to a tenth of d); flange about 1.4 s and 2.1 d (EN 1665, ISO 4162); socket cap 1.5 d by
 * d (ISO 4762); button 1.75 d by 0.55 d, countersunk 2 d by 0.5 d and nut 0.85 d (common practice, no source).
 */
export function headShape(head: Head | undefined, d: number): HeadShape {
  const form = formOf(head)
  const flats = head?.acrossFlats === undefined ? undefined : intervalOf(head.acrossFlats)
  const known = flats !== undefined && Number.isFinite(flats.hi) && flats.hi > 0
  const s = known ? (flats.lo + flats.hi) / 2 : 1.6 * d
  const corners = s / Math.cos(Math.PI / 6)
  const shape = (height: number, outline: Point[], more: Partial<HeadShape> = {}): HeadShape => ({
    form,
    height,
    outline,
    radius: Math.max(...outline.map(([x]) => x)),
    edges: [],
    hidden: [],
    stated: known,
    ...more,
  })
  if (form === 'flange') {
    const [rim, base, top] = [Math.max(0.7 * s, 1.05 * d), 0.2 * d, 1.05 * d]
    const skirt: Point[] = [
      [corners / 2, base + 0.22 * d],
      [rim, base],
      [rim, 0],
    ]
    const left = skirt.map(([x, y]): Point => [-x, y]).reverse()
    const hexagon = block(corners / 2, base + 0.22 * d, top, 0.08 * d)
    return shape(top, [...left, ...hexagon.slice(1, -1), ...skirt], {
      edges: [
        ...hexagonEdges(corners, base + 0.2 * d, top, 0.08 * d),
        [
          [-corners / 2, base + 0.22 * d],
          [corners / 2, base + 0.22 * d],
        ],
      ],
    })
  }
  if (form === 'socket') {
    const key = 0.4 * d
    return shape(d, block(0.75 * d, 0, d, 0.06 * d), {
      stated: true,
      hidden: [
        [
          [-key, d],
          [-key, 0.45 * d],
        ],
        [
          [key, d],
          [key, 0.45 * d],
        ],
        [
          [-key, 0.45 * d],
          [key, 0.45 * d],
        ],
      ],
    })
  }
  if (form === 'round') {
    const [radius, height] = [0.875 * d, 0.55 * d]
    const dome = Array.from({ length: 13 }, (_, i): Point => {
      const angle = Math.PI - (i * Math.PI) / 12
      return [radius * Math.cos(angle), height * Math.sin(angle)]
    })
    return shape(height, dome, { stated: true })
  }
  if (form === 'countersunk') {
    return shape(0, [
      [-d, 0],
      [d, 0],
      [d / 2, -d / 2],
      [-d / 2, -d / 2],
    ])
  }
  const height = form === 'nut' ? 0.85 * d : 0.65 * d
  if (form === 'not stated') return shape(height, block(0.8 * d, 0, height, 0), { stated: false })
  return shape(height, block(corners / 2, 0, height, 0.08 * d), {
    edges: hexagonEdges(corners, 0, height, 0.08 * d),
  })
}

/** True where the bolt carries a second thread on its head, for a bracket. */
export function hasStudEnd(features: readonly string[] | undefined): boolean {
  return (features ?? []).some((feature) => /stud/i.test(feature))
}
