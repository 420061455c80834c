/** Whether a hash on paper is that of entries that this shop keeps. */
import { createHash } from 'node:crypto'
import { type Event, fold, recordHash, upTo } from '@gripbook/record'
import { sha256 } from '../sha256.ts'

/**
 * `present`: the hash of all entries that are kept now. `earlier`: of so many entries as the shop had before, in the order in which they are listed; what came since is not in
 * it. `released`: the hash of what a release covers. `unknown`: neither; the paper was made from other entries, or was changed.
 */
export type KnownRecord =
  | { is: 'present'; entries: number; released: boolean }
  | { is: 'earlier'; entries: number; since: number; released: boolean }
  | { is: 'unknown' }

/** Of all entries of one unit, in the order of the record. */
export function knownRecord(unit: string, events: readonly Event[], hash: string): KnownRecord {
  if (recordHash(events, sha256) === hash)
    return { is: 'present', entries: events.length, released: isReleased(unit, events) }
  for (const { type, body } of events) {
    if (type !== 'unit-released') continue
    const released = upTo(headsOf(body.heads), events)
    if (recordHash(released, sha256) === hash)
      return { is: 'earlier', entries: released.length, since: events.length - released.length, released: true }
  }
  const entries = stateWith(events, hash)
  if (entries !== null)
    return {
      is: 'earlier',
      entries,
      since: events.length - entries,
      released: isReleased(unit, events.slice(0, entries)),
    }
  return { is: 'unknown' }
}

/** How many of the first entries have this hash together: `recordHash` of each beginning of the record, in one run over it. */
function stateWith(events: readonly Event[], hash: string): number | null {
  const running = createHash('sha256').update('[')
  for (const [i, event] of events.entries()) {
    running.update(`${i === 0 ? '' : ','}"${event.hash}"`)
    if (running.copy().update(']').digest('hex') === hash) return i + 1
  }
  return null
}

function isReleased(unit: string, events: readonly Event[]): boolean {
  return fold(unit, events).work.released !== undefined
}

function headsOf(heads: unknown): Record<string, number> {
  return typeof heads === 'object' && heads !== null ? (heads as Record<string, number>) : {}
}

/** For somebody who has held a phone over the paper. */
export function knownWords(known: KnownRecord): string {
  if (known.is === 'unknown')
    return 'NOT THIS SHOP’S RECORD. No state of this unit that is kept here has that hash: the paper was changed, or made from other entries.'
  const release = known.released ? 'The unit was released by then.' : 'It was NOT released.'
  if (known.is === 'present')
    return `This is the record as it is kept here: ${known.entries} entries, none of them changed. ${release}`
  return `This is an earlier state of the record that is kept here: ${known.entries} entries, none of them changed. ${known.since} came since. ${release}`
}
