/** The photographs of a unit, and the signs that it was opened before. */
import type { FoldedUnit } from '@gripbook/record'
import { standingOf } from './standing.ts'

export type Taken = { photograph: string; caption: string | null; at: string }

/** All but those that faces and parts show themselves, in the order in which they were taken. */
export function unitPhotographs({ things, faces }: FoldedUnit): Taken[] {
  const shownElsewhere = new Set<unknown>([
    ...Object.values(faces).map(({ photograph }) => photograph?.value.photograph),
    ...Object.values(things.part).map(({ photograph }) => photograph?.value),
  ])
  return Object.entries(things.photograph)
    .filter(([photograph, { part }]) => part === undefined && !shownElsewhere.has(photograph))
    .map(([photograph, fields]) => {
      const caption = fields.caption?.value
      const [first] = Object.values(fields)
      return { photograph, caption: typeof caption === 'string' ? caption : null, at: first?.at ?? '' }
    })
}

/** Signs that stand, each once. */
export function signsOf(folded: FoldedUnit): string[] {
  const signs = standingOf(folded)
    .filter(({ type }) => type === 'opened-before-seen')
    .map(({ body }) => body.sign)
  return [...new Set(signs)].filter((sign) => typeof sign === 'string')
}
