import { handTravel } from './handTravel.ts'
import { hardToRemember } from './memorability.ts'
import { patternsFor } from './patterns.ts'
import type { Places } from './places.ts'

/**
 * What an order asks of the hand and of the head: its way as a multiple of the way of the shop's pattern, plus how hard it is to remember. An order that
 * no one could remember is thus as bad as one with the shop's way once more on top. The shop's pattern itself is 1. Gripbook's own measure, no source.
 */
export function burdenOf(places: Places): (sequence: ArrayLike<number>) => number {
  const [shop] = patternsFor(places)
  const usual = (shop && handTravel(places, shop.sequence)) || 1
  const hard = hardToRemember(places)
  return (sequence) => handTravel(places, sequence) / usual + hard(sequence)
}
