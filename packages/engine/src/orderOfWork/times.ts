import { normalBelow } from '../maths/normal.ts'
import type { Job } from '../unit.ts'

/** How long a job takes, minutes: mean and standard deviation. */
export type JobTime = { minutes: number; spread: number }

/** Standard deviation as a share of the mean where nothing is known of it: common practice, no source. */
const USUAL_SPREAD = 0.3

/**
 * What a job takes: as stated, else the mean and the standard deviation (n − 1) of the times it took in units before; undefined when neither is known.
 * A stated figure wins over a learnt one, each for itself.
 */
export function timeOf({ minutes, spread, minutesBefore = [] }: Job): JobTime | undefined {
  const learnt = learntTime(minutesBefore)
  const mean = minutes ?? learnt?.minutes
  if (mean === undefined) return undefined
  return { minutes: mean, spread: spread ?? learnt?.spread ?? USUAL_SPREAD * mean }
}

/** Mean and standard deviation of times that were taken; the deviation only of two or more. */
export function learntTime(times: readonly number[]): { minutes: number; spread?: number } | undefined {
  if (times.length === 0) return undefined
  const mean = times.reduce((sum, time) => sum + time, 0) / times.length
  if (times.length === 1) return { minutes: mean }
  const squares = times.reduce((sum, time) => sum + (time - mean) ** 2, 0)
  return { minutes: mean, spread: Math.sqrt(squares / (times.length - 1)) }
}

/**
 * Chance, 0 to 1, that jobs of these times are done one after the other within `limit` minutes. Times of hands are never below 0 and lean to the long side, so
 * each is taken as lognormal, and their sum as the lognormal with the same mean and variance; jobs are independent. Exact for one job.
 * @source L. F. Fenton, The sum of log-normal probability distributions in scatter transmission systems, IRE Transactions on Communications Systems, 1960
 */
export function chanceWithin(limit: number, times: readonly JobTime[]): number {
  const mean = times.reduce((sum, { minutes }) => sum + minutes, 0)
  const variance = times.reduce((sum, { spread }) => sum + spread ** 2, 0)
  if (mean === 0 || variance === 0) return mean <= limit ? 1 : 0
  if (limit <= 0) return 0
  const shape = Math.log(1 + variance / mean ** 2)
  return normalBelow((Math.log(limit / mean) + shape / 2) / Math.sqrt(shape))
}
