/** A stop: what is missing, the way there, and, with a reason that stays on the record, the way on. */
import type { Stop } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { TextField } from '../parts/Field.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { words } from '../words/bench.ts'
import { partName } from './partName.ts'
import { figureIn, newtonMetres } from './torque.ts'
import type { Bench, Held } from './useBench.ts'

type Props = { bench: Bench; held: Held }

export function StopSheet({ bench, held }: Props) {
  const { say } = useApp()
  const [giving, setGiving] = useState(false)
  const [reason, setReason] = useState('')
  const [fault, setFault] = useState('')
  const lines = useLines(bench, held.stops)
  const waits = new Set(holesOf(held.stops))
  const to = bench.steps.find(({ hole, done }) => hole !== null && waits.has(hole) && done === null)

  async function on() {
    if (reason.trim() === '') return setFault(words.whyNeeded)
    if (await bench.act(held.happenings, reason.trim())) say({ words: words.overridden, tone: 'done' })
  }

  return (
    <Sheet title={words.stopTitle} onClose={bench.release}>
      <ul class="stack stack--tight bench-stops">
        {lines.map((line) => (
          <li key={line} class="bench-stops__one">
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
        <form
          class="stack"
          onSubmit={(event) => {
            event.preventDefault()
            void on()
          }}
        >
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
        </form>
      )}
    </Sheet>
  )
}

/** The holes that a stop waits for, in its order. */
function holesOf(stops: readonly Stop[]): string[] {
  return stops.flatMap(({ why }) =>
    'holes' in why ? why.holes : 'hole' in why && why.hole !== undefined ? [why.hole] : [],
  )
}

function useLines(bench: Bench, stops: readonly Stop[]): string[] {
  const { settings } = useApp()
  const told = (torque: number) => `${figureIn(torque, settings.torque)} ${settings.torque}`
  const unfinished = stops.flatMap(({ why }) => (why.code === 'hole-not-final' ? [why.hole] : []))
  const unplaced = stops.flatMap(({ why }) => (why.code === 'hole-not-placed' ? [why.hole] : []))
  const parts = stops.flatMap(({ why }) => {
    if (why.code !== 'part-out') return []
    const { what, name } = bench.folded.things.part[why.part] ?? {}
    return [
      partName({
        part: why.part,
        what: String(what?.value ?? 'other'),
        name: typeof name?.value === 'string' ? name.value : null,
      }),
    ]
  })
  const say = words.stops
  const single = stops.flatMap(({ why }): string[] => {
    switch (why.code) {
      case 'locating-first':
        return [say.locating(why.holes)]
      case 'not-hand-started':
        return [say.started(why.holes)]
      case 'not-run-down':
        return [say.down(why.holes)]
      case 'not-snug':
        return [say.snug(why.holes)]
      case 'pass-not-complete':
        return [say.pass(why.pass, why.holes)]
      case 'visit-not-complete':
        return [say.visit(why.visit, why.holes)]
      case 'resistance':
        return [say.resistance(why.holes)]
      case 'does-not-belong':
        return [say.belongs(bench.named(why.kind), why.may.map(bench.named))]
      case 'out-of-band': {
        const reached = newtonMetres(why.torque) ?? 0
        const say = reached < why.band.atLeast ? words.below : words.above
        return [say(told(reached), told(why.band.atLeast), told(why.band.atMost))]
      }
      case 'out-of-range':
        return [say.range]
      case 'out-of-calibration':
        return [say.calibration(why.until)]
      case 'hole-not-final':
      case 'hole-not-placed':
      case 'part-out':
        return []
      default:
        return [say.other]
    }
  })
  return [
    ...new Set([
      ...single,
      ...(unfinished.length === 0 ? [] : [say.unfinished(unfinished)]),
      ...(unplaced.length === 0 ? [] : [say.unplaced(unplaced)]),
      ...(parts.length === 0 ? [] : [say.part(parts)]),
    ]),
  ]
}
