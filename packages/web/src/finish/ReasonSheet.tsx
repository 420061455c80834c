import { useState } from 'preact/hooks'
import { TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { oneLine } from '../units/texts.ts'

type Props = {
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
export function ReasonSheet({ title, what, label, hint, needed, start = '', act, more, onKeep, onClose }: Props) {
  const [text, setText] = useState(start)
  const [second, setSecond] = useState('')
  const [missing, setMissing] = useState(false)
  const [busy, setBusy] = useState(false)

  async function keep() {
    const given = oneLine(text)
    if (given === undefined) return setMissing(true)
    setBusy(true)
    const kept = await onKeep(given, oneLine(second))
    setBusy(false)
    if (kept) onClose()
  }

  return (
    <Sheet title={title} onClose={onClose}>
      <Form onKeep={keep}>
        {what !== undefined && <p>{what}</p>}
        <TextField
          label={label}
          {...(hint === undefined ? {} : { hint })}
          value={text}
          onInput={setText}
          fault={missing && oneLine(text) === undefined ? needed : ''}
          input={{ maxLength: 300 }}
        />
        {more !== undefined && <TextField label={more} value={second} onInput={setSecond} input={{ maxLength: 300 }} />}
        <button type="submit" class="button button--act" disabled={busy}>
          {act}
        </button>
      </Form>
    </Sheet>
  )
}
