import type { Face, LengthUnit } from '@gripbook/engine'
import { useEffect, useRef, useState } from 'preact/hooks'
import { type Draft, draftOf } from './draft.ts'

/** The cover as it stands in the form: every change is kept in the browser at once, until it is written to the record or given up. */
export function useSetup(
  unit: string,
  face: Face,
  length: LengthUnit,
): { draft: Draft; change: (change: (now: Draft) => Draft) => void; clear: () => void } {
  const place = `gripbook tightening ${unit} ${face.id}`
  const [draft, setDraft] = useState(() => kept(place) ?? draftOf(face, length))
  const changed = useRef(false)
  useEffect(() => {
    if (changed.current) keep(place, draft)
  }, [draft])
  return {
    draft,
    change(change) {
      changed.current = true
      setDraft(change)
    },
    clear() {
      changed.current = false
      keep(place, null)
    },
  }
}

/** Whether something was drawn or typed here that is not in the record yet. */
export function hasDraft(unit: string, face: string): boolean {
  return kept(`gripbook tightening ${unit} ${face}`) !== null
}

/** Raised when a draft of before can no longer be gone on with. */
const VERSION = 1

function kept(place: string): Draft | null {
  try {
    const { version, draft } = JSON.parse(localStorage.getItem(place) ?? '{}') as { version?: number; draft?: Draft }
    return version === VERSION && draft !== undefined ? draft : null
  } catch {
    return null
  }
}

function keep(place: string, draft: Draft | null): void {
  try {
    if (draft === null) localStorage.removeItem(place)
    else localStorage.setItem(place, JSON.stringify({ version: VERSION, draft }))
  } catch {
    // A browser that keeps nothing: the form holds until the page is closed.
  }
}
