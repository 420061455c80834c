import { distance, type Places } from './places.ts'

/** Way of the hand in mm from the first bolt of a sequence to the last. */
export function handTravel(places: Places, sequence: ArrayLike<number>): number {
  let way = 0
  for (let i = 1; i < sequence.length; i++) way += distance(places[sequence[i - 1]!]!.at, places[sequence[i]!]!.at)
  return way
}
