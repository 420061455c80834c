/** The fields of a kind: what is needed for a tray of look-alikes in sight, the rest a tap away. */
import { BOLT_CLASSES, type Unit } from '@gripbook/engine'
import type { RefObject } from 'preact'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Choice } from '../parts/Choice.tsx'
import { Field, QuantityField, TextField, type Typed } from '../parts/Field.tsx'
import { InstrumentButton } from '../readings/Instrument.tsx'
import { Sketch } from '../readings/Sketch.tsx'
import { sayFault, words } from '../words/index.ts'
import { FeatureChips } from './Chips.tsx'
import { featuresOffered, threadsOffered, USUAL_CLASSES } from './choices.ts'
import { type Draft, type DraftFault, type DraftField, HEAD_FORMS } from './draft.ts'
import { Stepper } from './Stepper.tsx'

type Props = {
  unit: Unit
  draft: Draft
  faults: readonly DraftFault[]
  onChange: (change: Partial<Draft>) => void
  onInstrument: () => void
  lengthRef: RefObject<HTMLInputElement | null>
  countRef: RefObject<HTMLInputElement | null>
  /** The name of the kind, for the buttons of its count. */
  name: string
}

const ANOTHER = 'another'

export function KindFields({ unit, draft, faults, onChange, onInstrument, lengthRef, countRef, name }: Props) {
  const { settings } = useApp()
  const threads = threadsOffered(unit, settings.thread)
  const [otherThread, setOtherThread] = useState(draft.thread !== '' && !threads.includes(draft.thread))
  const usual: readonly string[] = ['', ...USUAL_CLASSES]
  const [otherClass, setOtherClass] = useState(!usual.includes(draft.class))
  const faultOf = (field: DraftField): string => {
    const fault = faults.find((one) => one.field === field)?.fault
    if (fault === undefined) return ''
    if (fault === 'needed') return words.tray.needed[field] ?? ''
    return fault === 'no count' ? words.tray.notCount : sayFault(fault)
  }
  const typed = (field: DraftField): Typed => {
    const fault = faultOf(field)
    return fault === '' ? { state: 'empty' } : { state: 'fault', words: fault }
  }
  return (
    <>
      <div class="stack stack--tight">
        <Choice
          label={words.tray.thread}
          options={[
            ...threads.map((value) => ({ value, words: value })),
            { value: ANOTHER, words: words.tray.classMore },
          ]}
          value={otherThread ? ANOTHER : draft.thread}
          onChoose={(value) => {
            setOtherThread(value === ANOTHER)
            onChange({ thread: value === ANOTHER ? '' : value })
            if (value !== ANOTHER) lengthRef.current?.focus()
          }}
        />
        {otherThread ? (
          <TextField
            label={words.tray.otherThread}
            hint={words.tray.otherThreadHint}
            value={draft.thread}
            fault={faultOf('thread')}
            onInput={(thread) => onChange({ thread })}
            input={{ maxLength: 200, autocapitalize: 'characters' }}
          />
        ) : (
          faultOf('thread') !== '' && (
            <p class="field__fault" role="alert">
              {faultOf('thread')}
            </p>
          )
        )}
      </div>
      <div class="kind-length">
        <Sketch of="length" size={64} />
        <div class="stack stack--tight">
          <Choice
            label={words.tray.how}
            options={[
              { value: 'measured', words: words.tray.measured },
              { value: 'marked', words: words.tray.marked },
            ]}
            value={draft.how}
            onChoose={(how) => {
              onChange({ how })
              lengthRef.current?.focus()
            }}
          />
        </div>
      </div>
      <div class="kind-figures">
        <div class="kind-figures__length">
          <QuantityField
            label={words.tray.length}
            unit={settings.length}
            value={draft.length}
            typed={typed('length')}
            hint={draft.how === 'measured' ? words.tray.lengthHint : words.tray.markedHint}
            onInput={(length) => onChange({ length })}
            inputRef={lengthRef}
          />
          {draft.how === 'measured' && <InstrumentButton quantity="length" onOpen={onInstrument} />}
        </div>
        <Field label={words.tray.countField} fault={faultOf('count')}>
          {({ id, describedBy, invalid }) => (
            <div class="kind-count">
              <input
                ref={countRef}
                id={id}
                class="input"
                inputMode="numeric"
                autocomplete="off"
                value={draft.count}
                aria-describedby={describedBy}
                aria-invalid={invalid}
                onFocus={(event) => event.currentTarget.select()}
                onInput={(event) => onChange({ count: event.currentTarget.value })}
              />
              <Stepper
                value=""
                said=""
                less={words.tray.oneLess(name)}
                more={words.tray.oneMore(name)}
                atLeast={!(Number(draft.count) > 0)}
                onStep={(by) => onChange({ count: String(Math.max(0, (Number(draft.count) || 0) + by)) })}
              />
            </div>
          )}
        </Field>
      </div>
      <Choice
        label={words.tray.class}
        options={[
          { value: '', words: words.tray.classUnknown },
          ...USUAL_CLASSES.map((value) => ({ value: value as string, words: value as string })),
          { value: ANOTHER, words: words.tray.classMore },
        ]}
        value={otherClass ? ANOTHER : draft.class}
        onChoose={(value) => {
          setOtherClass(value === ANOTHER)
          onChange({ class: value === ANOTHER ? '' : value })
        }}
      />
      {otherClass && (
        <Choice
          label={words.tray.class}
          quiet
          options={[...new Set([...BOLT_CLASSES.filter((one) => !usual.includes(one)), draft.class])]
            .filter(Boolean)
            .map((value) => ({ value, words: value }))}
          value={draft.class}
          onChoose={(value) => onChange({ class: value })}
        />
      )}
      <details class="kind-more" open={draft.features.length > 0 || draft.form !== '' || draft.washer !== ''}>
        <summary>{words.tray.moreAbout}</summary>
        <div class="stack">
          <FeatureChips
            label={words.tray.features}
            offered={featuresOffered(unit)}
            chosen={draft.features}
            onChange={(features) => onChange({ features })}
          />
          <div class="stack stack--tight">
            <Choice
              label={words.tray.head}
              options={['', ...new Set([...HEAD_FORMS, ...(draft.form === '' ? [] : [draft.form])])].map((value) => ({
                value,
                words: value === '' ? words.tray.headUnknown : (words.tray.headForms[value] ?? value),
              }))}
              value={draft.form}
              onChoose={(form) => onChange({ form })}
            />
            {faultOf('form') !== '' && (
              <p class="field__fault" role="alert">
                {faultOf('form')}
              </p>
            )}
          </div>
          <div class="row">
            {(['acrossFlats', 'threadLength', 'washer'] as const).map((field) => (
              <QuantityField
                key={field}
                label={words.tray[field]}
                unit={settings.length}
                value={draft[field]}
                typed={typed(field)}
                onInput={(text) => onChange({ [field]: text })}
              />
            ))}
          </div>
          {draft.washer !== '' && (
            <Choice
              label={words.tray.captive}
              options={[
                { value: 'no', words: words.tray.captiveNo },
                { value: 'yes', words: words.tray.captiveYes },
              ]}
              value={draft.captive ? 'yes' : 'no'}
              onChoose={(value) => onChange({ captive: value === 'yes' })}
            />
          )}
          <TextField label={words.tray.note} value={draft.note} onInput={(note) => onChange({ note })} long />
        </div>
      </details>
    </>
  )
}
