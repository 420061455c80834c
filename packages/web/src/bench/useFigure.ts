import type { RefObject } from 'preact'
import { useRef, useState } from 'preact/hooks'

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

export function useFigure<Off>(): Typing<Off> {
  const [text, setText] = useState('')
  const [fault, setFault] = useState('')
  const [off, setOff] = useState<Off | null>(null)
  const typed = useRef('')
  const field = useRef<HTMLInputElement | null>(null)
  return {
    text,
    typed,
    fault,
    off,
    field,
    set(next) {
      typed.current = next
      setText(next)
      setFault('')
      setOff(null)
    },
    setFault,
    setOff,
    focus: () => field.current?.focus({ preventScroll: true }),
  }
}
