import type { RefObject } from 'preact'
import { useLayoutEffect, useRef } from 'preact/hooks'

/** For a form that comes up with one thing to be written: its field has the focus, the hand goes on without a tap. */
export function useFirstField(): RefObject<HTMLFormElement | null> {
  const form = useRef<HTMLFormElement>(null)
  useLayoutEffect(() => form.current?.querySelector<HTMLElement>('input, textarea')?.focus(), [])
  return form
}
