/** What is measured with: one tap to change, and its ± in sight of every reading. */
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import type { Instrument as Tool } from '../device/settings.ts'
import { Icon } from '../look/icons.tsx'
import { QuantityField, TextField, typedLength } from '../parts/Field.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { useTyped } from '../parts/useTyped.ts'
import { nameTaken, singleFigure, withInstrument } from '../settings/instruments.ts'
import { words } from '../words/index.ts'
import { instrumentFor } from './entry.ts'
import './Instrument.css'

const said = ({ name, plusMinus, unit }: Tool) => words.readings.instrument(name, `${plusMinus} ${unit}`)

export function InstrumentButton({ quantity, onOpen }: { quantity: string; onOpen: () => void }) {
  const { settings } = useApp()
  return (
    <button type="button" class="button instrument" onClick={onOpen}>
      <Icon name="measure" size={20} />
      <span>
        <span class="unseen">{words.readings.instrumentLabel} </span>
        <span dir="auto">{said(instrumentFor(quantity, settings))}</span>
      </span>
    </button>
  )
}

/** Choose another, or add one's own. */
export function InstrumentSheet({ quantity, onClose }: { quantity: string; onClose: () => void }) {
  const { settings, choose } = useApp()
  const now = instrumentFor(quantity, settings)
  const [adding, setAdding] = useState(false)
  const take = (name: string) => {
    choose({ used: { ...settings.used, [quantity]: name } })
    onClose()
  }
  return (
    <Sheet title={words.readings.pickInstrument} onClose={onClose}>
      <p class="quiet">{words.readings.instrumentWhat}</p>
      <ul class="stack stack--tight">
        {settings.instruments.map((tool) => (
          <li key={tool.name}>
            <button
              type="button"
              class="button button--wide instrument__one"
              aria-current={tool.name === now.name ? 'true' : undefined}
              onClick={() => take(tool.name)}
            >
              <Icon name={tool.name === now.name ? 'tick' : 'measure'} />
              <span dir="auto">{said(tool)}</span>
            </button>
          </li>
        ))}
      </ul>
      {adding ? (
        <OwnInstrument
          onAdded={(tool) => {
            const kept = withInstrument(settings, null, tool)
            choose({ ...kept, used: { ...kept.used, [quantity]: tool.name } })
            onClose()
          }}
        />
      ) : (
        <button type="button" class="button button--plain" onClick={() => setAdding(true)}>
          <Icon name="plus" />
          {words.readings.ownInstrument}
        </button>
      )}
    </Sheet>
  )
}

function OwnInstrument({ onAdded }: { onAdded: (tool: Tool) => void }) {
  const { settings } = useApp()
  const form = useTyped('own instrument', { name: '', off: '', number: '' })
  const { name, off, number } = form.typed
  const [faults, setFaults] = useState<{ name?: string; off?: string }>({})
  const typed = typedLength(off, settings.length)

  function add() {
    const figure = typed.state === 'read' ? singleFigure(typed.value) : null
    const nameFault =
      name.trim() === ''
        ? words.readings.instrumentNameNeeded
        : nameTaken(settings.instruments, null, name)
          ? words.readings.instrumentNameTaken
          : undefined
    const offFault = figure === null || figure.value <= 0 ? words.readings.instrumentOffNeeded : undefined
    setFaults({
      ...(nameFault === undefined ? {} : { name: nameFault }),
      ...(offFault === undefined ? {} : { off: offFault }),
    })
    if (nameFault !== undefined || figure === null || offFault !== undefined) return
    form.clear()
    onAdded({
      name: name.trim(),
      plusMinus: figure.value,
      unit: figure.unit ?? 'mm',
      ...(number.trim() === '' ? {} : { number: number.trim() }),
    })
  }

  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault()
        add()
      }}
    >
      <TextField
        label={words.readings.instrumentName}
        value={name}
        onInput={(name) => form.type({ name })}
        input={{ maxLength: 100 }}
        {...(faults.name === undefined ? {} : { fault: faults.name })}
      />
      <QuantityField
        label={words.readings.instrumentOff}
        unit={settings.length}
        value={off}
        typed={faults.off === undefined || typed.state === 'fault' ? typed : { state: 'fault', words: faults.off }}
        onInput={(off) => form.type({ off })}
      />
      <TextField
        label={words.readings.instrumentNumber}
        value={number}
        onInput={(number) => form.type({ number })}
        input={{ maxLength: 100 }}
      />
      <button type="submit" class="button button--act">
        {words.readings.instrumentAdd}
      </button>
    </form>
  )
}
