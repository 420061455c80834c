import { useRef, useState } from 'preact/hooks'
import { type Fields, readTyped, typedPlace, writeTyped } from './typed.ts'

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
export function useTyped<T extends Fields>(place: string, start: T): Typing<T> {
  const now = useRef({ place, typed: start, read: false })
  const [, draw] = useState(0)
  if (!now.current.read || now.current.place !== place) now.current = { place, typed: held(place, start), read: true }
  const put = (typed: T, text: string | null) => {
    hold(place, text)
    now.current = { place, typed, read: true }
    draw((count) => count + 1)
  }
  return {
    typed: now.current.typed,
    type(change) {
      // What came a moment ago, before the next drawing, counts too.
      const typed = { ...now.current.typed, ...change }
      put(typed, writeTyped(typed, start))
    },
    clear: () => put(start, null),
  }
}

function held<T extends Fields>(place: string, start: T): T {
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
