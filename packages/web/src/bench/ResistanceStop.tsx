/** The face stands still: what the resistance can be, what to look at, what to back out, and only then how to go on. */
import { boltBackedOut, resistanceCleared } from '@gripbook/record'
import { useState } from 'preact/hooks'
import { Icon } from '../look/icons.tsx'
import { Caution } from '../parts/Caution.tsx'
import { TextField } from '../parts/Field.tsx'
import { Form } from '../parts/Form.tsx'
import { useTyped } from '../parts/useTyped.ts'
import { turnsText } from '../readings/turns.ts'
import { useNames } from '../unit/useNames.ts'
import { oneLine } from '../units/texts.ts'
import { words } from '../words/bench.ts'
import { sentence } from '../words/index.ts'
import type { General } from './general.ts'
import { feelOf, likelyCauses } from './resistance.ts'
import type { Bench } from './useBench.ts'
import { useKeys } from './useKeys.ts'
import './ResistanceStop.css'

type Props = { bench: Bench; hole: string; general: General }

export function ResistanceStop({ bench, hole, general }: Props) {
  const { folded, face, answer } = bench
  const nameOf = useNames()
  const [fault, setFault] = useState('')
  const work = folded.faces[face.id]!
  const here = work.holes[hole]!
  const felt = here.resistance!
  const { typed, type, clear } = useTyped(`found ${felt.event}`, { found: '' })
  const turns = folded.entries.find(({ id }) => id === felt.event)?.body.turns
  const counted = typeof turns === 'number' ? turns : null
  const kind = here.placed?.value ?? answer?.holes[hole]?.best ?? null
  const pair = answer?.pairs.find((one) => one.hole === hole && one.kind === kind) ?? null
  const feel = feelOf(felt.value)
  const causes = likelyCauses(feel ?? 'stiff near the end', counted, pair)
  const isIn = (steps: object) => Object.keys(steps).length > 0
  const out = !isIn(here.steps)
  const others = Object.entries(work.holes).flatMap(([id, { steps }]) => (isIn(steps) ? [id] : []))

  useKeys(null, (means) => {
    if (means.does === 'undo') general.undo()
    if (means.does === 'look') general.look(means.by)
  })

  const backOut = (holes: readonly string[]) =>
    bench.act(holes.map((one) => boltBackedOut({ face: face.id, hole: one, reason: words.bindsTitle(hole) })))

  async function cleared() {
    const said = oneLine(typed.found)
    if (said === undefined) setFault(words.foundNeeded)
    else if (await bench.act([resistanceCleared({ face: face.id, hole, found: said })])) clear()
  }

  function say(found: string) {
    type({ found })
    setFault('')
  }

  return (
    <section class="resist stack">
      <div class="resist__head" role="alert">
        <Icon name="warning" size={36} />
        <div>
          <h2>{words.stopped}</h2>
          <p dir="auto">
            <b>{words.felt(hole, feel === null ? felt.value : words.feels[feel])}</b>
            {counted !== null && ` · ${words.feltAfter(turnsText(counted))}`}
          </p>
          <p class="quiet" dir="auto">
            {words.stoppedBy(nameOf(felt.who))}
          </p>
        </div>
      </div>
      <p class="bench-lead">{words.doNotPull}</p>
      <div class="stack stack--tight">
        <h3>{words.canBe}</h3>
        <ol class="resist__causes">
          {causes.map(({ cause, why }) => (
            <li key={cause}>
              <p>
                <b>{words.causes[cause]}</b>
              </p>
              {why !== null && <p class="quiet">{sentence(why)}</p>}
              <p>{words.looks[cause]}</p>
            </li>
          ))}
        </ol>
      </div>
      <Caution name="bench-air" words={words.cautionAir} seen={words.cautionSeen} />
      <div class="stack stack--tight">
        {out ? (
          <p class="bench__note">
            <Icon name="tick" size={20} />
            {words.isOut(hole)}
          </p>
        ) : (
          <button type="button" class="button button--wide" onClick={() => void backOut([hole])}>
            <Icon name="turns" />
            {words.backOut(hole)}
          </button>
        )}
        {others.length > 1 && (
          <button type="button" class="button button--wide" onClick={() => void backOut(others)}>
            {words.backOutAll(others.length)}
          </button>
        )}
        <button type="button" class="button button--wide" onClick={() => general.undo()}>
          <Icon name="undo" />
          {words.undo}
        </button>
      </div>
      <Form tight onKeep={cleared}>
        <h3>{words.foundTitle}</h3>
        <div class="buttons">
          {causes.map(({ cause }) => (
            <button key={cause} type="button" class="button" onClick={() => say(words.foundWords[cause])}>
              {words.foundWords[cause]}
            </button>
          ))}
        </div>
        <TextField
          label={words.foundField}
          value={typed.found}
          onInput={say}
          input={{ maxLength: 500 }}
          {...(fault === '' ? {} : { fault })}
        />
        <button type="submit" class="button button--act button--wide dock__main">
          <Icon name="tick" size={30} />
          {words.clear}
        </button>
      </Form>
    </section>
  )
}
