import type { FoldedUnit } from '@gripbook/record'
import { useEffect, useMemo, useState } from 'preact/hooks'
import { type Ahead, dropArrived, listenAhead, stillAhead, withAhead } from './ahead.ts'
import { useApp } from './context.ts'

/**
 * The unit as it stands by all entries on this device, with what is on its way to the disk, kept up to date while it is looked at; null until
 * it was read.
 */
export function useUnit(unit: string): FoldedUnit | null {
  const { book } = useApp()
  const [folded, setFolded] = useState<FoldedUnit | null>(null)
  const [ahead, setAhead] = useState<readonly Ahead[]>([])
  useEffect(() => {
    const stopWatching = book.device.watch(unit, (next) => {
      setFolded(next)
      dropArrived(unit, next)
    })
    const stopFollowing = book.name === 'shop' ? book.device.follow(unit) : null
    const stopListening = listenAhead(unit, setAhead)
    return () => {
      stopWatching()
      stopFollowing?.()
      stopListening()
    }
  }, [book.device, book.name, unit])
  const here = folded?.id === unit ? folded : null
  return useMemo(
    () => (here === null ? null : withAhead(here, book.device.id, stillAhead(ahead, here))),
    [here, ahead, book.device.id],
  )
}
