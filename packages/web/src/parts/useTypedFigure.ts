import { useEffect, useState } from 'preact/hooks'
import type { Fields } from './typed.ts'
import { useTyped } from './useTyped.ts'

type Figure = Fields & { readonly text: string }

/**
 * A figure on its way in where one is typed after the other. It outlives a reload together with what it is about (`begun`: what was there when the
 * page came), and is given up when one goes elsewhere.
 */
export function useTypedFigure<T extends Figure>(place: string, nothing: T) {
  const { typed, type, clear } = useTyped<T>(place, nothing)
  const [begun] = useState(() => (typed.text === '' ? null : typed))
  useEffect(() => clear, [])
  return {
    begun,
    text: typed.text,
    /** `about`: what stands beside the text, to be gone on with after a reload. */
    setText(text: string, about: Partial<T>): void {
      if (text === '') clear()
      else type({ ...about, text } as Partial<T>)
    },
  }
}
