/** A clock is started: what runs, and for how many minutes the user's own product sheet allows. */
import { clockStarted, type FoldedUnit } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { Caution } from '../parts/Caution.tsx'
import { Choice } from '../parts/Choice.tsx'
import { QuantityField, TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { useTyped } from '../parts/useTyped.ts'
import { oneLine } from '../units/texts.ts'
import { words } from '../words/bench.ts'
import { CLOCK_SORTS, type ClockSort, nextClock, readMinutes } from './clocks.ts'

type Props = { folded: FoldedUnit; face: string; onClose: () => void }

export function ClockSheet({ folded, face, onClose }: Props) {
  const { settings, choose, write } = useApp()
  const lastOf = (sort: ClockSort) => settings.used[`minutes ${sort}`] ?? ''
  const { typed, type, clear } = useTyped(`clock ${folded.id} ${face}`, {
    sort: 'sealant',
    name: '',
    minutes: lastOf('sealant'),
  })
  const { name, minutes } = typed
  const sort = CLOCK_SORTS.find((one) => one === typed.sort) ?? 'sealant'
  const [fault, setFault] = useState('')

  async function start() {
    const read = readMinutes(minutes)
    if (read === null) return setFault(words.clockMinutesFault)
    const what = oneLine(name) ?? words.clockWhats[sort]
    const clock = nextClock(sort, folded.entries)
    const done = await write(folded.id, [clockStarted({ clock, what, minutes: read, face })])
    if (done === null) return
    choose({ used: { ...settings.used, [`minutes ${sort}`]: minutes.trim() } })
    clear()
    onClose()
  }

  return (
    <Sheet title={words.clockStart} onClose={onClose}>
      <Form onKeep={start}>
        <Choice
          label={words.clockTitle}
          options={CLOCK_SORTS.map((value) => ({ value, words: words.clockSorts[value] }))}
          value={sort}
          onChoose={(next) => {
            type({ sort: next, minutes: lastOf(next) })
            setFault('')
          }}
        />
        {sort === 'other' && (
          <TextField
            label={words.clockName}
            value={name}
            onInput={(name) => type({ name })}
            input={{ maxLength: 80 }}
          />
        )}
        <QuantityField
          label={words.clockMinutes}
          unit={words.clockMinutesUnit}
          value={minutes}
          typed={fault === '' ? { state: 'empty' } : { state: 'fault', words: fault }}
          onInput={(text) => {
            type({ minutes: text })
            setFault('')
          }}
        />
        {sort === 'sealant' && <Caution name="bench-sealant" words={words.cautionSealant} seen={words.cautionSeen} />}
        {sort === 'warmed' && <Caution name="bench-warm" words={words.cautionWarm} seen={words.cautionSeen} />}
        <button type="submit" class="button button--act button--wide">
          <Icon name="waiting" />
          {words.clockGo}
        </button>
      </Form>
    </Sheet>
  )
}
