import type { FoldedUnit } from '@gripbook/record'
import { useEffect, useState } from 'preact/hooks'
import { useApp } from './context.ts'

/** The unit as it stands by all entries on this device, kept up to date while it is looked at; null until it was read. */
export function useUnit(unit: string): FoldedUnit | null {
  const { book } = useApp()
  const [folded, setFolded] = useState<FoldedUnit | null>(null)
  useEffect(() => {
    const stopWatching = book.device.watch(unit, setFolded)
    const stopFollowing = book.name === 'shop' ? book.device.follow(unit) : null
    return () => {
      stopWatching()
      stopFollowing?.()
    }
  }, [book.device, book.name, unit])
  return folded?.id === unit ? folded : null
}
