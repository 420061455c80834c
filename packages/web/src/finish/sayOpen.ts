/** What is open, in a sentence. */
import type { FoldedUnit } from '@gripbook/record'
import { partNameIn } from '../unit/partName.ts'
import { sayClash } from '../unit/sayClash.ts'
import { sayIn } from '../unit/sayIn.ts'
import { words } from '../words/finish.ts'
import type { Line } from './lines.ts'

export function sayOpen({ why, face, holes }: Line, folded: FoldedUnit): string {
  const at = faceName(face, folded)
  switch (why.code) {
    case 'hole-not-placed':
      return words.notPlaced(at, holes)
    case 'hole-not-final':
      return words.notFinal(at, holes)
    case 'resistance-stands':
      return words.resistance(at, why.hole, why.feel)
    case 'face-not-closed':
      return words.notClosed(at)
    case 'part-out':
      return partNameIn(folded, why.part)
    case 'plug-not-placed':
      return words.plugOut(why.plug)
    case 'figure-not-taken':
      return words.notTaken(why.reading)
    case 'figure-before-opening':
      return words.takenBefore(why.reading, faceName(why.face, folded))
    case 'figure-outside':
      return words.outside(why.reading)
    case 'figure-in-other-unit':
      return words.otherUnit(why.reading)
    case 'job-not-done':
      return words.jobNotDone(jobName(why.job, folded))
    case 'job-before-opening':
      return words.doneBefore(jobName(why.job, folded), faceName(why.face, folded))
    case 'clock-runs':
      return words.clockRuns(clockName(why.clock, folded))
    case 'come-back-not-answered':
      return words.notAnswered(complaintOf(why.event, folded))
    case 'clash':
      return sayClash(why, folded)
    case 'stop-passed': {
      const entry = folded.entries.find(({ id }) => id === why.event)
      return words.stopPassed(why.gate, entry === undefined ? '' : sayIn(folded)(entry))
    }
    case 'entries-missing':
      return words.missing(why.to - why.from + 1)
    case 'entry-not-understood':
      return words.notUnderstood
    case 'not-signed':
      return words.notSigned(why.step)
    case 'not-checked':
      return words.notChecked
    case 'signed-before':
      return words.signedBefore
  }
}

export function faceName(id: string | null, { unit }: FoldedUnit): string {
  return unit.faces.find((face) => face.id === id)?.name ?? id ?? ''
}

export function jobName(job: string, { things }: FoldedUnit): string {
  const name = things.job[job]?.name?.value
  return typeof name === 'string' ? name : job
}

/** Its first line: what the customer said. */
function complaintOf(event: string, { entries }: FoldedUnit): string {
  return String(entries.find(({ id }) => id === event)?.body.complaint ?? '').split('\n')[0]!
}

export function clockName(clock: string, { things }: FoldedUnit): string {
  const what = things.clock[clock]?.what?.value
  return typeof what === 'string' ? what : clock
}
