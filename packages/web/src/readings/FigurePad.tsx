/** One figure to enter: a large field for a gauge that types, and keys for a gloved thumb. */
import type { Ref } from 'preact'
import { useId, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/index.ts'
import './FigurePad.css'

type Props = {
  label: string
  unit: string
  text: string
  fault: string
  onText: (text: string) => void
  /** What stands in the field when Enter or "Keep" comes. */
  onKeep: (text: string) => void
  inputRef: Ref<HTMLInputElement>
}

const KEYS = ['1', '2', '3', '4', '5', '6', '7', '8', '9', '.', '0', '±'] as const

export function FigurePad({ label, unit, text, fault, onText, onKeep, inputRef }: Props) {
  const id = useId()
  const [keys] = useKeys()
  return (
    <form
      class="pad"
      onSubmit={(event) => {
        event.preventDefault()
        // What a gauge types comes faster than the page is drawn: the field itself knows best.
        onKeep((event.currentTarget.elements.namedItem('figure') as HTMLInputElement).value)
      }}
    >
      <div class="pad__row">
        <label class="unseen" for={id}>
          {label}
        </label>
        <div class="pad__field" aria-invalid={fault !== ''}>
          <input
            ref={inputRef}
            id={id}
            name="figure"
            class="pad__input"
            inputMode={keys ? 'none' : 'decimal'}
            enterkeyhint="done"
            autocomplete="off"
            value={text}
            aria-describedby={`${id}-fault`}
            aria-invalid={fault !== ''}
            onInput={(event) => onText(event.currentTarget.value)}
          />
          <span class="pad__unit" aria-hidden="true">
            {unit}
          </span>
        </div>
        {!keys && (
          <button type="submit" class="button button--act">
            {words.readings.keep}
          </button>
        )}
      </div>
      <p class="field__fault" id={`${id}-fault`} role="alert">
        {fault}
      </p>
      {keys && (
        <fieldset class="pad__keys">
          <legend class="unseen">{words.readings.keys}</legend>
          <div class="pad__digits">
            {KEYS.map((key) => (
              <Key key={key} onPress={() => onText(key === '±' ? `${text.trimEnd()} ± ` : text + key)}>
                {key}
              </Key>
            ))}
          </div>
          <Key label={words.readings.erase} onPress={() => onText(text.trimEnd().slice(0, -1).trimEnd())}>
            <Icon name="erase" />
          </Key>
          <button type="submit" class="pad__keep" onPointerDown={(event) => event.preventDefault()}>
            {words.readings.keep}
          </button>
        </fieldset>
      )}
    </form>
  )
}

/** Whether the page's own keys are shown: as chosen, else where the pointer is a finger. */
function useKeys(): [boolean, (keys: boolean) => void] {
  const { settings, choose } = useApp()
  const [byDevice] = useState(() => matchMedia('(pointer: coarse)').matches)
  return [settings.keys ?? byDevice, (keys) => choose({ keys })]
}

/** Own keys, or the keyboard of the device. */
export function KeysSwitch() {
  const [keys, show] = useKeys()
  return (
    <button type="button" class="button button--plain" onClick={() => show(!keys)}>
      {keys ? words.readings.hideKeys : words.readings.showKeys}
    </button>
  )
}

type KeyProps = { label?: string; onPress: () => void; children: preact.ComponentChildren }

/** A key leaves the cursor in the field, so that a gauge can go on typing. */
function Key({ label, onPress, children }: KeyProps) {
  return (
    <button
      type="button"
      class="pad__key"
      aria-label={label}
      onPointerDown={(event) => event.preventDefault()}
      onClick={onPress}
    >
      {children}
    </button>
  )
}
