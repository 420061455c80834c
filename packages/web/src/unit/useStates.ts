import type { EntryHere } from '@gripbook/device'
import type { FoldedUnit } from '@gripbook/record'
import { useEffect, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'

/** How far the entries of a unit have come, by their ids; read again when there are more, or when some were sent. */
export function useStates(folded: FoldedUnit): ReadonlyMap<string, EntryHere> {
  const { book } = useApp()
  const [states, setStates] = useState<ReadonlyMap<string, EntryHere>>(new Map())
  const { waiting, refused } = book.status ?? {}
  const moved = `${waiting?.entries} ${refused?.entries}`
  // The counts are what says that states have changed.
  useEffect(() => {
    let left = false
    const timer = setTimeout(async () => {
      const entries = await book.device.entriesOf(folded.id).catch(() => [])
      if (!left) setStates(new Map(entries.map((entry) => [entry.event.id, entry])))
    }, 100)
    return () => {
      left = true
      clearTimeout(timer)
    }
  }, [book.device, folded, moved])
  return states
}
