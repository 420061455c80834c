import { useState } from 'preact/hooks'
import { TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { useFirstField } from '../parts/useFirstField.ts'
import { useTyped } from '../parts/useTyped.ts'
import { oneLine } from '../units/texts.ts'

type Props = {
  /** The unit that it is about. */
  unit: string
  title: string
  what?: string
  label: string
  hint?: string
  /** What is said while the field is empty. */
  needed: string
  start?: string
  act: string
  /** A second field that may stay empty. */
  more?: string
  /** Closes when it was kept. */
  onKeep: (text: string, more: string | undefined) => Promise<boolean>
  onClose: () => void
}

/** One text that is needed, such as a reason, and the one action that it belongs to. */
export function ReasonSheet({ unit, title, what, label, hint, needed, start = '', act, more, onKeep, onClose }: Props) {
  const { typed, type, clear } = useTyped(`${unit} ${title}`, { text: start, second: '' })
  const form = useFirstField()
  const [missing, setMissing] = useState(false)
  const [busy, setBusy] = useState(false)

  async function keep() {
    const given = oneLine(typed.text)
    if (given === undefined) return setMissing(true)
    setBusy(true)
    const kept = await onKeep(given, oneLine(typed.second))
    setBusy(false)
    if (!kept) return
    clear()
    onClose()
  }

  return (
    <Sheet title={title} onClose={onClose}>
      <Form formRef={form} onKeep={keep}>
        {what !== undefined && <p>{what}</p>}
        <TextField
          label={label}
          {...(hint === undefined ? {} : { hint })}
          value={typed.text}
          onInput={(text) => type({ text })}
          fault={missing && oneLine(typed.text) === undefined ? needed : ''}
          input={{ maxLength: 300 }}
        />
        {more !== undefined && (
          <TextField
            label={more}
            value={typed.second}
            onInput={(second) => type({ second })}
            input={{ maxLength: 300 }}
          />
        )}
        <button type="submit" class="button button--act" disabled={busy}>
          {act}
        </button>
      </Form>
    </Sheet>
  )
}
