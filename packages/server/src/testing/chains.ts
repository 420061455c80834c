/** Entries as a person's device makes them, for the tests of the server. */
import { randomUUID } from 'node:crypto'
import {
  type Event,
  type Happening,
  type Knowledge,
  knowledgeOf,
  learn,
  nextEntry,
  noteWritten,
} from '@gripbook/record'
import { sha256 } from '../sha256.ts'

export type Chain = {
  unit: string
  /** The next entry of the device about the unit. */
  next(happening?: Happening): Event
  /** The next entries, notes. */
  some(count: number): Event[]
}

export function chainOf({ device, person }: { device: string; person: string }, unit: string = randomUUID()): Chain {
  let knowledge: Knowledge = knowledgeOf(unit, device, [])
  let made = 0
  const next = (happening: Happening = noteWritten({ text: `note ${made}` })): Event => {
    made++
    const at = new Date(Date.parse('2026-03-01T09:00:00.000Z') + made * 1_000).toISOString()
    const event = nextEntry(knowledge, { id: randomUUID(), at, who: person, ...happening }, sha256)
    knowledge = learn(knowledge, event)
    return event
  }
  return { unit, next, some: (count) => Array.from({ length: count }, () => next()) }
}
