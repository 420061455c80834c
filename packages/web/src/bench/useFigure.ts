import type { RefObject } from 'preact'
import { useEffect, useRef, useState } from 'preact/hooks'
import { useTyped } from '../parts/useTyped.ts'
import type { Bench } from './useBench.ts'

/** A figure on its way in at a dock. `typed` is what stands there now, also between two keys that come before the next drawing. */
export type Typing<Off> = {
  text: string
  typed: RefObject<string>
  fault: string
  /** A figure that is not as it should be: it is asked about before it is written. */
  off: Off | null
  field: RefObject<HTMLInputElement | null>
  set(text: string): void
  setFault(words: string): void
  setOff(off: Off): void
  focus(): void
}

/** Where the figure of a face is held, and the step that it is for. */
export const figurePlace = ({ folded, face }: Pick<Bench, 'folded' | 'face'>) => `bench ${folded.id} ${face.id}`
export const NO_FIGURE = { text: '', step: '' }

/** One figure of a face at a time outlives a reload, for the step that it was typed at; with that step it is left behind. */
export function useFigure<Off>(bench: Pick<Bench, 'folded' | 'face' | 'step'>): Typing<Off> {
  const held = useTyped(figurePlace(bench), NO_FIGURE)
  const [at] = useState(bench.step.key)
  const text = held.typed.step === at ? held.typed.text : ''
  const [fault, setFault] = useState('')
  const [off, setOff] = useState<Off | null>(null)
  const typed = useRef(text)
  const field = useRef<HTMLInputElement | null>(null)
  useEffect(
    () => () => {
      if (typed.current !== '') held.clear()
    },
    [],
  )
  return {
    text,
    typed,
    fault,
    off,
    field,
    set(next) {
      typed.current = next
      if (next === '') held.clear()
      else held.type({ text: next, step: at })
      setFault('')
      setOff(null)
    },
    setFault,
    setOff,
    focus: () => field.current?.focus({ preventScroll: true }),
  }
}
