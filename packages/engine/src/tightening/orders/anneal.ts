import { drawnChange } from './moves.ts'
import type { Rate } from './rate.ts'

/** Of the rate at the start: a change for the worse by this much is taken about every third time, at first and at the end. Found by trial on covers of 24. */
const HOT = 0.05
const COLD = 0.001

/**
 * Simulated annealing (S. Kirkpatrick and others, Science 220, 1983) over orders: small changes by chance, worse ones taken less and less often.
 * Returns the best order met, never one worse than the first. Takes two bolts at least; calls `rate` `calls` times, each with the bound above which the order is not taken.
 */
export function anneal(
  from: Int32Array,
  fromRate: number,
  calls: number,
  rate: Rate,
  random: () => number,
): { sequence: Int32Array; rate: number } {
  const at = from.slice()
  const trial = from.slice()
  const best = { sequence: from.slice(), rate: fromRate }
  let atRate = fromRate
  for (let call = 0; call < calls; call++) {
    const heat = fromRate * HOT * (COLD / HOT) ** (call / calls)
    drawnChange(at, trial, random)
    // Metropolis: one worse by w is taken with the chance exp(−w/heat), so drawn beforehand it says how much worse is too much.
    const bound = atRate - heat * Math.log(random())
    const now = rate(trial, bound)
    if (now > bound) continue
    at.set(trial)
    atRate = now
    if (now >= best.rate) continue
    best.sequence.set(trial)
    best.rate = now
  }
  return best
}
