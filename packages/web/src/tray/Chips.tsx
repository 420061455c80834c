import { useId, useState } from 'preact/hooks'
import { words } from '../words/index.ts'

type Props = {
  label: string
  offered: readonly string[]
  chosen: readonly string[]
  onChange: (chosen: string[]) => void
}

/** Some of several, and what is not among them as free text. */
export function FeatureChips({ label, offered, chosen, onChange }: Props) {
  const id = useId()
  const [other, setOther] = useState('')
  const all = [...new Set([...offered, ...chosen])]
  const add = () => {
    const text = other.trim()
    if (text === '') return
    onChange([...new Set([...chosen, text])])
    setOther('')
  }
  return (
    <fieldset class="field">
      <legend class="field__label">{label}</legend>
      <div class="choice">
        {all.map((feature) => (
          <label key={feature}>
            <input
              type="checkbox"
              checked={chosen.includes(feature)}
              onChange={({ currentTarget: { checked } }) =>
                onChange(checked ? [...chosen, feature] : chosen.filter((one) => one !== feature))
              }
            />
            <span dir="auto">{feature}</span>
          </label>
        ))}
      </div>
      <div class="chips__other">
        <label class="unseen" for={id}>
          {words.tray.otherFeature}
        </label>
        <input
          id={id}
          class="input"
          dir="auto"
          autocomplete="off"
          maxLength={100}
          placeholder={words.tray.otherFeature}
          value={other}
          onInput={(event) => setOther(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key !== 'Enter' || other.trim() === '') return
            event.preventDefault()
            add()
          }}
        />
        <button type="button" class="button" onClick={add}>
          {words.tray.addFeature}
        </button>
      </div>
    </fieldset>
  )
}
