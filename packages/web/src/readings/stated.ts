/** What was stated by hand and stands: comparisons and trials, each with the entry that can be undone. */
import type { Rank, Trial } from '@gripbook/engine'
import { type FoldedUnit, readBody } from '@gripbook/record'

export type Stated<T> = { event: string; at: string; said: T }

function standing<T>(
  { entries, undone }: Pick<FoldedUnit, 'entries' | 'undone'>,
  type: string,
  face: string,
  said: (body: Record<string, unknown>) => T,
): Stated<T>[] {
  const gone = new Set(undone.map(({ event }) => event))
  return entries.flatMap((entry) => {
    if (entry.type !== type || gone.has(entry.id)) return []
    const read = readBody(entry)
    const body = read.ok ? (read.body as Record<string, unknown>) : null
    return body?.face === face ? [{ event: entry.id, at: entry.at, said: said(body) }] : []
  })
}

/** Comparisons on a face, newest first. */
export function ranksOf(folded: Pick<FoldedUnit, 'entries' | 'undone'>, face: string): Stated<Rank>[] {
  return standing(
    folded,
    'rank-stated',
    face,
    ({ quantity, less, more }) => ({ quantity, less, more }) as Rank,
  ).reverse()
}

/** Bolts tried on a face, newest first. */
export function trialsOf(folded: Pick<FoldedUnit, 'entries' | 'undone'>, face: string): Stated<Trial>[] {
  return standing(folded, 'bolt-tried', face, ({ trial }) => trial as Trial).reverse()
}

/** A comparison that is stated already, or the other way round: two that say the opposite mean that both are alike. */
export function rankKnown(ranks: readonly Stated<Rank>[], rank: Rank): 'same' | 'opposite' | null {
  const of = ranks.filter(({ said }) => said.quantity === rank.quantity)
  if (of.some(({ said }) => said.less === rank.less && said.more === rank.more)) return 'same'
  return of.some(({ said }) => said.less === rank.more && said.more === rank.less) ? 'opposite' : null
}
