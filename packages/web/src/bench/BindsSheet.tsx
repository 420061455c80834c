/** Resistance felt: one tap says how, and the face stands still. */
import { resistanceFelt } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { Icon } from '../look/icons.tsx'
import { Field, TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { readTurns } from '../readings/turns.ts'
import { oneLine } from '../units/texts.ts'
import { words } from '../words/bench.ts'
import { FEELS } from './resistance.ts'
import type { Bench } from './useBench.ts'

type Props = { bench: Bench; hole: string; onClose: () => void }

export function BindsSheet({ bench, hole, onClose }: Props) {
  const [turns, setTurns] = useState('')
  const [other, setOther] = useState<string | null>(null)
  const [fault, setFault] = useState('')

  async function felt(feel: string) {
    const counted = turns.trim() === '' ? undefined : readTurns(turns)
    if (counted === null) return setFault(words.notTurns(turns))
    const happening = resistanceFelt({
      face: bench.face.id,
      hole,
      feel,
      ...(counted === undefined ? {} : { turns: counted }),
    })
    if (await bench.act([happening])) onClose()
  }

  return (
    <Sheet title={words.bindsTitle(hole)} onClose={onClose}>
      <p class="bench-lead">{words.bindsStop}</p>
      <ul class="stack stack--tight">
        {FEELS.map((feel) => (
          <li key={feel}>
            <button type="button" class="button button--wide button--stop bench-feel" onClick={() => void felt(feel)}>
              {words.feels[feel]}
            </button>
          </li>
        ))}
      </ul>
      <Field label={words.bindsTurns} {...(fault === '' ? {} : { fault })}>
        {({ id, describedBy, invalid }) => (
          <input
            id={id}
            class="input"
            inputMode="decimal"
            autocomplete="off"
            value={turns}
            aria-describedby={describedBy}
            aria-invalid={invalid}
            onInput={(event) => {
              setTurns(event.currentTarget.value)
              setFault('')
            }}
          />
        )}
      </Field>
      {other === null ? (
        <button type="button" class="button button--plain" onClick={() => setOther('')}>
          <Icon name="plus" />
          {words.bindsOther}
        </button>
      ) : (
        <Form
          onKeep={() => {
            const said = oneLine(other)
            if (said !== undefined) void felt(said)
          }}
        >
          <TextField label={words.bindsOtherField} value={other} onInput={setOther} input={{ maxLength: 200 }} />
          <button type="submit" class="button button--stop">
            {words.bindsKeep}
          </button>
        </Form>
      )}
    </Sheet>
  )
}
