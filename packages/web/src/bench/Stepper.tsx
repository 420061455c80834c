/** A figure by two large keys, or typed into its field by a keyboard, a wedge gauge or a wrench. */
import type { Ref } from 'preact'
import { Icon } from '../look/icons.tsx'

type Props = {
  label: string
  less: string
  more: string
  text: string
  fault: string
  fieldRef: Ref<HTMLInputElement>
  onText: (text: string) => void
  onStep: (by: 1 | -1) => void
  onKeep: () => void
}

export function Stepper({ label, less, more, text, fault, fieldRef, onText, onStep, onKeep }: Props) {
  return (
    <>
      <form
        class="dock__turns"
        onSubmit={(event) => {
          event.preventDefault()
          onKeep()
        }}
      >
        <button type="button" class="button" aria-label={less} onClick={() => onStep(-1)}>
          <Icon name="minus" />
        </button>
        <label class="dock__count">
          <span class="quiet">{label}</span>
          <input
            ref={fieldRef}
            name="figure"
            inputMode="decimal"
            autocomplete="off"
            value={text}
            aria-invalid={fault !== ''}
            onInput={(event) => onText(event.currentTarget.value)}
          />
        </label>
        <button type="button" class="button" aria-label={more} onClick={() => onStep(1)}>
          <Icon name="plus" />
        </button>
      </form>
      {fault !== '' && (
        <p class="field__fault" role="alert">
          {fault}
        </p>
      )}
    </>
  )
}
