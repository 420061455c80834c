/** A stop: what is missing, the way there, and, with a reason that stays on the record, the way on. */
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { oneLine } from '../units/texts.ts'
import { words } from '../words/bench.ts'
import { holesOf, stopLines } from './stopLines.ts'
import { figureIn } from './torque.ts'
import type { Bench, Held } from './useBench.ts'

type Props = { bench: Bench; held: Held }

export function StopSheet({ bench, held }: Props) {
  const { say, settings } = useApp()
  const [giving, setGiving] = useState(false)
  const [reason, setReason] = useState('')
  const [fault, setFault] = useState('')
  const { folded, face, named } = bench
  const told = (torque: number) => `${figureIn(torque, settings.torque)} ${settings.torque}`
  const lines = stopLines(held.stops, { folded, face: face.id, named, told })
  const waits = new Set(holesOf(held.stops, face.id))
  const to = bench.steps.find(({ hole, done }) => hole !== null && waits.has(hole) && done === null)

  async function on() {
    const why = oneLine(reason)
    if (why === undefined) return setFault(words.whyNeeded)
    if (await bench.act(held.happenings, why)) say({ words: words.overridden, tone: 'done' })
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
      {!giving ? (
        <button type="button" class="button button--wide" onClick={() => setGiving(true)}>
          {words.goAllTheSame}
        </button>
      ) : (
        <Form onKeep={on}>
          <TextField
            label={words.whySame}
            value={reason}
            onInput={(text) => {
              setReason(text)
              setFault('')
            }}
            input={{ maxLength: 500 }}
            {...(fault === '' ? {} : { fault })}
          />
          <button type="submit" class="button button--stop button--wide">
            {words.writeAndGo}
          </button>
        </Form>
      )}
    </Sheet>
  )
}
