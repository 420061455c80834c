/** The units of the shop that are not on this device: only their lines, and only with signal. */
import { meaningOf } from '@gripbook/device'
import type { ShopUnit } from '../units/unitLines.ts'

export type ShopPage = { units: ShopUnit[]; more: boolean }

/** Longer than this a person does not wait for a list, in ms. */
const PATIENCE = 15_000

/** A page of them, the one worked on last first, after the unit named; null when the shop is out of reach or this device is not paired. */
export async function shopUnits(after: string | null): Promise<ShopPage | null> {
  try {
    const query = after === null ? '' : `?after=${encodeURIComponent(after)}`
    const response = await fetch(`/api/units${query}`, {
      headers: { accept: 'application/json' },
      credentials: 'same-origin',
      cache: 'no-store',
      redirect: 'error',
      signal: AbortSignal.timeout(PATIENCE),
    })
    const answer = meaningOf(response, await response.text(), Date.now())
    return answer.ok && isPage(answer.body) ? answer.body : null
  } catch {
    return null
  }
}

/** A dev server or a router's page may answer too. */
function isPage(body: unknown): body is ShopPage {
  const page = body as Partial<ShopPage> | null
  return typeof page === 'object' && page !== null && Array.isArray(page.units) && typeof page.more === 'boolean'
}
