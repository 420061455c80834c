import { useEffect, useRef, useState } from 'preact/hooks'
import { newId } from '../device/newId.ts'
import { type Draft, emptyDraft, holdsSomething, readDraft } from './takeIn.ts'

const PLACE = 'gripbook take-in'

export type Change = (change: Partial<Draft> | ((now: Draft) => Partial<Draft>)) => void

/** The form as it stands: every change is kept in the browser at once. `clear` starts a new one. */
export function useDraft(): { draft: Draft; change: Change; clear: () => void } {
  const [draft, setDraft] = useState(() => kept() ?? emptyDraft(newId()))
  const done = useRef(false)
  useEffect(() => {
    if (!done.current) keep(draft)
  }, [draft])
  return {
    draft,
    change: (change) => setDraft((now) => ({ ...now, ...(typeof change === 'function' ? change(now) : change) })),
    clear() {
      done.current = true
      keep(null)
    },
  }
}

function kept(): Draft | null {
  try {
    return readDraft(localStorage.getItem(PLACE))
  } catch {
    return null
  }
}

function keep(draft: Draft | null): void {
  try {
    if (draft === null || !holdsSomething(draft)) localStorage.removeItem(PLACE)
    else localStorage.setItem(PLACE, JSON.stringify(draft))
  } catch {
    // A browser that keeps nothing: the form holds until the page is closed.
  }
}
