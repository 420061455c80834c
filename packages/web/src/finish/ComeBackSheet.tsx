import { cameBack, type FoldedUnit } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Choice } from '../parts/Choice.tsx'
import { TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { lines, oneLine } from '../units/texts.ts'
import { words } from '../words/finish.ts'

const WHENS = ['cold', 'hot', 'both', 'unknown'] as const

/** What the customer says of a unit that comes back: it opens the record again. */
export function ComeBackSheet({ folded, onClose }: { folded: FoldedUnit; onClose: () => void }) {
  const { write } = useApp()
  const [complaint, setComplaint] = useState('')
  const [since, setSince] = useState('')
  const [range, setRange] = useState('')
  const [when, setWhen] = useState<(typeof WHENS)[number] | null>(null)
  const [missing, setMissing] = useState(false)
  const [busy, setBusy] = useState(false)
  const given = lines(complaint)

  async function keep() {
    if (given === undefined) return setMissing(true)
    const text = words.complaintText(
      given,
      oneLine(since),
      when === null ? undefined : words.whens[when],
      oneLine(range),
    )
    setBusy(true)
    const written = await write(folded.id, [cameBack({ complaint: text })], words.isBack)
    setBusy(false)
    if (written !== null) onClose()
  }

  return (
    <Sheet title={words.cameBackTitle} onClose={onClose}>
      <Form onKeep={keep}>
        <TextField
          label={words.complaint}
          long
          value={complaint}
          onInput={setComplaint}
          fault={missing && given === undefined ? words.complaintNeeded : ''}
        />
        <TextField label={words.since} value={since} onInput={setSince} input={{ maxLength: 200 }} />
        <Choice
          label={words.when}
          options={WHENS.map((value) => ({ value, words: words.whens[value] }))}
          value={when}
          onChoose={setWhen}
        />
        <TextField label={words.range} value={range} onInput={setRange} input={{ maxLength: 200 }} />
        <button type="submit" class="button button--act" disabled={busy}>
          {words.cameBackDo}
        </button>
      </Form>
    </Sheet>
  )
}
