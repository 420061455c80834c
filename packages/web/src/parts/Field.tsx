/** Fields with their label, hint and fault: a fault stands at its field, in words, and what was typed stays. */
import type { LengthUnit, Quantity, TorqueUnit } from '@gripbook/engine'
import { readLength, readTorque } from '@gripbook/engine'
import type { ComponentChildren, Ref } from 'preact'
import { useId } from 'preact/hooks'
import { sayFault } from '../words/index.ts'

type FieldProps = {
  label: string
  hint?: string
  fault?: string
  children: (ids: { id: string; describedBy: string; invalid: boolean }) => ComponentChildren
}

export function Field({ label, hint, fault = '', children }: FieldProps) {
  const id = useId()
  return (
    <div class="field">
      <label class="field__label" for={id}>
        {label}
      </label>
      {children({ id, describedBy: `${id}-hint ${id}-fault`, invalid: fault !== '' })}
      {hint !== undefined && (
        <p class="field__hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <p class="field__fault" id={`${id}-fault`} role="alert">
        {fault}
      </p>
    </div>
  )
}

/** How a keyboard and a screen treat a field. */
type InputLook = {
  inputMode?: 'text' | 'numeric' | 'decimal' | 'search'
  autocomplete?: string
  autocapitalize?: string
  maxLength?: number
  spellcheck?: boolean
}

type TextProps = {
  label: string
  value: string
  onInput: (value: string) => void
  hint?: string
  fault?: string
  long?: boolean
  input?: InputLook
}

export function TextField({ label, value, onInput, hint, fault, long = false, input = {} }: TextProps) {
  return (
    <Field label={label} {...(hint === undefined ? {} : { hint })} {...(fault === undefined ? {} : { fault })}>
      {({ id, describedBy, invalid }) =>
        long ? (
          <textarea
            id={id}
            class="input"
            dir="auto"
            rows={3}
            value={value}
            aria-describedby={describedBy}
            aria-invalid={invalid}
            onInput={(event) => onInput(event.currentTarget.value)}
          />
        ) : (
          <input
            autocomplete="off"
            dir="auto"
            {...(input as object)}
            id={id}
            class="input"
            value={value}
            aria-describedby={describedBy}
            aria-invalid={invalid}
            onInput={(event) => onInput(event.currentTarget.value)}
          />
        )
      }
    </Field>
  )
}

type DateProps = { label: string; value: string; onInput: (day: string) => void; hint?: string; fault?: string }

/** A day, ISO 8601; nothing where none is chosen. */
export function DateField({ label, value, onInput, ...told }: DateProps) {
  return (
    <Field label={label} {...told}>
      {({ id, describedBy, invalid }) => (
        <input
          id={id}
          class="input"
          type="date"
          value={value}
          aria-describedby={describedBy}
          aria-invalid={invalid}
          onInput={(event) => onInput(event.currentTarget.value)}
        />
      )}
    </Field>
  )
}

/** What a field for a quantity came to: nothing typed, a quantity, or words for what is wrong. */
export type Typed = { state: 'empty' } | { state: 'read'; value: Quantity } | { state: 'fault'; words: string }

/** A length as it was typed, in the unit chosen unless it names its own ("31.9", "1 1/4 in", "11–13"). */
export function typedLength(text: string, unit: LengthUnit): Typed {
  if (text.trim() === '') return { state: 'empty' }
  const read = readLength(text, unit)
  return read.ok ? { state: 'read', value: read.value } : { state: 'fault', words: sayFault(read.faults[0]) }
}

/** A torque as it was typed. */
export function typedTorque(text: string, unit: TorqueUnit): Typed {
  if (text.trim() === '') return { state: 'empty' }
  const read = readTorque(text, unit)
  return read.ok ? { state: 'read', value: read.value } : { state: 'fault', words: sayFault(read.faults[0]) }
}

type QuantityProps = {
  label: string
  unit: string
  value: string
  typed: Typed
  onInput: (value: string) => void
  hint?: string
  inputRef?: Ref<HTMLInputElement>
}

/** A field for a length or a torque. A gauge that types digits and Enter is enough. */
export function QuantityField({ label, unit, value, typed, onInput, hint, inputRef }: QuantityProps) {
  const fault = typed.state === 'fault' ? { fault: typed.words } : {}
  return (
    <Field label={label} {...(hint === undefined ? {} : { hint })} {...fault}>
      {({ id, describedBy, invalid }) => (
        <div class="input input--with-unit" aria-invalid={invalid}>
          <input
            {...(inputRef === undefined ? {} : { ref: inputRef })}
            id={id}
            inputMode="decimal"
            autocomplete="off"
            value={value}
            aria-describedby={describedBy}
            aria-invalid={invalid}
            onInput={(event) => onInput(event.currentTarget.value)}
          />
          <span aria-hidden="true">{unit}</span>
        </div>
      )}
    </Field>
  )
}
