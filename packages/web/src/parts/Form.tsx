import type { ComponentChildren, RefObject } from 'preact'

type Props = {
  /** What its last button, or Enter in a field, does. */
  onKeep: () => unknown
  formRef?: RefObject<HTMLFormElement | null>
  tight?: boolean
  children: ComponentChildren
}

/** Fields below each other and the action that they belong to. What is missing is said at its field, not by the browser. */
export function Form({ onKeep, formRef, tight = false, children }: Props) {
  return (
    <form
      {...(formRef === undefined ? {} : { ref: formRef })}
      class={`stack${tight ? ' stack--tight' : ''}`}
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        onKeep()
      }}
    >
      {children}
    </form>
  )
}
