/** A stop: what is missing, the way there, and, with a reason that stays on the record, the way on. */
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { useFirstField } from '../parts/useFirstField.ts'
import { useTyped } from '../parts/useTyped.ts'
import { oneLine } from '../units/texts.ts'
import { words } from '../words/bench.ts'
import { holesOf, stopLines } from './stopLines.ts'
import { figureIn } from './torque.ts'
import type { Bench, Held } from './useBench.ts'

type Props = { bench: Bench; held: Held; onWrench: () => void }

export function StopSheet({ bench, held, onWrench }: Props) {
  const { say, settings } = useApp()
  const [giving, setGiving] = useState(false)
  const { folded, face, named } = bench
  const told = (torque: number) => `${figureIn(torque, settings.torque)} ${settings.torque}`
  const lines = stopLines(held.stops, { folded, face: face.id, named, told })
  const waits = new Set(holesOf(held.stops, face.id))
  const to = bench.steps.find(({ hole, done }) => hole !== null && waits.has(hole) && done === null)

  async function on(why: string): Promise<boolean> {
    const done = await bench.act(held.happenings, why)
    if (done) say({ words: words.overridden, tone: 'done' })
    return done
  }

  return (
    <Sheet title={words.stopTitle} onClose={bench.release}>
      <ul class="stack stack--tight bench-stops">
        {lines.map((line) => (
          <li key={line} class="bench-alarm">
            <Icon name="warning" />
            <span dir="auto">{line}</span>
          </li>
        ))}
      </ul>
      {held.stops.some(({ why }) => why.code === 'not-hand-started' || why.code === 'locating-first') && (
        <p class="quiet">{words.stops.startedWhy}</p>
      )}
      {to !== undefined && (
        <button
          type="button"
          class="button button--act button--wide dock__main"
          onClick={() => {
            bench.look(to)
            bench.release()
          }}
        >
          <Icon name="forth" />
          {words.goThere(to.hole!)}
        </button>
      )}
      {held.stops.some(({ why }) => why.code === 'out-of-calibration' || why.code === 'out-of-range') && (
        <button
          type="button"
          class="button button--act button--wide dock__main"
          onClick={() => {
            bench.release()
            onWrench()
          }}
        >
          <Icon name="gear" />
          {words.changeWrench}
        </button>
      )}
      {!giving ? (
        <button type="button" class="button button--wide" onClick={() => setGiving(true)}>
          {words.goAllTheSame}
        </button>
      ) : (
        <ReasonForm place={`reason ${folded.id} ${face.id}`} onKeep={on} />
      )}
    </Sheet>
  )
}

/** Why one goes on: what was written stays until it is on the record. */
function ReasonForm({ place, onKeep }: { place: string; onKeep: (why: string) => Promise<boolean> }) {
  const { typed, type, clear } = useTyped(place, { reason: '' })
  const [fault, setFault] = useState('')
  const form = useFirstField()

  async function keep() {
    const why = oneLine(typed.reason)
    if (why === undefined) setFault(words.whyNeeded)
    else if (await onKeep(why)) clear()
  }

  return (
    <Form formRef={form} onKeep={keep}>
      <TextField
        label={words.whySame}
        value={typed.reason}
        onInput={(reason) => {
          type({ reason })
          setFault('')
        }}
        input={{ maxLength: 500 }}
        {...(fault === '' ? {} : { fault })}
      />
      <button type="submit" class="button button--stop button--wide">
        {words.writeAndGo}
      </button>
    </Form>
  )
}
