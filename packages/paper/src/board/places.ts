/** Where the holes of a face stand on its board, and how far that is true. */
import type { Face, Point } from '@gripbook/engine'
import type { FaceWork } from '@gripbook/record'
import type { Place } from '../sheet.ts'

/** Marks on the photograph of a face, pixels from its upper left corner. */
export type Marks = { places: Record<string, readonly [number, number]>; pixelsPerMillimetre?: number }

/** The marks of a face of the record; absent where no hole was marked. */
export function marksOf(work: FaceWork | undefined): Marks | undefined {
  const marked = Object.entries(work?.holes ?? {}).flatMap(([id, { mark }]) =>
    mark ? [[id, mark.value] as const] : [],
  )
  if (marked.length === 0) return undefined
  const perMillimetre = work?.photograph?.value.pixelsPerMillimetre
  return {
    places: Object.fromEntries(marked),
    ...(perMillimetre === undefined ? {} : { pixelsPerMillimetre: perMillimetre }),
  }
}

/**
 * `true`: places in mm were stated. `estimated`: pixels with a scale that was taken from the photograph. `none`: pixels without a scale, or no
 * places at all (`row`).
 */
export type BoardScale = 'true' | 'estimated' | 'none' | 'row'

export type BoardPlaces = {
  scale: BoardScale
  /** mm, x to the right, y downwards, in no particular place. */
  holes: Map<string, Place>
  /** Holes whose place is not known while that of others is. */
  without: string[]
  outlines: Place[][]
}

/** Neighbours without a scale are set at least so far apart, mm, that bolts can be stuck beside each other; a row has as much. */
const APART = 32
const IN_A_ROW = 5
/** Pixels without a scale are set to at most this, mm across, where that keeps neighbours apart. */
const USUAL_ACROSS = 150

/** Places of the unit file's mm where more holes have them than have marks; else the photograph's pixels. Empty for a face without holes. */
export function boardPlaces(face: Face, marks: Marks | undefined): BoardPlaces {
  const inMillimetres = face.holes.flatMap(({ id, at }): [string, Place][] => (at ? [[id, flipped(at)]] : []))
  const inPixels = face.holes.flatMap(({ id }): [string, Place][] => {
    const mark = marks && Object.hasOwn(marks.places, id) ? marks.places[id] : undefined
    return mark ? [[id, mark]] : []
  })
  if (inMillimetres.length > 0 && inMillimetres.length >= inPixels.length) {
    const { outline, openings = [] } = face.cover ?? {}
    const outlines = outline ? [outline, ...openings].map((points) => points.map(flipped)) : []
    return found(face, 'true', new Map(inMillimetres), outlines)
  }
  if (inPixels.length > 0) {
    const perMillimetre = marks?.pixelsPerMillimetre
    const factor = perMillimetre === undefined ? fitting(inPixels.map(([, place]) => place)) : 1 / perMillimetre
    const scaled = inPixels.map(([id, [x, y]]): [string, Place] => [id, [x * factor, y * factor]])
    return found(face, perMillimetre === undefined ? 'none' : 'estimated', new Map(scaled), [])
  }
  const across = Math.min(IN_A_ROW, Math.ceil(Math.sqrt(face.holes.length)))
  const row = face.holes.map(({ id }, i): [string, Place] => [
    id,
    [(i % across) * 1.3 * APART, Math.floor(i / across) * APART],
  ])
  return { scale: 'row', holes: new Map(row), without: [], outlines: [] }
}

function found(face: Face, scale: BoardScale, holes: Map<string, Place>, outlines: Place[][]): BoardPlaces {
  return { scale, holes, without: face.holes.filter(({ id }) => !holes.has(id)).map(({ id }) => id), outlines }
}

/** The unit file counts y upwards, paper downwards. */
function flipped([x, y]: Point): Place {
  return [x, -y]
}

/** mm for one pixel where nobody knows: the face is as wide as a sheet, or wider where neighbours would touch. */
function fitting(places: readonly Place[]): number {
  const [xs, ys] = [places.map(([x]) => x), places.map(([, y]) => y)]
  const across = Math.max(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys))
  const nearest = Math.min(
    ...places.flatMap(([x, y], i) => places.slice(i + 1).map(([x2, y2]) => Math.hypot(x - x2, y - y2))),
  )
  const usual = across > 0 ? USUAL_ACROSS / across : 1
  const apart = Number.isFinite(nearest) && nearest > 0 ? APART / nearest : usual
  return Math.min(3 * usual, Math.max(usual, apart))
}
