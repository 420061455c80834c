/** Where in a unit something happens: pairs of what it is and its id, from the outside inwards. The unit itself is `[]`. */
export type Place = readonly string[]

export const unitPlace: Place = []
export const facePlace = (face: string): Place => ['face', face]
export const holePlace = (face: string, hole: string): Place => ['face', face, 'hole', hole]
/** A kind in the tray of a face, or in the tray that the faces share. */
export const kindPlace = (face: string | undefined, kind: string): Place =>
  face === undefined ? ['kind', kind] : ['face', face, 'kind', kind]

/** Something else that the unit has by name: a part, a plug, a clock. */
export const THINGS = ['part', 'plug', 'fit', 'job', 'clock', 'limit', 'instrument', 'reading', 'photograph'] as const
export type ThingName = (typeof THINGS)[number]
export const thingPlace = (what: ThingName, id: string): Place => [what, id]

/** Fields of a hole that a bolt which is backed out takes with it. */
export const STEP = 'step '

/** A place as one text, to look it up by. Ids hold no control characters, so the texts of two places never meet. */
export function keyOf(place: Place): string {
  return place.join('\u0000')
}

/** A place in words: `hole 3 of pan`. */
export function sayPlace(place: Place): string {
  if (place.length === 0) return 'the unit'
  const parts: string[] = []
  for (let i = place.length - 2; i >= 0; i -= 2)
    parts.push(place[i] === 'face' ? place[i + 1]! : `${place[i]} ${place[i + 1]}`)
  return parts.join(' of ')
}
