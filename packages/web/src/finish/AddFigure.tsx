import type { FoldedUnit } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Choice } from '../parts/Choice.tsx'
import { Field, TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { useTyped } from '../parts/useTyped.ts'
import { oneLine } from '../units/texts.ts'
import { words } from '../words/finish.ts'
import { freeName, type Row, UNITS, USUAL, usualUnit } from './figures.ts'

export type Draft = { reading: string; unit: string; face: string | null }

type Props = { folded: FoldedUnit; rows: readonly Row[]; onAdd: (draft: Draft) => void; onClose: () => void }

/** A figure that this unit has not had yet: its name, its unit, where it is read. */
export function AddFigure({ folded, rows, onAdd, onClose }: Props) {
  const { settings } = useApp()
  const { typed, type, clear } = useTyped(`figure ${folded.id}`, {
    name: '',
    unit: settings.length as string,
    own: '',
    face: '',
  })
  const { name, unit, own } = typed
  const face = folded.unit.faces.some(({ id }) => id === typed.face) ? typed.face : ''
  const [tried, setTried] = useState(false)
  const given = oneLine(name)
  const unitName = unit === '' ? oneLine(own) : unit
  const faults = {
    name:
      given === undefined
        ? words.nameNeeded
        : rows.some(({ reading }) => reading.toLowerCase() === given.toLowerCase())
          ? words.nameTaken
          : '',
    unit: unitName === undefined ? words.unitNeeded : '',
  }

  function add() {
    setTried(true)
    if (given === undefined || unitName === undefined || faults.name !== '') return
    clear()
    onAdd({ reading: given, unit: unitName, face: face === '' ? null : face })
  }

  return (
    <Sheet title={words.addTitle} onClose={onClose}>
      <Form onKeep={add}>
        <fieldset class="field">
          <legend class="field__label">{words.usualLabel}</legend>
          <div class="buttons">
            {USUAL.map((usual) => (
              <button
                key={usual}
                type="button"
                class="button"
                onClick={() => {
                  type({ name: freeName(words.usual[usual], rows), unit: usualUnit(usual, settings) })
                }}
              >
                {words.usual[usual]}
              </button>
            ))}
          </div>
        </fieldset>
        <TextField
          label={words.name}
          hint={words.nameHint}
          value={name}
          fault={tried ? faults.name : ''}
          input={{ maxLength: 100 }}
          onInput={(name) => type({ name })}
        />
        <Choice
          label={words.unit}
          options={[
            ...UNITS.map((value) => ({ value: value as string, words: value as string })),
            { value: '', words: words.otherUnitChoice },
          ]}
          value={unit}
          onChoose={(unit) => type({ unit })}
        />
        {unit === '' && (
          <TextField
            label={words.unitName}
            value={own}
            fault={tried ? faults.unit : ''}
            input={{ maxLength: 30 }}
            onInput={(own) => type({ own })}
          />
        )}
        {folded.unit.faces.length > 0 && (
          <Field label={words.atFace}>
            {({ id }) => (
              <select
                id={id}
                class="input"
                value={face}
                onChange={(event) => type({ face: event.currentTarget.value })}
              >
                <option value="">{words.wholeUnit}</option>
                {folded.unit.faces.map((one) => (
                  <option key={one.id} value={one.id}>
                    {one.name ?? one.id}
                  </option>
                ))}
              </select>
            )}
          </Field>
        )}
        <button type="submit" class="button button--act">
          {words.add}
        </button>
      </Form>
    </Sheet>
  )
}
