/** A task in one sentence, and as the single moves of two hands. */
import type { FaceAnswer, Kind, Move } from '@gripbook/engine'
import { isClosed, isSwap, NONE, sizeName, sourceOf } from '@gripbook/print'
import type { Task } from '../face/lead.ts'
import { words } from '../words/index.ts'

type Around = {
  answer: FaceAnswer
  kinds: readonly Kind[]
  /** Long name of a kind. */
  named: (kind: string) => string
}

export function sayTask(task: Task, { answer, kinds, named }: Around): string {
  switch (task.do) {
    case 'doubt':
      return words.verdict.doubt(task.conflict, named)
    case 'move':
      return sayRound(task.round, named)
    case 'get': {
      const sizes = task.wanted.lengths.map((length) => `${task.wanted.thread}×${length}`)
      const lies = kinds.some((kind) => sizes.includes(sizeName(kind)))
      return words.verdict.get(task.wanted, lies, answer.holes[task.wanted.hole]?.verdict === 'contradicted')
    }
    case 'measure':
      return words.verdict.measure(task.next, named)
    case 'lay aside':
      return words.verdict.layAside(named(task.kind), task.count, task.fits)
  }
}

function sayRound(round: readonly Move[], named: Around['named']): string {
  const { swap, ring, emptyHole, moveFrom, put } = words.verdict
  if (isSwap(round)) return swap(round[0]!.hole, round[1]!.hole)
  if (isClosed(round)) return ring([...round.map(({ hole }) => hole), round[0]!.hole].reverse())
  return round
    .map((move, i) => {
      if (move.to === NONE) return emptyHole(move.hole)
      const source = sourceOf(i, round)
      return source ? moveFrom(source.hole, move.hole) : put(named(move.to), move.hole)
    })
    .join(', ')
}

/** What two hands do one after the other: everything that must come out first, then what goes in. */
export function handsOf(round: readonly Move[], named: Around['named']): string[] {
  const { handOut, handIn, handInFrom, handStays } = words.verdict
  const out = round.filter(({ from }) => from !== NONE).map(({ hole, from }) => handOut(hole, named(from)))
  const into = round.map((move, i) => {
    if (move.to === NONE) return handStays(move.hole)
    const source = sourceOf(i, round)
    return source ? handInFrom(move.hole, named(move.to), source.hole) : handIn(move.hole, named(move.to))
  })
  return [...out, ...into]
}

/** What there is to say when there is nothing to do. */
export function sayNothingToDo(answer: FaceAnswer): string {
  const holes = Object.values(answer.holes)
  const open = holes.filter(({ verdict }) => verdict === 'open').length
  if (open > 0) return words.verdict.openLeft(open)
  return holes.every(({ asFound }) => asFound?.verdict === 'right')
    ? words.verdict.nothingToDo
    : words.verdict.allPlaced
}
