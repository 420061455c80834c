import { readBody } from './events/catalogue.ts'
import type { Event } from './events/event.ts'

/** What happened, in one sentence in the trade's words, without who and when. */
export function sayEntry(event: Event): string {
  const read = readBody(event)
  if (read.ok) {
    const said = read.definition.say(read.body)
    return said.charAt(0).toUpperCase() + said.slice(1)
  }
  return read.why === 'malformed'
    ? `An entry that cannot be read (${event.type}, at ${read.path})`
    : `An entry of a newer Gripbook (${event.type} ${event.version})`
}
