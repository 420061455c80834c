import { type FoldedUnit, PART_SORTS, partCameOut } from '@gripbook/record'
import { useRef, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { Choice } from '../parts/Choice.tsx'
import { Field, TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { PhotographButtons } from '../parts/PhotographButtons.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { useTyped } from '../parts/useTyped.ts'
import { words } from '../words/index.ts'
import { idsUsed, nextPartId } from './ids.ts'
import { Picture } from './Picture.tsx'
import {
  bodyOf,
  changePart,
  countOf,
  emptyForm,
  formOf,
  type Part,
  type PartForm,
  partsOf,
  strikeOutPart,
} from './partForm.ts'

type Props = { folded: FoldedUnit /** None: a new one. */; part?: Part; onClose: () => void }

/** A part that came out, photograph first; the next one starts at the face of the last. */
export function PartSheet({ folded, part, onClose }: Props) {
  const { write } = useApp()
  const start = part === undefined ? emptyForm(lastFace(folded)) : formOf(part)
  const { typed: form, type: put, clear } = useTyped<PartForm>(`part ${folded.id} ${part?.id ?? ''}`, start)
  const [checked, setChecked] = useState(false)
  const [busy, setBusy] = useState(false)
  const top = useRef<HTMLDivElement>(null)
  // What was kept a moment ago need not have come back into the unit yet.
  const given = useRef(new Set<string>())
  const holes = folded.unit.faces.find(({ id }) => id === form.face)?.holes ?? []
  const countWrong = countOf(form.count) === null

  // Of a part that is on the record nothing half changed stays behind.
  function leave() {
    if (part !== undefined) clear()
    onClose()
  }

  async function keep(next: boolean) {
    setChecked(true)
    const { what } = form
    if (what === null) return top.current?.scrollIntoView()
    if (countWrong) return
    const named = form.name.trim() || words.parts.whats[what]
    const id = part?.id ?? nextPartId(what, new Set([...idsUsed(folded.entries, 'part'), ...given.current]))
    setBusy(true)
    const written =
      part === undefined
        ? await write(folded.id, [partCameOut(bodyOf(id, { ...form, what }))], words.parts.kept(named))
        : await write(folded.id, changePart(folded, part, { ...form, what }), words.parts.changed(named))
    setBusy(false)
    if (written === null) return
    given.current.add(id)
    clear()
    if (!next) return onClose()
    setChecked(false)
    put(emptyForm(form.face))
    top.current?.scrollIntoView()
    top.current?.querySelector('button')?.focus()
  }

  return (
    <Sheet title={part === undefined ? words.parts.addTitle : partName(part)} onClose={leave}>
      <Form onKeep={() => keep(part === undefined)}>
        <div class="stack stack--tight" ref={top}>
          {form.photograph !== null && (
            <div class="part-sheet__picture">
              <Picture photograph={form.photograph} alt={words.parts.pictureOf} tell />
            </div>
          )}
          <PhotographButtons
            take={form.photograph === null ? words.parts.photographPart : words.parts.another}
            onKept={({ photograph }) => put({ photograph })}
          />
        </div>
        <div class="stack stack--tight">
          <Choice
            label={words.parts.what}
            options={PART_SORTS.map((value) => ({ value, words: words.parts.whats[value] }))}
            value={form.what}
            onChoose={(what) => put({ what })}
          />
          <p class="field__fault" role="alert">
            {checked && form.what === null ? words.parts.whatMissing : ''}
          </p>
        </div>
        <TextField
          label={words.parts.wayRound}
          hint={words.parts.wayRoundHint}
          value={form.wayRound}
          onInput={(wayRound) => put({ wayRound })}
          input={{ maxLength: 300 }}
        />
        <div class="row">
          <Select
            label={words.parts.face}
            none={words.parts.noFace}
            value={form.face}
            options={folded.unit.faces.map(({ id, name }) => ({ value: id, words: name ?? id }))}
            onChoose={(face) => put({ face, hole: '' })}
          />
          {holes.length > 0 && (
            <Select
              label={words.parts.hole}
              none={words.parts.noHole}
              value={form.hole}
              options={holes.map(({ id }) => ({ value: id, words: id }))}
              onChoose={(hole) => put({ hole })}
            />
          )}
        </div>
        <details class="more" open={part !== undefined}>
          <summary>{words.parts.moreAbout}</summary>
          <div class="stack">
            <TextField
              label={words.parts.name}
              hint={words.parts.nameHint}
              value={form.name}
              onInput={(name) => put({ name })}
              input={{ maxLength: 300 }}
            />
            <TextField
              label={words.parts.place}
              value={form.place}
              onInput={(place) => put({ place })}
              input={{ maxLength: 300 }}
            />
            <TextField
              label={words.parts.condition}
              value={form.condition}
              onInput={(condition) => put({ condition })}
              input={{ maxLength: 300 }}
            />
            <TextField
              label={words.parts.count}
              value={form.count}
              fault={countWrong ? words.parts.countFault : ''}
              onInput={(count) => put({ count })}
              input={{ inputMode: 'numeric', maxLength: 6 }}
            />
          </div>
        </details>
        <div class="buttons buttons--even">
          {part === undefined && (
            <button type="button" class="button" disabled={busy} onClick={() => void keep(false)}>
              {words.parts.keepClose}
            </button>
          )}
          <button type="submit" class="button button--act" disabled={busy}>
            {part === undefined ? words.parts.keepNext : words.parts.keep}
          </button>
        </div>
        {part !== undefined && (
          <button
            type="button"
            class="button button--stop"
            disabled={busy}
            onClick={async () => {
              const said = words.parts.struckOut(partName(part))
              if ((await write(folded.id, strikeOutPart(folded, part.id), said)) !== null) onClose()
            }}
          >
            <Icon name="cross" />
            {words.parts.strikeOut}
          </button>
        )}
      </Form>
    </Sheet>
  )
}

type SelectProps = {
  label: string
  /** Words for none of them. */
  none: string
  value: string
  options: readonly { value: string; words: string }[]
  onChoose: (value: string) => void
}

function Select({ label, none, value, options, onChoose }: SelectProps) {
  return (
    <Field label={label}>
      {({ id }) => (
        <select id={id} class="input" value={value} onChange={(event) => onChoose(event.currentTarget.value)}>
          <option value="">{none}</option>
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.words}
            </option>
          ))}
          {value !== '' && options.every((option) => option.value !== value) && <option value={value}>{value}</option>}
        </select>
      )}
    </Field>
  )
}

function partName({ name, what }: Part): string {
  return name ?? words.parts.whats[what]
}

/** The face of the part that was noted last; else the one face that there is. */
function lastFace(folded: FoldedUnit): string {
  const noted = folded.entries.findLast(({ type }) => type === 'part-came-out')?.body.face
  const { faces } = folded.unit
  if (typeof noted === 'string' && faces.some(({ id }) => id === noted)) return noted
  return partsOf(folded).length === 0 && faces.length === 1 ? faces[0]!.id : ''
}
