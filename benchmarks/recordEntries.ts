/** Entries as a device makes them on an ordinary day: readings, for the most part, of some 500 letters each. */
import { type Event, entryText, knowledgeOf, learn, nextEntry, readingTaken } from '@gripbook/record'
import { sha256 } from '../packages/server/src/sha256.ts'

export { canonical, type Event } from '@gripbook/record'

export const uuid = (kind: number, n: number): string =>
  `0000000${kind}-0000-4000-8000-${n.toString(16).padStart(12, '0')}`

const START = Date.parse('2026-03-01T09:00:00.000Z')

/** The first `count` entries of device `device` about unit `unit`. */
export function entriesFrom(device: number, count: number, unit = 1, who = 'builder 1', id = uuid(2, device)): Event[] {
  let knowledge = knowledgeOf(uuid(1, unit), id, [])
  const made = Array.from({ length: count }, (_, i) => {
    const of = { face: 'pump-cover', hole: String(1 + (i % 40)), quantity: 'grip' as const }
    const value = { value: 30 + (i % 90) / 10, plusMinus: 0.1 }
    const instrument = { name: 'depth gauge', number: '7', resolution: 0.01, calibratedUntil: '2027-01-31' }
    const given = { id: uuid(3, device * 1e6 + i), at: new Date(START + i * 1_000).toISOString(), who }
    const event = nextEntry(knowledge, { ...given, ...readingTaken({ of, value, instrument }) }, sha256)
    knowledge = learn(knowledge, event)
    return event
  })
  // As they come from a device: parsed from the text that it sends.
  return made.map((event) => JSON.parse(entryText(event).whole) as Event)
}
