import type { ComponentChildren, RefObject } from 'preact'
import { useLayoutEffect, useRef, useState } from 'preact/hooks'

type Props = {
  /** What its last button, or Enter in a field, does. */
  onKeep: () => unknown
  formRef?: RefObject<HTMLFormElement | null>
  tight?: boolean
  children: ComponentChildren
}

const INVALID = ['input', 'textarea', 'select'].map((field) => `${field}[aria-invalid="true"]`).join()

/** Fields below each other and the action that they belong to. What is missing is said at its field, not by the browser, and the thumb is taken there. */
export function Form({ onKeep, formRef, tight = false, children }: Props) {
  const own = useRef<HTMLFormElement>(null)
  const form = formRef ?? own
  const [tried, setTried] = useState(0)
  useLayoutEffect(() => {
    if (tried > 0) form.current?.querySelector<HTMLElement>(INVALID)?.focus()
  }, [tried])
  return (
    <form
      ref={form}
      class={`stack${tight ? ' stack--tight' : ''}`}
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        onKeep()
        setTried((before) => before + 1)
      }}
    >
      {children}
    </form>
  )
}
