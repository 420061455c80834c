import type { FoldedUnit } from '@gripbook/record'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { Go } from '../units/Go.tsx'
import { usePractice } from '../units/usePractice.ts'
import { words } from '../words/index.ts'
import { CLOSED, FIRST_STEPS, isPracticeMark, placeOf, seenStep, stepDone } from './firstSteps.ts'

/** On the practice unit: five things to try, each a link to where it is. */
export function FirstSteps({ folded }: { folded: FoldedUnit }) {
  const { settings, choose } = useApp()
  const { seen } = settings
  const mark = (name: string) => {
    if (!seen.includes(name)) choose({ seen: [...seen, name] })
  }
  if (seen.includes(CLOSED))
    return (
      <div class="buttons">
        <button type="button" class="button" onClick={() => choose({ seen: seen.filter((one) => one !== CLOSED) })}>
          {words.unit.showSteps}
        </button>
        <Afresh />
      </div>
    )
  const all = FIRST_STEPS.every((step) => stepDone(step, seen, folded))
  return (
    <section class="card stack">
      <div class="stack stack--tight">
        <h2>{words.unit.steps}</h2>
        <p class="quiet">{words.unit.stepsWhat}</p>
      </div>
      <ol class="lines steps">
        {FIRST_STEPS.map((step, index) => {
          const done = stepDone(step, seen, folded)
          const { title, what } = words.unit.step[step]
          return (
            <li key={step}>
              <Go to={placeOf(step, folded.id)} class="steps__link" onGo={() => mark(seenStep(step))}>
                <span class={`steps__mark${done ? ' steps__mark--done' : ''}`} aria-hidden="true">
                  {done ? <Icon name="tick" size={20} /> : index + 1}
                </span>
                <span class="steps__words">
                  <strong>
                    {done && <span class="unseen">{words.unit.stepDone} </span>}
                    {title}
                  </strong>
                  <span class="quiet">{what}</span>
                </span>
              </Go>
            </li>
          )
        })}
      </ol>
      {all && (
        <div class="stack stack--tight">
          <p role="status">{words.unit.stepsAllDone}</p>
          <div>
            <Go to={{ at: 'units' }} class="button button--act">
              {words.unit.toUnits}
            </Go>
          </div>
        </div>
      )}
      <div class="buttons">
        <Afresh />
        <button type="button" class="button button--plain" onClick={() => mark(CLOSED)}>
          {words.unit.closeSteps}
        </button>
      </div>
    </section>
  )
}

function Afresh() {
  const { settings, choose, say } = useApp()
  const { busy, open } = usePractice()
  return (
    <button
      type="button"
      class="button"
      disabled={busy}
      onClick={async () => {
        if (!(await open(true))) return
        choose({ seen: settings.seen.filter((one) => !isPracticeMark(one)) })
        say({ words: words.unit.afreshDone, tone: 'done' })
      }}
    >
      <Icon name="undo" />
      {busy ? words.unit.afreshBusy : words.unit.afresh}
    </button>
  )
}
