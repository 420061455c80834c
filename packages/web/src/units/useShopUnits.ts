import { useCallback, useEffect, useState } from 'preact/hooks'
import { shopUnits } from '../device/shopUnits.ts'
import type { ShopUnit } from './unitLines.ts'

export type InShop = {
  units: readonly ShopUnit[]
  more: boolean
  busy: boolean
  /** The last page that was asked for did not come. */
  failed: boolean
  showMore: () => void
}

/** The units of the shop, page by page; none while this device is not signed in. Asked for again when the page is looked at again. */
export function useShopUnits(signedIn: boolean): InShop {
  const [units, setUnits] = useState<readonly ShopUnit[]>([])
  const [more, setMore] = useState(false)
  const [busy, setBusy] = useState(false)
  const [failed, setFailed] = useState(false)

  const load = useCallback(async (after: string | null) => {
    setBusy(true)
    const page = await shopUnits(after)
    setBusy(false)
    setFailed(page === null)
    if (page === null) return
    setMore(page.more)
    setUnits((before) => {
      const kept = after === null ? [] : before
      const known = new Set(kept.map(({ unit }) => unit))
      return [...kept, ...page.units.filter(({ unit }) => !known.has(unit))]
    })
  }, [])

  useEffect(() => {
    if (!signedIn) {
      setUnits([])
      setMore(false)
      return
    }
    void load(null)
    const seen = () => {
      if (document.visibilityState === 'visible') void load(null)
    }
    document.addEventListener('visibilitychange', seen)
    return () => document.removeEventListener('visibilitychange', seen)
  }, [signedIn, load])

  const last = units.at(-1)?.unit ?? null
  return { units, more, busy, failed, showMore: () => void load(last) }
}
