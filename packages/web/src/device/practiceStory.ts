/** What is written so that the practice unit stands in a record: the unit file, its pictures with their marks, parts that came off, signs. */
import {
  faceDescribed,
  facePhotographed,
  type Happening,
  happeningsOf,
  openedBeforeSeen,
  partCameOut,
  photographed,
} from '@gripbook/record'

type UnitFile = Parameters<typeof happeningsOf>[0]
type PartBody = Parameters<typeof partCameOut>[0]
type FaceBody = Parameters<typeof faceDescribed>[0]
type Pictured = { file: string; width: number; height: number }

/** What lies beside the unit file: marks are pixels of the picture. */
export type PracticeFile = {
  model: string
  complaint: string
  pictures: Record<string, Pictured & { pixelsPerMillimetre: number; marks: Record<string, [number, number]> }>
  /** What a face is told of its cover. */
  tightening: Record<string, Omit<FaceBody, 'face'>>
  parts: readonly (Pictured & Pick<PartBody, 'part' | 'what' | 'name' | 'face' | 'hole' | 'wayRound' | 'condition'>)[]
  signs: readonly (Pictured & { face: string; sign: string })[]
}

/** The pictures that have to be kept first, each once. */
export function filesOf(practice: PracticeFile): string[] {
  const all = [...Object.values(practice.pictures), ...practice.parts, ...practice.signs]
  return [...new Set(all.map(({ file }) => file))]
}

/** `kept`: the name in entries of each picture file. A picture that is not among them is left out, and what it shows is told in words alone. */
export function practiceHappenings(
  unit: UnitFile,
  practice: PracticeFile,
  kept: ReadonlyMap<string, string>,
): Happening[] {
  const { model, complaint } = practice
  // The note of the file tells where its secrets stand.
  const { note: _, ...shown } = unit
  return [
    ...happeningsOf(shown).flatMap((happening) => {
      if (happening.type === 'unit-taken-in') return [{ ...happening, body: { ...happening.body, model, complaint } }]
      const face = String(happening.body.face)
      if (happening.type === 'face-described') {
        const told = practice.tightening[face]
        return [
          happening,
          ...faceOnPicture(practice, face, kept),
          ...(told === undefined ? [] : [faceDescribed({ face, ...told })]),
        ]
      }
      const mark = practice.pictures[face]?.marks[String(happening.body.hole)]
      if (happening.type === 'hole-marked' && mark !== undefined)
        return [{ ...happening, body: { ...happening.body, mark } }]
      return [happening]
    }),
    ...practice.signs.flatMap(({ face, sign, file, width, height }) => {
      const photograph = kept.get(file)
      if (photograph === undefined) return [openedBeforeSeen({ face, sign })]
      return [
        openedBeforeSeen({ face, sign, photograph }),
        photographed({ photograph, width, height, face, caption: sign }),
      ]
    }),
    ...practice.parts.map(({ part, what, name, face, hole, wayRound, condition, file }) => {
      const photograph = kept.get(file)
      return partCameOut({
        part,
        what,
        ...(name === undefined ? {} : { name }),
        ...(face === undefined ? {} : { face }),
        ...(hole === undefined ? {} : { hole }),
        ...(wayRound === undefined ? {} : { wayRound }),
        ...(condition === undefined ? {} : { condition }),
        ...(photograph === undefined ? {} : { photograph }),
      })
    }),
  ]
}

function faceOnPicture(practice: PracticeFile, face: string, kept: ReadonlyMap<string, string>): Happening[] {
  const picture = practice.pictures[face]
  const photograph = picture && kept.get(picture.file)
  if (picture === undefined || photograph === undefined) return []
  const { width, height, pixelsPerMillimetre } = picture
  return [facePhotographed({ face, photograph, width, height, pixelsPerMillimetre })]
}
