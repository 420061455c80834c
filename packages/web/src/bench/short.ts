/** Answers at the bench: another bolt is in the hole, or one is short. */
import type { Face, FaceAnswer, PairVerdict } from '@gripbook/engine'
import type { FoldedUnit } from '@gripbook/record'

export type OtherIn = {
  verdict: PairVerdict
  why: string | null
  /** Holes that have nothing else than this kind, while there is no one of it too many. */
  shortOf: string[]
}

/** What to say of a kind that is in a hole now; where nothing is known of the two, that it may be. */
export function otherIn(answer: FaceAnswer | null, hole: string, kind: string): OtherIn {
  const pair = answer?.pairs.find((one) => one.hole === hole && one.kind === kind)
  if (answer === null || pair === undefined) return { verdict: 'may', why: null, shortOf: [] }
  const needing = Object.entries(answer.holes).flatMap(([id, { may }]) =>
    id !== hole && may.length === 1 && may[0] === kind ? [id] : [],
  )
  const spare = answer.leftOver[kind] ?? 0
  return { verdict: pair.verdict, why: pair.why, shortOf: pair.verdict === 'cannot' || spare > 0 ? [] : needing }
}

export type Short = {
  /** Holes of this face into which one of the kind was put. */
  placed: string[]
  /** Of these the ones where it cannot belong. */
  wrong: string[]
  /** How many holes of the face want one, where that is settled. */
  wanted: number | null
  /** Kinds of the tray that fit the hole and of which one is left over. */
  instead: string[]
  /** Standard sizes that would fit: "M8×35". */
  sizes: string[]
  /** Names of other faces with a hole for which the record has this size as found. */
  otherFaces: string[]
}

/** What the record and the placement know of a bolt that is missing for a hole. */
export function shortOf(
  folded: Pick<FoldedUnit, 'faces' | 'unit'>,
  face: Face,
  answer: FaceAnswer | null,
  hole: string,
  kind: string | null,
): Short {
  const work = folded.faces[face.id]?.holes ?? {}
  const placed = Object.entries(work).flatMap(([id, { placed }]) => (id !== hole && placed?.value === kind ? [id] : []))
  const verdictOf = (id: string) => answer?.pairs.find((pair) => pair.hole === id && pair.kind === kind)?.verdict
  const wanting = Object.values(answer?.holes ?? {}).filter(({ may }) => may.length === 1 && may[0] === kind).length
  const fits = (answer?.pairs ?? []).filter(
    (pair) => pair.hole === hole && pair.kind !== kind && pair.verdict === 'fits',
  )
  return {
    placed: kind === null ? [] : placed,
    wrong: placed.filter((id) => verdictOf(id) === 'cannot'),
    wanted: answer === null || kind === null || wanting === 0 ? null : wanting,
    instead: fits.flatMap((pair) => ((answer?.leftOver[pair.kind] ?? 0) > 0 ? [pair.kind] : [])),
    sizes: (answer?.wanted ?? []).flatMap((one) =>
      one.hole === hole ? one.lengths.map((length) => `${one.thread}×${length}`) : [],
    ),
    otherFaces: kind === null ? [] : alsoOn(folded, face.id, kind),
  }
}

/** Faces of the unit that share the tray in which the kind lies and had one as found. */
function alsoOn({ unit }: Pick<FoldedUnit, 'unit'>, face: string, kind: string): string[] {
  if (!(unit.kinds ?? []).some(({ id }) => id === kind)) return []
  return unit.faces.flatMap((other) =>
    other.id !== face && other.holes.some(({ asFound }) => asFound === kind) ? [other.name ?? other.id] : [],
  )
}
