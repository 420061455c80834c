import type { Kind, Move } from '@gripbook/engine'
import { boltName, isClosed, isSwap, NONE, sourceOf } from '@gripbook/print'

/** A round of moves in a few words, for the sentence at the top: "Swap 4 and 9", "Put p35 (M8×35) in 6". */
export function roundAtAGlance(round: readonly Move[], tray: ReadonlyMap<string, Kind>): string {
  if (isSwap(round)) return `Swap ${round[0]!.hole} and ${round[1]!.hole}`
  if (isClosed(round)) return `Move round ${[...round.map((move) => move.hole), round[0]!.hole].reverse().join(' → ')}`
  const parts = round.map((move, i) => {
    if (move.to === NONE) return `empty ${move.hole}`
    const source = sourceOf(i, round)
    return source ? `move the bolt of ${source.hole} to ${move.hole}` : `put ${boltName(move.to, tray)} in ${move.hole}`
  })
  const text = parts.join(', ')
  return text.charAt(0).toUpperCase() + text.slice(1)
}

/** A round as a person with two hands carries it out: what comes out, what goes in, what is laid aside. */
export function roundByHand(round: readonly Move[], tray: ReadonlyMap<string, Kind>): string {
  const name = (id: string) => boltName(id, tray)
  if (isSwap(round)) {
    const [a, b] = round as [Move, Move]
    return `${a.hole} and ${b.hole}: take both bolts out; ${name(a.to)} into ${a.hole}, ${name(b.to)} into ${b.hole}.`
  }
  if (isClosed(round)) {
    const first = round[0]!
    const steps = round.map((move, i) =>
      i === round.length - 1
        ? `the one laid aside into ${move.hole}`
        : `${name(move.to)} from ${sourceOf(i, round)!.hole} into ${move.hole}`,
    )
    return `${round.map((move) => move.hole).join(', ')}: take ${name(first.from)} out of ${first.hole} and lay it aside; ${steps.join('; ')}.`
  }
  const steps = round.map((move, i) => {
    const source = sourceOf(i, round)
    const out = move.from === NONE ? '' : `${name(move.from)} out of ${move.hole}`
    if (move.to === NONE) return `${out}; ${move.hole} stays empty`
    const bolt = `${name(move.to)} ${source ? `from ${source.hole}` : 'from the tray'} into ${move.hole}`
    return out === '' ? bolt : `${out}, ${bolt}`
  })
  return `${steps.join('; ')}.`
}
