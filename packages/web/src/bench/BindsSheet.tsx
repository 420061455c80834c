/** Resistance felt: one tap says how, and the face stands still. */
import { resistanceFelt } from '@gripbook/record'
import { useRef, useState } from 'preact/hooks'
import { Icon } from '../look/icons.tsx'
import { Field, TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { useFirstField } from '../parts/useFirstField.ts'
import { useTyped } from '../parts/useTyped.ts'
import { readTurns } from '../readings/turns.ts'
import { oneLine } from '../units/texts.ts'
import { words } from '../words/bench.ts'
import { FEELS } from './resistance.ts'
import type { Bench } from './useBench.ts'
import { figurePlace, NO_FIGURE } from './useFigure.ts'

type Props = { bench: Bench; hole: string; onClose: () => void }

export function BindsSheet({ bench, hole, onClose }: Props) {
  const { folded, face, step } = bench
  const dock = useTyped(figurePlace(bench), NO_FIGURE).typed
  // Turns that were typed at the dock when it began to bind are not typed twice.
  const turns = step.round.what === 'run down' && dock.step === step.key ? dock.text : ''
  const { typed, type, clear } = useTyped(`binds ${folded.id} ${face.id} ${hole}`, { turns, other: '' })
  const [other, setOther] = useState(typed.other !== '')
  const [fault, setFault] = useState('')
  const count = useRef<HTMLInputElement>(null)

  async function felt(feel: string) {
    const counted = typed.turns.trim() === '' ? undefined : readTurns(typed.turns)
    if (counted === null) {
      setFault(words.notTurns(typed.turns))
      count.current?.focus()
      return
    }
    const happening = resistanceFelt({
      face: face.id,
      hole,
      feel,
      ...(counted === undefined ? {} : { turns: counted }),
    })
    if (!(await bench.act([happening]))) return
    clear()
    onClose()
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
            ref={count}
            id={id}
            class="input"
            inputMode="decimal"
            autocomplete="off"
            value={typed.turns}
            aria-describedby={describedBy}
            aria-invalid={invalid}
            onInput={(event) => {
              type({ turns: event.currentTarget.value })
              setFault('')
            }}
          />
        )}
      </Field>
      {other ? (
        <OtherFeel value={typed.other} onInput={(said) => type({ other: said })} onKeep={(said) => void felt(said)} />
      ) : (
        <button type="button" class="button button--plain" onClick={() => setOther(true)}>
          <Icon name="plus" />
          {words.bindsOther}
        </button>
      )}
    </Sheet>
  )
}

type OtherProps = { value: string; onInput: (said: string) => void; onKeep: (said: string) => void }

/** How it feels in one's own words. */
function OtherFeel({ value, onInput, onKeep }: OtherProps) {
  const [tried, setTried] = useState(false)
  const form = useFirstField()
  return (
    <Form
      formRef={form}
      onKeep={() => {
        const said = oneLine(value)
        if (said !== undefined) return onKeep(said)
        setTried(true)
      }}
    >
      <TextField
        label={words.bindsOtherField}
        value={value}
        onInput={onInput}
        fault={tried && oneLine(value) === undefined ? words.bindsOtherNeeded : ''}
        input={{ maxLength: 200 }}
      />
      <button type="submit" class="button button--stop">
        {words.bindsKeep}
      </button>
    </Form>
  )
}
