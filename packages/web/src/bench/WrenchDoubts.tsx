/** What is to be said against the wrench for this step, and the way to another one. */
import { Icon } from '../look/icons.tsx'
import { words } from '../words/bench.ts'
import { dayOf } from './today.ts'
import { doubtsOf, toSet } from './torque.ts'
import type { Bench } from './useBench.ts'

export function WrenchDoubts({ bench, onWrench }: { bench: Bench; onWrench: () => void }) {
  const { wrench, extension } = bench.wrench
  const set = bench.wanted === null ? null : toSet(bench.wanted, extension)
  const doubts = wrench === null || set === null ? [] : doubtsOf(wrench, [set], dayOf(new Date()))
  return (
    <>
      {doubts.length > 0 && (
        <button type="button" class="button dock__doubt" onClick={onWrench}>
          <Icon name="warning" />
          <span>{doubts.map((doubt) => words.doubts[doubt]).join(' ')}</span>
        </button>
      )}
      {bench.standing !== null && doubts.includes('out of date') && (
        <p class="quiet">{words.standing(bench.standing)}</p>
      )}
    </>
  )
}
