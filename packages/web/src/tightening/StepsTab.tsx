/** Turn by turn: what the wrench does, and what every bolt holds after it. */
import type { OrderAnswer, TighteningAnswer } from '@gripbook/engine'
import { useId } from 'preact/hooks'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/tightening.ts'
import { Bars } from './Bars.tsx'
import { barsAt, fullBar, passesOf } from './steps.ts'

type Props = {
  answer: TighteningAnswer
  order: OrderAnswer
  /** From 0. */
  at: number
  onAt: (at: number) => void
}

export function StepsTab({ answer, order, at, onAt }: Props) {
  const id = useId()
  const step = order.steps[at]
  if (step === undefined) return null
  const passes = passesOf(order)
  const pass = passes.find(({ pass: number }) => number === step.pass)!
  const bars = barsAt(answer, order, at)
  const slack = bars.filter((bar) => bar.slack).map(({ hole }) => hole)
  return (
    <div class="stack stack--tight">
      <section class="plan-step" aria-live="polite">
        <p class="quiet">
          {words.stepOf(step.pass, passes.length, at - pass.from + 1, pass.to - pass.from + 1)} ·{' '}
          {words.orders[order.kind]}
        </p>
        <h2 class="plan-lead__words">{words.stepWhat(step.hole, step.share)}</h2>
        {!step.moved && (
          <p class="plan-note">
            <Icon name="tick" />
            {words.clicked}
          </p>
        )}
        {slack.length > 0 && (
          <p class="plan-note plan-note--slack">
            <Icon name="warning" />
            {words.went(slack)}
          </p>
        )}
      </section>
      <div>
        <label class="unseen" for={id}>
          {words.step}
        </label>
        <input
          id={id}
          class="plan-slider"
          type="range"
          min={1}
          max={order.steps.length}
          step={1}
          value={at + 1}
          aria-valuetext={words.stepText(at + 1, order.steps.length)}
          onInput={(event) => onAt(Number(event.currentTarget.value) - 1)}
        />
      </div>
      <section class="stack stack--tight">
        <h2 class="unseen">{words.loadsTitle}</h2>
        <p class="quiet">{targetLine(answer)}</p>
        <Bars bars={bars} full={fullBar(answer, [order])} />
      </section>
    </div>
  )
}

function targetLine(answer: TighteningAnswer): string {
  const targets = new Set(answer.bolts.map(({ target }) => words.load(target)))
  return targets.size === 1 ? words.loadsTarget([...targets][0]!) : words.loadsTargets
}
