import { useEffect, useState } from 'preact/hooks'
import type { Fields } from './typed.ts'
import { useTyped } from './useTyped.ts'

type Figure = Fields & { readonly text: string }

/**
 * A figure on its way in where one is typed after the other. It outlives a reload together with what it is about (`begun`: what was there when the
 * page came), and is given up when one goes elsewhere, or when what it is about is no longer there (`isThere`): it never becomes a figure of something else.
 */
export function useTypedFigure<T extends Figure>(
  place: string,
  nothing: T,
  isThere: (begun: T) => boolean = () => true,
) {
  const { typed, type, clear } = useTyped<T>(place, nothing)
  const [{ first, begun }] = useState(() => ({
    first: typed,
    begun: typed.text === '' || !isThere(typed) ? null : typed,
  }))
  useEffect(() => clear, [])
  const text = typed === first && begun === null ? '' : typed.text
  return {
    begun,
    text,
    /** `about`: what stands beside the text, to be gone on with after a reload. */
    setText(text: string, about: Partial<T>): void {
      if (text === '') clear()
      else type({ ...about, text } as Partial<T>)
    },
    /** What stands there is now about something else. */
    turnTo(about: Partial<T>): void {
      if (text !== '') type(about)
    },
  }
}
