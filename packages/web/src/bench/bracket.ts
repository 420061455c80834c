/** What goes under the head of a bolt, and which way round it sat. */
import type { FoldedUnit } from '@gripbook/record'

export type Bracket = {
  part: string
  what: string
  name: string | null
  wayRound: string | null
  photograph: string | null
}

/** Parts that came out at this hole and are not in yet, brackets and clips first. */
export function bracketsAt({ things }: Pick<FoldedUnit, 'things'>, face: string, hole: string): Bracket[] {
  const text = (value: unknown) => (typeof value === 'string' ? value : null)
  return Object.entries(things.part)
    .flatMap(([part, fields]): Bracket[] => {
      if (fields.face?.value !== face || fields.hole?.value !== hole) return []
      if (fields.fate?.value !== 'out' && fields.fate?.value !== 'replaced') return []
      const what = text(fields.what?.value) ?? 'other'
      const [name, wayRound, photograph] = [fields.name, fields.wayRound, fields.photograph].map((one) =>
        text(one?.value),
      ) as [string | null, string | null, string | null]
      return [{ part, what, name, wayRound, photograph }]
    })
    .sort((a, b) => rank(a.what) - rank(b.what))
}

const rank = (what: string) => (what === 'bracket' ? 0 : what === 'clip' ? 1 : 2)
