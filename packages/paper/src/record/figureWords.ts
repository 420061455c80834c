/** Figures, times and names as they stand in a build record. */
import { writeQuantity } from '@gripbook/engine'
import { boltName, sizeName } from '@gripbook/print'
import {
  type BuildRecord,
  type BuiltFace,
  type BuiltFigure,
  type BuiltPart,
  type BuiltPass,
  type Done,
  type Instrument,
  isUuid,
  sayPlace,
  type TakenFigure,
} from '@gripbook/record'
import { words } from './words.ts'

/** `2026-03-04 09:15` of an entry’s clock. */
export function timeWords(at: string): string {
  return `${at.slice(0, 10)} ${at.slice(11, 16)}`
}

/** A person by name; where only the id is known, by its beginning. */
export function whoWords(who: string): string {
  return isUuid(who) ? words.person(who.slice(0, 8)) : who
}

export function byWords({ who, at }: Done): string {
  return words.by(whoWords(who), timeWords(at))
}

/** A bolt by its name in the tray of its face; "none" for an empty hole. */
export function boltWords(face: BuiltFace, kind: string): string {
  if (kind === 'none') return words.none
  return boltName(kind, new Map(face.kinds.map((one) => [one.id, one])))
}

/** A bolt by its size, for where there is little room; two kinds of one size go by their names. */
export function sizesWords(face: BuiltFace, kinds: readonly string[]): string[] {
  const tray = new Map(face.kinds.map((one) => [one.id, one]))
  const sizes = kinds.map((kind) => (kind === 'none' ? words.none : tray.has(kind) ? sizeName(tray.get(kind)!) : kind))
  return new Set(sizes).size < kinds.length ? [...kinds] : sizes
}

export function faceWords({ id, name }: Pick<BuiltFace, 'id' | 'name'>): string {
  return name ?? id
}

/** A face by its id, as it is called; of one that is not there the id. */
export function faceNamed(faces: readonly BuiltFace[], id: string): string {
  return faceWords(faces.find((face) => face.id === id) ?? { id })
}

/** What the wrench showed; without a torque and an angle, that it was by feel. */
export function torqueWords({ torque, angle, byFeel }: BuiltPass): string {
  const figures = [
    ...(torque === undefined ? [] : [writeQuantity(torque, 'torque')]),
    ...(angle === undefined ? [] : [`${angle}°`]),
    ...(byFeel ? [words.face.byFeel] : []),
  ]
  return figures.join(' + ')
}

export function instrumentWords({ name, number, calibratedUntil }: Instrument): string {
  return [
    name,
    ...(number === undefined ? [] : [number]),
    ...(calibratedUntil === undefined ? [] : [words.face.until(calibratedUntil)]),
  ].join(', ')
}

export function takenWords({ value, plusMinus, unit }: Pick<TakenFigure, 'value' | 'plusMinus' | 'unit'>): string {
  return `${value}${plusMinus === undefined ? '' : ` ± ${plusMinus}`} ${unit}`
}

export function limitWords({ least, most, unit }: NonNullable<BuiltFigure['limit']>): string {
  const { atLeast, atMost, between } = words.figures
  if (least === undefined) return most === undefined ? words.face.unknown : atMost(most, unit)
  return most === undefined ? atLeast(least, unit) : between(least, most, unit)
}

export function partWords({ id, what, name, count }: BuiltPart): string {
  const called = name ?? (what === 'other' || id.includes(what.split(' ').at(-1)!) ? id : `${what} ${id}`)
  return count === undefined ? called : `${count} × ${called}`
}

/** `hole 3 of the oil pan`, with the face by its name. */
export function placeWords(place: readonly string[], faces: readonly BuiltFace[]): string {
  const [what, id, ...within] = place
  return sayPlace(what === 'face' && id !== undefined ? [what, faceNamed(faces, id), ...within] : place)
}

/** The place of what lies at a face or at a hole of it; nothing for what lies at none. */
export function atWords({ face, hole }: { face?: string; hole?: string }, faces: readonly BuiltFace[]): string[] {
  if (face === undefined) return []
  return [placeWords(['face', face, ...(hole === undefined ? [] : ['hole', hole])], faces)]
}

/** Bolts that left or joined the tray. */
export function boltsWords(
  { face, kind, count, what, reason = '' }: BuildRecord['bolts'][number],
  faces: readonly BuiltFace[],
): string {
  const at = faces.find(({ id }) => id === face)
  return words.bolts(count, at === undefined ? kind : boltWords(at, kind), what, reason)
}

/** `bottomDepth` as `bottom depth`. */
export function spaced(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
}
