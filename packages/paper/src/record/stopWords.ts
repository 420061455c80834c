/** What a stop said and what is open, in words. */
import { writeQuantity } from '@gripbook/engine'
import { type OpenWhy, sayPlace, type Why } from '@gripbook/record'
import { holesWords, words } from './words.ts'

const within = ({ atLeast, atMost }: { atLeast?: number; atMost?: number }): string => {
  const round = (value: number) => Math.round(value * 100) / 100
  if (atLeast === undefined) return `at most ${round(atMost ?? 0)} N·m`
  return atMost === undefined ? `at least ${round(atLeast)} N·m` : `${round(atLeast)} to ${round(atMost)} N·m`
}

/** A reason in one sentence without its end. */
export function whyWords(why: Why): string {
  switch (why.code) {
    case 'locating-first':
      return `${holesWords(why.holes)} locate the cover and were not started first`
    case 'not-hand-started':
      return `not started by hand: ${holesWords(why.holes)}`
    case 'not-run-down':
      return `not run down: ${holesWords(why.holes)}`
    case 'not-snug':
      return `not snug: ${holesWords(why.holes)}`
    case 'pass-not-complete':
      return `pass ${why.pass} is not complete: ${holesWords(why.holes)}`
    case 'visit-not-complete':
      return `visit ${why.visit} is not complete: ${holesWords(why.holes)}`
    case 'resistance':
      return `resistance at ${holesWords(why.holes)} was not looked at`
    case 'does-not-belong':
      return `${why.kind} does not belong here${why.may.length === 0 ? '' : `; what may: ${why.may.join(', ')}`}`
    case 'out-of-band':
      return `${writeQuantity(why.torque, 'torque')} is outside ${within(why.band)}`
    case 'out-of-range':
      return `${writeQuantity(why.torque, 'torque')} is outside the wrench’s range, ${within(why.range)}`
    case 'out-of-calibration':
      return `the wrench was in calibration until ${why.until}`
    case 'heads':
      return 'the release names other entries than its device had'
    default:
      return openWords(why)
  }
}

export function openWords(why: OpenWhy): string {
  switch (why.code) {
    case 'hole-not-placed':
      return `${why.face}, hole ${why.hole}: no bolt was placed`
    case 'hole-not-final':
      return `${why.face}, hole ${why.hole}: no final pass`
    case 'resistance-stands':
      return `${why.face}, hole ${why.hole}: resistance stands${why.feel === null ? ', two devices say different things of it' : ` (${why.feel})`}`
    case 'face-not-closed':
      return `${why.face} is not closed`
    case 'part-out':
      return `part ${why.part} is out`
    case 'plug-not-placed':
      return `plug ${why.plug} is in no socket`
    case 'figure-not-taken':
      return `${why.reading} was not read since teardown`
    case 'figure-outside':
      return `${why.reading} is outside its limit`
    case 'figure-in-other-unit':
      return `${why.reading} is in another unit than its limit`
    case 'figure-before-opening':
      return `${why.reading} was taken before ${why.face} was opened again`
    case 'job-before-opening':
      return `job ${why.job} was done before ${why.face} was opened again`
    case 'job-not-done':
      return `job ${why.job} is not done`
    case 'not-signed':
      return `${why.step} is not signed`
    case 'clock-runs':
      return `the clock ${why.clock} still runs`
    case 'come-back-not-answered':
      return 'the complaint with which it came back is not answered'
    case 'clash':
      return `contradiction at ${sayPlace(why.place)}: ${why.field}`
    case 'not-checked':
      return `no second person has signed as checker${why.face === undefined ? '' : ` for ${why.face}`}`
    case 'signed-before':
      return `hands were on it, or it came back, after the checker signed${why.face === undefined ? '' : ` (${why.face})`}`
    case 'stop-passed':
      return `a stop was passed in silence: ${words.stops.gates[why.gate]}${why.face === undefined ? '' : ` (${why.face}${why.hole === undefined ? '' : `, hole ${why.hole}`})`}`
    case 'entries-missing':
      return `entries ${why.from} to ${why.to} of a device have not arrived`
    case 'entry-not-understood':
      return 'an entry that this Gripbook does not understand'
  }
}
