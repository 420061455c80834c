/** Which bolt goes into a hole now: what was put there, else what belongs, else what the person chooses. */
import type { FaceAnswer, Hole, Kind } from '@gripbook/engine'

export type KindAt = {
  /** Null: it has to be chosen. */
  kind: string | null
  /** What may be chosen, the likeliest first; empty where nothing is left to choose. */
  choices: { kind: string; hint: 'likeliest' | 'as found' | null }[]
}

export function kindAt(
  hole: Hole,
  placed: string | undefined,
  answer: FaceAnswer | null,
  kinds: readonly Kind[],
): KindAt {
  if (placed !== undefined) return { kind: placed, choices: [] }
  const here = answer?.holes[hole.id]
  if (here?.verdict === 'settled' && here.may[0] !== undefined) return { kind: here.may[0], choices: [] }
  const chance = (kind: string) => here?.likely[kind] ?? 0
  const may =
    here === undefined || here.may.length === 0
      ? kinds.map(({ id }) => id)
      : here.may.toSorted((a, b) => chance(b) - chance(a))
  const likeliest = here === undefined || here.may.length === 0 ? null : (may[0] ?? null)
  return {
    kind: may.length === 1 ? may[0]! : null,
    choices:
      may.length < 2
        ? []
        : may.map((kind) => ({
            kind,
            hint: kind === likeliest ? 'likeliest' : kind === hole.asFound ? 'as found' : null,
          })),
  }
}

/** What may be in each hole, for the stop that asks whether a bolt belongs; only where the answer says anything. */
export function belongsBy(
  face: string,
  answer: FaceAnswer | null,
): { belongs?: Record<string, Record<string, string[]>> } {
  if (answer === null) return {}
  const holes = Object.entries(answer.holes).filter(([, { verdict }]) => verdict !== 'contradicted')
  return { belongs: { [face]: Object.fromEntries(holes.map(([hole, { may }]) => [hole, may])) } }
}
