import { useCallback, useEffect, useState } from 'preact/hooks'
import type { FromShop } from '../../device/shop.ts'

export type Asked<T> = { state: 'asking' } | { state: 'here'; value: T } | { state: 'no'; code: string }

/** What the shop says to `question` (a function that stays the same), and how to ask again; what was there stays in sight meanwhile. */
export function useAsked<T>(question: () => Promise<FromShop<T>>): [Asked<T>, () => void] {
  const [asked, setAsked] = useState<Asked<T>>({ state: 'asking' })
  const [times, setTimes] = useState(0)
  useEffect(() => {
    let left = false
    void question().then((answer) => {
      if (left) return
      setAsked(answer.ok ? { state: 'here', value: answer.value } : { state: 'no', code: answer.code })
    })
    return () => {
      left = true
    }
  }, [question, times])
  return [asked, useCallback(() => setTimes((before) => before + 1), [])]
}
