import type { RefObject } from 'preact'
import { useEffect, useRef } from 'preact/hooks'

/** For a form: when there is another fault, the thumb is taken to the field where it is put right. */
export function useFaultFocus<Element extends HTMLElement = HTMLFormElement>(
  fault: unknown,
): RefObject<Element | null> {
  const form = useRef<Element>(null)
  useEffect(() => {
    if (fault)
      form.current?.querySelector<HTMLElement>('input[aria-invalid="true"], [aria-invalid="true"] input')?.focus()
  }, [fault])
  return form
}
