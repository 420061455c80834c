import { words } from '../words/bench.ts'
import { visitsIn } from './round.ts'
import type { Bench } from './useBench.ts'

/** So many marks stand beside each other on the narrowest screen; more holes are one bar. */
const MARKS = 16

/** The round that is on, and how far it is: a mark for each hole while they have room. */
export function Progress({ bench: { steps, step, mates } }: { bench: Bench }) {
  const done = mates.filter((one) => one.done !== null).length
  const round = words.roundOf(step.round)
  const many = visitsIn(steps) > 1
  return (
    <div class="bench-progress">
      <p class="bench-progress__round">
        {many && step.round.what !== 'close' && <span class="quiet">{words.visit(step.round.visit)} · </span>}
        <b>{round}</b>
        {step.hole !== null && <span class="bench-progress__count"> {words.count(done, mates.length)}</span>}
      </p>
      {step.hole !== null && (
        <div
          class="bench-progress__bar"
          role="progressbar"
          aria-label={words.progress(round, done, mates.length)}
          aria-valuemin={0}
          aria-valuemax={mates.length}
          aria-valuenow={done}
        >
          {mates.length > MARKS ? (
            <span class="bench-progress__one">
              <span class="bench-progress__part" style={{ width: `${(100 * done) / mates.length}%` }} />
            </span>
          ) : (
            mates.map((one) => (
              <span
                key={one.key}
                class={`bench-progress__one${one.done === null ? '' : ' bench-progress__one--done'}${one === step ? ' bench-progress__one--now' : ''}`}
              />
            ))
          )}
        </div>
      )}
    </div>
  )
}
