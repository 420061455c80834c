import { type Event, knowledgeOf, learn, nextEntry } from '@gripbook/record'
import { sha256 } from '../sha256.ts'

export const uuid = (n: number): string => `00000000-0000-4000-8000-${n.toString(16).padStart(12, '0')}`

export const UNIT = uuid(0xa1)

/** The first `count` entries of the device with this number (1, 2, 3 …) about `UNIT`, in its chain. */
export function entriesOf(device: number, count: number): Event[] {
  let knowledge = knowledgeOf(UNIT, uuid(0xd000 + device), [])
  return Array.from({ length: count }, (_, i) => {
    const body = { text: `note ${i}` }
    const given = { id: uuid(device * 1_000_000 + i), at: '2026-03-01T09:00:00.000Z', who: 'builder 1', body }
    const event = nextEntry(knowledge, { ...given, type: 'note-written', version: 1 }, sha256)
    knowledge = learn(knowledge, event)
    return event
  })
}
