import { expect, test } from 'vitest'
import { canonical } from '../canonical.ts'
import { knew } from '../clash.ts'
import type { Event } from '../events/event.ts'
import type { Json } from '../events/json.ts'
import { fold, foldMore } from '../fold.ts'
import { shuffled, UNIT } from '../testing/bench.ts'
import { seeded } from '../unitFile/testing/random.ts'
import { openBefore } from './openBefore.ts'
import { passedStops } from './passedStops.ts'
import { stopsFor } from './stopsFor.ts'
import { slowOpen, slowPassed } from './testing/slowGates.ts'
import { stream } from './testing/streams.ts'

const found = new Map<string, number>()
const count = (what: string) => found.set(what, (found.get(what) ?? 0) + 1)
const STREAMS = 5_000
const EXPECTED = `
may be released|silent
overridden: calibration|overridden: closing step|overridden: hand-start|overridden: pass before|overridden: release|overridden: resistance
calibration: out-of-calibration|torque out of band: out-of-band|resistance: resistance
hand-start: locating-first|hand-start: not-hand-started
pass before: not-run-down|pass before: not-snug|pass before: pass-not-complete|pass before: visit-not-complete
closing step: face-not-closed|closing step: figure-not-taken|closing step: figure-outside|closing step: hole-not-final
closing step: figure-before-opening|closing step: job-before-opening
closing step: hole-not-placed|closing step: job-not-done|closing step: not-signed|closing step: part-out|closing step: resistance-stands
release: clash|release: clock-runs|release: face-not-closed|release: figure-not-taken|release: figure-outside|release: heads
release: hole-not-final|release: hole-not-placed|release: job-not-done|release: not-checked|release: part-out|release: plug-not-placed
release: resistance-stands|release: signed-before|release: stop-passed|release: come-back-not-answered
release: figure-before-opening|release: job-before-opening|opened again, proven anew, and may be released
open: clash|open: clock-runs|open: come-back-not-answered|open: face-not-closed|open: figure-not-taken|open: figure-outside|open: hole-not-final|open: hole-not-placed
open: figure-before-opening|open: job-before-opening|open: job-not-done|open: not-checked|open: part-out|open: plug-not-placed|open: resistance-stands|open: signed-before|open: stop-passed`
  .trim()
  .split(/[\n|]/)

test('[GA1] [GA2] [GA3] [GA5] 5,000 random streams: every stop that is passed is told, nothing is released while anything is open, in any order of arrival', () => {
  for (let seed = 0; seed < STREAMS; seed++) {
    const { bench } = stream(seed)
    const { made } = bench
    const folded = fold(UNIT, shuffled(seeded(seed), made))
    const passed = passedStops(folded)

    const told = passed.map(({ event, stop, override }) =>
      [event, stop.gate, stop.why.code, override?.event ?? 'silent'].join(' '),
    )
    const slowlyPassed = slowPassed(made)
    const slow = slowlyPassed.map(({ event, gate, code, override }) =>
      [event, gate, code, override ?? 'silent'].join(' '),
    )
    expect(told.sort(), `seed ${seed}`).toEqual(slow.sort())

    const open = openBefore(folded)
    const slowlyOpen = slowOpen(made, slowlyPassed)
    expect(open.map(({ why }) => why.code).sort(), `seed ${seed}, open`).toEqual(slowlyOpen.sort())
    const release = { heads: folded.heads, record: 'c'.repeat(64) }
    const stops = stopsFor(folded, { type: 'unit-released', body: release })
    expect(stops.length > 0, `seed ${seed}, release`).toBe(slowlyOpen.length > 0)

    const half = Math.floor(made.length / 2)
    const grown = foldMore(fold(UNIT, made.slice(half)), made.slice(0, half + 3))
    expect(canonical(passedStops(grown) as unknown as Json)).toBe(canonical(passed as unknown as Json))
    expect(canonical(openBefore(grown) as unknown as Json)).toBe(canonical(open as unknown as Json))

    for (const { stop, override } of passed) {
      count(`${stop.gate}: ${stop.why.code}`)
      count(override === undefined ? 'silent' : `overridden: ${stop.gate}`)
    }
    count(open.length === 0 ? 'may be released' : 'open')
    for (const { why } of open) count(`open: ${why.code}`)
    if (open.length === 0 && provenTwice(made)) count('opened again, proven anew, and may be released')
  }
})

/** Of a figure with a limit, read at the end before it came back and since. */
function provenTwice(made: readonly Event[]): boolean {
  const back = made.findIndex(({ type, body }) => type === 'came-back' && body.toAnswer === true)
  const opened = made.findLastIndex(({ type }) => type === 'face-opened')
  const isRead = ({ type, body }: Event) => type === 'figure-taken' && body.when === 'after'
  return (
    back >= 0 &&
    opened > back &&
    made.some(({ type }) => type === 'limit-stated') &&
    made.slice(0, back).some(isRead) &&
    made.slice(opened).some(isRead)
  )
}

test('[GA1] what would stop an entry before it is written is what it has passed afterwards', () => {
  for (let seed = 0; seed < 400; seed++) {
    const { made } = stream(seed).bench
    const folded = fold(UNIT, made)
    const undone = new Set(folded.undone.map(({ event }) => event))
    const standing = made.filter(({ id }) => !undone.has(id))
    const passed = passedStops(folded)
    const event = standing[Math.floor(seeded(seed)() * standing.length)]!
    const known = fold(
      UNIT,
      standing.filter((other) => knew(event, other)),
    )
    const before = stopsFor(known, event, { today: event.at.slice(0, 10) })
    const after = passed.filter((one) => one.event === event.id).map(({ stop }) => stop)
    // the entries that were undone are not among these, so their numbers seem to be missing
    const codes = (stops: typeof before) =>
      stops.map(({ why }) => why.code).filter((code) => code !== 'heads' && code !== 'entries-missing')
    expect(codes(before).sort(), `seed ${seed}`).toEqual(codes(after).sort())
  }
})

test('the streams came to every stop of the hands, the wrench, closing and releasing, and to units that may be released', () => {
  for (const what of EXPECTED) expect(found.get(what) ?? 0, what).toBeGreaterThan(5)
})
