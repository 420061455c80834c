/** Instruments and wrenches that a unit was measured and tightened with, and whether each was in calibration when it was used. */
import type { FoldedUnit } from '@gripbook/record'
import { standingOf } from '../unit/standing.ts'

export type Used = {
  /** Its number in the shop, else its name. */
  id: string
  name: string
  /** Last day of its calibration; null: nobody has said. */
  until: string | null
  result: string | null
  /** Day of its last use. */
  last: string
  /** It was used after that day. */
  out: boolean
}

type Named = { name?: unknown; number?: unknown; calibratedUntil?: unknown; byFeel?: unknown }

/** By name. What the entry says of its tool rules; where it says nothing, the check that was noted for it. */
export function instrumentsUsed(folded: FoldedUnit): Used[] {
  const used = new Map<string, Used & { own: string | null }>()
  for (const { body, at } of standingOf(folded)) {
    const tool = (body.tool ?? body.instrument) as Named | string | undefined
    if (typeof tool !== 'object' || tool === null || typeof tool.name !== 'string' || tool.byFeel === true) continue
    const id = typeof tool.number === 'string' ? tool.number : tool.name
    const day = at.slice(0, 10)
    const before = used.get(id)
    const own = typeof tool.calibratedUntil === 'string' ? tool.calibratedUntil : (before?.own ?? null)
    const last = before === undefined || before.last < day ? day : before.last
    used.set(id, { id, name: tool.name, own, until: null, result: null, last, out: false })
  }
  return [...used.values()]
    .map(({ own, ...one }): Used => {
      const { calibratedUntil, result } = folded.things.instrument[one.id] ?? {}
      const until = own ?? (typeof calibratedUntil?.value === 'string' ? calibratedUntil.value : null)
      const said = typeof result?.value === 'string' ? result.value : null
      return { ...one, until, result: said, out: until !== null && until < one.last }
    })
    .toSorted((a, b) => a.name.localeCompare(b.name) || a.id.localeCompare(b.id))
}
