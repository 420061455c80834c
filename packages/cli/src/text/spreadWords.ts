import type { OrderAnswer } from '@gripbook/engine'
import { passCounts } from './orderWords.ts'

/** True when the passes, or the last rounds after them, leave the clamp no more uneven than `most`, a share. */
export function evenEnough({ spread, lastRounds }: OrderAnswer, most: number): boolean {
  return spread <= most || lastRounds.spread <= most
}

/**
 * How many passes, and rounds after them, bring the clamp to what is wanted, in words. Only the last pass is at full torque, so it takes them all;
 * how uneven the clamp is after each one is told beside it.
 */
export function evenWhen(order: OrderAnswer, most: number): string {
  const { spreads, lastRounds, spread } = order
  const wanted = `the ${percentOf(most)} wanted`
  const [count = 0, ...later] = passCounts(order)
  const inVisits = later.length > 0
  const first = count === 2 ? 'the first' : `the first ${count - 1}`
  const onTheWay = count === 1 || inVisits ? '' : ` After ${first}: ${spreads.slice(0, -1).map(percentOf).join(', ')}.`
  const many = inVisits ? 'the passes' : count === 1 ? 'one pass' : `${count} passes`
  const they = `${many.charAt(0).toUpperCase()}${many.slice(1)} ${many === 'one pass' ? 'leaves' : 'leave'}`
  if (spread <= most) return `${they} ${percentOf(spread)}, within ${wanted}.${onTheWay}`
  if (lastRounds.spread <= most)
    return `${they} ${percentOf(spread)}; ${rounds(lastRounds.count)} at full torque after ${many === 'one pass' ? 'it' : 'them'} ${lastRounds.count === 1 ? 'brings' : 'bring'} it to ${percentOf(lastRounds.spread)}, within ${wanted}.${onTheWay}`
  const more = lastRounds.still ? ' More rounds change nothing: no bolt turns any more, and a wrench loosens none.' : ''
  return `It stays above ${wanted}: ${percentOf(spread)} after ${many}, ${percentOf(lastRounds.spread)} after the last rounds.${more}${onTheWay}`
}

export function rounds(count: number): string {
  return count === 1 ? 'one round' : `${count} rounds`
}

/** "4.2 %", "37 %", "under 0.1 %". */
export function percentOf(share: number): string {
  const figure = share * 100
  if (figure > 0 && figure < 0.05) return 'under 0.1 %'
  return `${figure < 9.95 ? String(Number(figure.toFixed(1))) : figure.toFixed(0)} %`
}
