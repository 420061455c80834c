import { listed, words } from '../words/index.ts'
import type { Mark } from './marks.ts'

/** A mark in one sentence, for a screen reader and for the list of holes. */
export function sayMark({ hole, shape, badge, under, said }: Mark, names: ReadonlyMap<string, string>): string {
  if (said !== undefined) return said
  const kinds =
    typeof under === 'string'
      ? words.face.under[under]
      : listed(
          under.map((kind) => names.get(kind) ?? kind),
          'or',
        )
  return words.face.mark(hole, words.face.shapes[shape], kinds, badge === null ? '' : words.face.badges[badge])
}
