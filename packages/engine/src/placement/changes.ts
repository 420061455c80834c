/** From as found to what belongs: the moves, told as swap cycles that a person can carry out with two hands. */
import type { Move } from './answer.ts'

const NONE = 'none'

/**
 * Sorts moves into rounds. In a cycle every bolt comes out of a hole of the same round, so the shortest cycles come first (two holes swap);
 * what is left are chains, which start with a bolt from the tray and end with one that goes back to it.
 */
export function cyclesOf(moves: Move[]): Move[][] {
  const left = [...moves]
  const rounds: Move[][] = []
  for (let longest = 2; longest <= moves.length; longest++)
    for (let cycle = findCycle(left, longest); cycle; cycle = findCycle(left, longest)) {
      rounds.push(cycle)
      for (const move of cycle) left.splice(left.indexOf(move), 1)
    }
  while (left.length > 0) {
    // An empty hole gives nothing up, so what takes nothing starts a chain too.
    const first = left.find((move) => !left.some((other) => other.from !== NONE && other.from === move.to)) ?? left[0]!
    const chain = [first]
    left.splice(left.indexOf(first), 1)
    // The bolt that this hole gives up goes on into a hole that wants it.
    for (let last = first; last.from !== NONE; ) {
      const next = left.findIndex((move) => move.to === last.from)
      if (next < 0) break
      last = left.splice(next, 1)[0]!
      chain.push(last)
    }
    rounds.push(chain)
  }
  return rounds
}

/** A round of just `length` moves in which each takes the kind that the next gives up. */
function findCycle(moves: Move[], length: number): Move[] | null {
  const go = (path: Move[]): Move[] | null => {
    const last = path[path.length - 1]!
    if (path.length === length) return last.to === path[0]!.from ? path : null
    for (const next of moves)
      if (
        next.from === last.to &&
        next.from !== NONE &&
        !path.some((move) => move === next || move.from === next.from)
      ) {
        const found = go([...path, next])
        if (found) return found
      }
    return null
  }
  for (const move of moves)
    if (move.from !== NONE && move.to !== NONE) {
      const found = go([move])
      if (found) return found
    }
  return null
}
