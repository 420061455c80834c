import { NEWTON_METRES_IN } from '@gripbook/engine'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import type { Wrench } from '../device/settings.ts'
import { Choice } from '../parts/Choice.tsx'
import { DateField, QuantityField, TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { useTyped } from '../parts/useTyped.ts'
import { useFaultFocus } from '../settings/useFaultFocus.ts'
import { words } from '../words/bench.ts'
import { draftOf, NO_WRENCH, readWrench, type WrenchDraft } from './wrenchForm.ts'

type Props = {
  taken: readonly Wrench[]
  /** What is known of it already. */
  known?: Omit<Wrench, 'tells'> | null
  /** False: it is not taken yet, something beside the form is missing. */
  onKept: (wrench: Wrench) => boolean
  keep?: string
}

/** A wrench as its label and its certificate say. */
export function WrenchForm({ taken, known = null, onKept, keep = words.wrenchKeep }: Props) {
  const { settings } = useApp()
  const unit = settings.torque
  const start = known === null ? NO_WRENCH : draftOf(known, NEWTON_METRES_IN[unit])
  const { typed, type: set, clear } = useTyped(`wrench ${known?.name ?? ''}`, start)
  const draft: WrenchDraft = { ...typed, tells: typed.tells === 'shows' ? 'shows' : 'clicks' }
  const [tried, setTried] = useState(0)
  const form = useFaultFocus(tried)
  const read = readWrench(draft, taken, NEWTON_METRES_IN[unit])
  const faults = tried > 0 && !read.ok ? read.faults : {}
  const fault = (words: string | undefined) => (words === undefined ? {} : { fault: words })
  const state = (said: string | undefined) =>
    said === undefined ? ({ state: 'empty' } as const) : ({ state: 'fault', words: said } as const)
  return (
    <Form
      formRef={form}
      onKeep={() => {
        setTried(tried + 1)
        if (!read.ok) return
        if (onKept(read.wrench)) clear()
      }}
    >
      <TextField
        label={words.wrenchName}
        value={draft.name}
        onInput={(name) => set({ name })}
        input={{ maxLength: 80 }}
        {...fault(faults.name && words[faults.name])}
      />
      <Choice
        label={words.wrenchTells}
        options={(['clicks', 'shows'] as const).map((value) => ({ value, words: words.tells[value] }))}
        value={draft.tells}
        onChoose={(tells) => set({ tells })}
      />
      <div class="row">
        <QuantityField
          label={words.wrenchFrom}
          unit={unit}
          value={draft.from}
          typed={state(faults.range && words.wrenchRangeFault)}
          onInput={(from) => set({ from })}
        />
        <QuantityField
          label={words.wrenchTo}
          unit={unit}
          value={draft.to}
          typed={{ state: 'empty' }}
          onInput={(to) => set({ to })}
        />
      </div>
      <div class="row">
        <DateField label={words.wrenchUntil} value={draft.until} onInput={(until) => set({ until })} />
        <TextField
          label={words.wrenchNumber}
          value={draft.number}
          onInput={(number) => set({ number })}
          input={{ maxLength: 40 }}
        />
      </div>
      <QuantityField
        label={words.wrenchDeviation}
        hint={words.wrenchDeviationHint}
        unit="%"
        value={draft.deviation}
        typed={state(faults.deviation && words.wrenchDeviationFault)}
        onInput={(deviation) => set({ deviation })}
      />
      <button type="submit" class="button button--act button--wide">
        {keep}
      </button>
    </Form>
  )
}
