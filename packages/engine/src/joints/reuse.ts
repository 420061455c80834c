import type { Interval } from '../quantity/interval.ts'

/** What is known of a bolt that came out. Lengths in mm, as intervals with the instrument's uncertainty. */
export type UsedBolt = {
  /** Tightened by angle into yield, or the manual says use once. */
  torqueToYield?: boolean
  /** Length of the bolt now. */
  measured?: Interval
  /** Length of a new one, or the longest that the manual allows as `hi`. */
  asNew?: Interval
}

export type ReuseVerdict = 'single use' | 'stretched' | 'not shown to be stretched' | 'not known'

/**
 * May a bolt go back in? A torque-to-yield bolt never; a bolt that is longer than a new one can be has yielded. Shorter proves nothing beyond that:
 * necking and bad threads do not show in the length.
 */
export function reuse({ torqueToYield, measured, asNew }: UsedBolt): {
  verdict: ReuseVerdict
  why: string
  stretch?: Interval
} {
  const stretch = measured && asNew ? { lo: measured.lo - asNew.hi, hi: measured.hi - asNew.lo } : undefined
  const with_ = stretch === undefined ? {} : { stretch }
  if (torqueToYield) return { verdict: 'single use', why: 'a torque-to-yield bolt is used once', ...with_ }
  if (stretch === undefined) return { verdict: 'not known', why: 'measure it beside a new one', ...with_ }
  if (stretch.lo > 0)
    return { verdict: 'stretched', why: `at least ${stretch.lo.toFixed(2)} mm longer than a new one can be`, ...with_ }
  return {
    verdict: 'not shown to be stretched',
    why: 'not longer than a new one can be; look for necking and hurt threads too',
    ...with_,
  }
}
