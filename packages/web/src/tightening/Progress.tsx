/** How far the sums are, in words and as a bar, and the way to end them. */
import { words } from '../words/tightening.ts'
import type { Plan } from './useTightening.ts'

type Props = { working: NonNullable<Plan['working']>; onStop: () => void }

export function Progress({ working, onStop }: Props) {
  const starting = working === 'starting'
  return (
    <div class="plan-progress">
      <p role="status">{starting ? words.starting : words.working[working.what]}</p>
      <progress
        aria-label={words.progress}
        {...(starting ? {} : { max: 1, value: Math.max(0, Math.min(1, working.done)) })}
      />
      <button type="button" class="button button--stop" onClick={onStop}>
        {words.stop}
      </button>
    </div>
  )
}
