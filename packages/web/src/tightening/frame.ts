/** Where a place of the face in millimetres lies on its picture, and back. */
import type { Face, Point } from '@gripbook/engine'
import type { FaceWork } from '@gripbook/record'
import { pictureOf, placesOf } from '../face/marks.ts'
import type { PicturePoint } from '../face/stage/view.ts'

export type Frame = {
  /** Pixels of the picture to one millimetre. */
  scale: number
  toPicture(place: readonly [number, number]): PicturePoint
  /** mm, to a tenth. */
  toFace(point: PicturePoint): Point
}

/**
 * From the holes that have both a mark and a place in mm, and the scale of the photograph where it was set; the photograph is taken as seen
 * straight from above and not turned against the face. Null while there is no scale: fewer than two such holes, and none set.
 */
export function frameOf(face: Pick<Face, 'holes'>, work: FaceWork | undefined): Frame | null {
  const picture = pictureOf(work)
  const { width, height, pixelsPerMillimetre: set } = picture
  const places = placesOf(face, work, picture)
  const pairs = face.holes.flatMap(({ id, at }) => {
    const place = places.get(id)
    return at === undefined || place === undefined
      ? []
      : [{ at, pixel: [place[0] * width, -place[1] * height] as const }]
  })
  const scale = set ?? fitted(pairs)
  if (scale === null) return null
  const off = (axis: 0 | 1) => mean(pairs.map(({ at, pixel }) => pixel[axis] - scale * at[axis]))
  const left = pairs.length === 0 ? 0 : off(0)
  const bottom = pairs.length === 0 ? -height : off(1)
  return {
    scale,
    toPicture: ([x, y]) => ({ x: (left + scale * x) / width, y: -(bottom + scale * y) / height }),
    toFace: ({ x, y }) => [tenth((x * width - left) / scale), tenth((-y * height - bottom) / scale)],
  }
}

type Pair = { at: readonly [number, number]; pixel: readonly [number, number] }

/** Least squares; null where the places are one spot or stand mirrored. */
function fitted(pairs: readonly Pair[]): number | null {
  let over = 0
  let under = 0
  for (const axis of [0, 1] as const) {
    const at = mean(pairs.map((pair) => pair.at[axis]))
    const pixel = mean(pairs.map((pair) => pair.pixel[axis]))
    for (const pair of pairs) {
      over += (pair.pixel[axis] - pixel) * (pair.at[axis] - at)
      under += (pair.at[axis] - at) ** 2
    }
  }
  return under > 1e-6 && over > 0 ? over / under : null
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
const tenth = (value: number) => Math.round(value * 10) / 10

/** Where every hole is on the picture: at its mark, else at its place in mm. */
export function holePlaces(
  face: Pick<Face, 'holes'>,
  work: FaceWork | undefined,
  frame: Frame | null,
): Map<string, PicturePoint> {
  const picture = pictureOf(work)
  const places = placesOf(face, work, picture)
  return new Map(
    face.holes.flatMap(({ id, at }) => {
      const place = places.get(id)
      if (place !== undefined) return [[id, { x: place[0], y: place[1] }] as const]
      return at === undefined || frame === null ? [] : [[id, frame.toPicture(at)] as const]
    }),
  )
}
