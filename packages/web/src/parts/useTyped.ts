import { useState } from 'preact/hooks'
import { readTyped, typedPlace, writeTyped } from './typed.ts'

type Typing<T> = {
  typed: T
  type(change: Partial<T>): void
  /** It is kept: the form begins anew the next time. */
  clear(): void
}

/**
 * Fields that outlive a closed sheet, a reload and a dead battery until they are kept. `place`: the form and what it is about; another one, another
 * text. Held with the choices of this device, never sent.
 */
export function useTyped<T extends Readonly<Record<string, string>>>(place: string, start: T): Typing<T> {
  const [now, setNow] = useState(() => ({ place, typed: held(place, start) }))
  const typed = now.place === place ? now.typed : held(place, start)
  return {
    typed,
    type(change) {
      const next = { ...typed, ...change }
      hold(place, writeTyped(next, start))
      setNow({ place, typed: next })
    },
    clear() {
      hold(place, null)
      setNow({ place, typed: start })
    },
  }
}

function held<T extends Readonly<Record<string, string>>>(place: string, start: T): T {
  try {
    return readTyped(localStorage.getItem(typedPlace(place)), start)
  } catch {
    return start
  }
}

function hold(place: string, text: string | null): void {
  try {
    if (text === null) localStorage.removeItem(typedPlace(place))
    else localStorage.setItem(typedPlace(place), text)
  } catch {
    // A browser that keeps nothing: the form holds until the page is closed.
  }
}
