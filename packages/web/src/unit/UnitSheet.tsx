import { type FoldedUnit, unitDescribed } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Choice } from '../parts/Choice.tsx'
import { TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { HISTORIES } from '../units/takeIn.ts'
import { lines, oneLine } from '../units/texts.ts'
import { words } from '../words/index.ts'
import { changesOf } from './changes.ts'

/** What is known of the unit, put right. */
export function UnitSheet({ folded, onClose }: { folded: FoldedUnit; onClose: () => void }) {
  const { write } = useApp()
  const shown = {
    name: folded.unit.name ?? '',
    model: folded.work.model?.value ?? '',
    job: folded.work.job?.value ?? '',
    complaint: folded.work.complaint?.value ?? '',
    history: folded.unit.history ?? '',
    note: folded.unit.note ?? '',
  }
  const [typed, setTyped] = useState(shown)
  const [missing, setMissing] = useState(false)
  const [busy, setBusy] = useState(false)
  const put = (change: Partial<typeof shown>) => setTyped((before) => ({ ...before, ...change }))

  async function keep() {
    if (oneLine(typed.name) === undefined && shown.name !== '') return setMissing(true)
    const { fields, unknown } = changesOf(shown, typed, {
      name: oneLine(typed.name),
      model: oneLine(typed.model),
      job: oneLine(typed.job),
      complaint: lines(typed.complaint),
      history: HISTORIES.find((one) => one === typed.history),
      note: lines(typed.note),
    })
    if (Object.keys(fields).length + unknown.length === 0) return onClose()
    setBusy(true)
    const body = { ...fields, ...(unknown.length > 0 ? { unknown } : {}) }
    const written = await write(
      folded.id,
      [unitDescribed(body as Parameters<typeof unitDescribed>[0])],
      words.unit.kept,
    )
    setBusy(false)
    if (written !== null) onClose()
  }

  return (
    <Sheet title={words.unit.editTitle} onClose={onClose}>
      <Form onKeep={keep}>
        <TextField
          label={words.unit.name}
          value={typed.name}
          fault={missing && oneLine(typed.name) === undefined ? words.unit.nameMissing : ''}
          onInput={(name) => put({ name })}
          input={{ maxLength: 300 }}
        />
        <div class="row">
          <TextField
            label={words.units.model}
            value={typed.model}
            onInput={(model) => put({ model })}
            input={{ maxLength: 300 }}
          />
          <TextField
            label={words.units.jobNumber}
            value={typed.job}
            onInput={(job) => put({ job })}
            input={{ maxLength: 100 }}
          />
        </div>
        <TextField
          label={words.units.complaint}
          long
          value={typed.complaint}
          onInput={(complaint) => put({ complaint })}
        />
        <Choice
          label={words.units.history}
          options={HISTORIES.map((value) => ({ value, words: words.units.histories[value] }))}
          value={HISTORIES.find((one) => one === typed.history) ?? null}
          onChoose={(history) => put({ history })}
        />
        <TextField label={words.unit.note} long value={typed.note} onInput={(note) => put({ note })} />
        <button type="submit" class="button button--act" disabled={busy}>
          {words.unit.keep}
        </button>
      </Form>
    </Sheet>
  )
}
