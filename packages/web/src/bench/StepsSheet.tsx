/** All steps of the face, round by round: where the work is, and a way to each. */
import { Icon } from '../look/icons.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { words } from '../words/bench.ts'
import type { BenchStep } from './round.ts'
import { visitsIn } from './round.ts'
import './StepsSheet.css'

type Props = { steps: readonly BenchStep[]; now: BenchStep; onStep: (step: BenchStep) => void; onClose: () => void }

export function StepsSheet({ steps, now, onStep, onClose }: Props) {
  const many = visitsIn(steps) > 1
  return (
    <Sheet title={words.steps} onClose={onClose} wide>
      <ol class="stack">
        {roundsOf(steps).map(({ key, own }) => {
          const { round } = own[0]!
          return (
            <li key={key} class="stack stack--tight">
              <h3>
                {many && round.what !== 'close' && `${words.visit(round.visit)} · `}
                {words.roundOf(round)}
              </h3>
              <ul class="all-steps">
                {own.map((step) => (
                  <li key={step.key}>
                    <button
                      type="button"
                      class={`button all-steps__one${step.done === null ? '' : ' all-steps__one--done'}`}
                      aria-current={step === now ? 'step' : undefined}
                      onClick={() => onStep(step)}
                    >
                      {step.done !== null && <Icon name="tick" size={18} />}
                      <span class="unseen">
                        {step.hole === null ? '' : words.hole(step.hole)}
                        {step.done === null ? '' : `, ${words.isDone}`}
                      </span>
                      <span aria-hidden={step.hole !== null} dir="auto">
                        {step.hole ?? words.closeIt}
                      </span>
                    </button>
                  </li>
                ))}
              </ul>
            </li>
          )
        })}
      </ol>
    </Sheet>
  )
}

function roundsOf(steps: readonly BenchStep[]): { key: string; own: BenchStep[] }[] {
  const rounds = new Map<string, BenchStep[]>()
  for (const step of steps) {
    const key = `${step.round.visit} ${step.round.what} ${step.pass}`
    rounds.set(key, [...(rounds.get(key) ?? []), step])
  }
  return [...rounds].map(([key, own]) => ({ key, own }))
}
