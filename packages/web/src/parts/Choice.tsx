import { useId } from 'preact/hooks'

type Props<T extends string> = {
  label: string
  /** The label is told to screen readers alone. */
  quiet?: boolean
  options: readonly { value: T; words: string }[]
  value: T | null
  onChoose: (value: T) => void
}

/** One of a few, all in sight. */
export function Choice<T extends string>({ label, quiet = false, options, value, onChoose }: Props<T>) {
  const name = useId()
  return (
    <fieldset class="field">
      <legend class={quiet ? 'unseen' : 'field__label'}>{label}</legend>
      <div class="choice">
        {options.map((option) => (
          <label key={option.value}>
            <input type="radio" name={name} checked={option.value === value} onChange={() => onChoose(option.value)} />
            <span>{option.words}</span>
          </label>
        ))}
      </div>
    </fieldset>
  )
}
