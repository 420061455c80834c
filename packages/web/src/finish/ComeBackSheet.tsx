import { cameBack, type FoldedUnit } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Choice } from '../parts/Choice.tsx'
import { TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { useFirstField } from '../parts/useFirstField.ts'
import { useTyped } from '../parts/useTyped.ts'
import { lines, oneLine } from '../units/texts.ts'
import { words } from '../words/finish.ts'

const WHENS = ['cold', 'hot', 'both', 'unknown'] as const

/** What the customer says of a unit that comes back: it opens the record again. */
export function ComeBackSheet({ folded, onClose }: { folded: FoldedUnit; onClose: () => void }) {
  const { write } = useApp()
  const { typed, type, clear } = useTyped(`came back ${folded.id}`, {
    complaint: '',
    since: '',
    when: null as string | null,
    range: '',
  })
  const { complaint, since, range } = typed
  const when = WHENS.find((one) => one === typed.when) ?? null
  const [missing, setMissing] = useState(false)
  const [busy, setBusy] = useState(false)
  const given = lines(complaint)
  const form = useFirstField()

  async function keep() {
    if (given === undefined) return setMissing(true)
    const text = words.complaintText(
      given,
      oneLine(since),
      when === null ? undefined : words.whens[when],
      oneLine(range),
    )
    setBusy(true)
    const written = await write(folded.id, [cameBack({ complaint: text, toAnswer: true })], words.isBack)
    setBusy(false)
    if (written === null) return
    clear()
    onClose()
    // What the record answers stands on top.
    scrollTo(0, 0)
  }

  return (
    <Sheet title={words.cameBackTitle} onClose={onClose}>
      <Form formRef={form} onKeep={keep}>
        <TextField
          label={words.complaint}
          long
          value={complaint}
          onInput={(complaint) => type({ complaint })}
          fault={missing && given === undefined ? words.complaintNeeded : ''}
        />
        <TextField label={words.since} value={since} onInput={(since) => type({ since })} input={{ maxLength: 200 }} />
        <Choice
          label={words.when}
          options={WHENS.map((value) => ({ value, words: words.whens[value] }))}
          value={when}
          onChoose={(when) => type({ when })}
        />
        <TextField label={words.range} value={range} onInput={(range) => type({ range })} input={{ maxLength: 200 }} />
        <button type="submit" class="button button--act" disabled={busy}>
          {words.cameBackDo}
        </button>
      </Form>
    </Sheet>
  )
}
