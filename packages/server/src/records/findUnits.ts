/** Units by what people call them. */
import { fold, isUuid } from '@gripbook/record'
import type { Shop } from '../app/shop.ts'
import { recentUnits } from '../store/recentUnits.ts'

export type FoundUnit = { unit: string; name: string | null; job: string | null }

const PAGE = 200

/** The unit with this id, or those with this name or job, whatever the case; the one worked on last first. */
export async function findUnits({ db, store }: Pick<Shop, 'db' | 'store'>, called: string): Promise<FoundUnit[]> {
  const wanted = called.trim().toLowerCase()
  if (isUuid(wanted)) return (await store.ofUnit(wanted)).length > 0 ? [{ unit: wanted, name: null, job: null }] : []
  const found: FoundUnit[] = []
  for (let after: string | null = null; ; ) {
    const { units, more } = await recentUnits(db, after, PAGE)
    for (const { unit } of units) {
      const folded = fold(unit, await store.ofUnit(unit))
      const [name, job] = [folded.unit.name ?? null, folded.work.job?.value ?? null]
      if ([name, job].some((text) => text?.toLowerCase() === wanted)) found.push({ unit, name, job })
    }
    after = units.at(-1)?.unit ?? null
    if (!more || after === null) return found
  }
}
