import type { Conflict, FaceAnswer, Kind, NextReading, Wanted } from '@gripbook/engine'
import { roundsToDo, sizeName } from '@gripbook/print'
import { listed } from './list.ts'
import { quantityName } from './quantityName.ts'
import { roundAtAGlance } from './rounds.ts'

const MOST_ROUNDS = 4

/**
 * What to do, in the order in which hands do it, in a few short sentences: first what contradicts itself, then what to move, what is missing,
 * what to measure. For a face where there is nothing to do, that.
 */
export function atAGlance(answer: FaceAnswer, tray: ReadonlyMap<string, Kind>): string {
  const cycles = roundsToDo(answer)
  const sentences = [
    ...(answer.conflict ? [conflictAtAGlance(answer.conflict)] : []),
    ...cycles.slice(0, MOST_ROUNDS).map((round) => `${roundAtAGlance(round, tray)}.`),
    ...(cycles.length > MOST_ROUNDS ? [`And ${cycles.length - MOST_ROUNDS} more moves, listed below.`] : []),
    ...answer.wanted.map((wanted) => wantedAtAGlance(wanted, answer, tray)),
    ...(answer.next ? [nextAtAGlance(answer.next)] : []),
  ]
  return sentences.length > 0 ? sentences.join(' ') : nothingToDo(answer)
}

function conflictAtAGlance({ why, doubt }: Conflict): string {
  const what = `${why.charAt(0).toUpperCase()}${why.slice(1)}.`
  const first = doubt[0]?.statements[0]
  if (first?.what === 'reading')
    return `${what} Check the ${quantityName(first.quantity)} of ${first.place} ${first.of} first.`
  if (first?.what === 'count') return `${what} Count ${first.of} again first.`
  if (first?.what === 'rank')
    return `${what} Compare the ${quantityName(first.quantity)} of ${first.less} and ${first.more} again first.`
  return first?.what === 'trial' ? `${what} Try ${first.kind} in hole ${first.hole} again first.` : what
}

function wantedAtAGlance(
  { hole, thread, lengths }: Wanted,
  answer: FaceAnswer,
  tray: ReadonlyMap<string, Kind>,
): string {
  if (lengths.length === 0) return `Hole ${hole} stays empty: no standard ${thread} fits it as it was read.`
  const sizes = lengths.map((length) => `${thread}×${length}`)
  const named = sizes.length > 4 ? `${sizes[0]} to ${sizes.at(-1)}` : listed(sizes, 'or')
  const lies = [...tray.values()].some((kind) => sizes.includes(sizeName(kind)))
  const asRead = answer.holes[hole]?.verdict === 'contradicted' ? 'Taken as read, hole' : 'Hole'
  return `${asRead} ${hole} wants ${named}, you have ${lies ? 'too few' : 'none'}.`
}

function nextAtAGlance({ reading, settles }: NextReading): string {
  const kind = (reading as { kind?: string }).kind
  const what =
    reading.quantity === 'turns'
      ? `Count the turns of ${kind ?? 'a bolt'} in hole ${reading.of}`
      : `Measure ${reading.place} ${reading.of} (${quantityName(reading.quantity)})`
  return `${what} ${settles.length > 0 ? `to settle ${listed(settles)}` : 'next: it says most of what is still open'}.`
}

function nothingToDo(answer: FaceAnswer): string {
  const holes = Object.values(answer.holes)
  const open = holes.filter((hole) => hole.verdict === 'open').length
  if (open > 0) return `Nothing must change. ${open === 1 ? 'One hole is' : `${open} holes are`} open still.`
  return holes.every((hole) => hole.asFound?.verdict === 'right')
    ? 'Nothing to change: every bolt sat where it belongs.'
    : 'Every hole has its bolt.'
}
