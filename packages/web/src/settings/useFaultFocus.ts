import type { RefObject } from 'preact'
import { useEffect, useRef } from 'preact/hooks'

/** For a form: when there is another fault, the thumb is taken to the field where it is put right. */
export function useFaultFocus(fault: unknown): RefObject<HTMLFormElement | null> {
  const form = useRef<HTMLFormElement>(null)
  useEffect(() => {
    if (fault)
      form.current?.querySelector<HTMLElement>('input[aria-invalid="true"], [aria-invalid="true"] input')?.focus()
  }, [fault])
  return form
}
