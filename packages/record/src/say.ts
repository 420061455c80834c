import { readBody } from './events/catalogue.ts'
import type { Event } from './events/event.ts'

/** How things are called that entries know by their ids. `face` of a kind: whose tray it is in; none: the unit's. */
export type Called = {
  face: (id: string) => string
  kind: (id: string, face?: string) => string
  part: (id: string) => string
}

/** What happened, in one sentence in the trade's words, without who and when. `called`: names instead of ids. */
export function sayEntry(event: Event, called?: Called): string {
  const read = readBody(event)
  if (read.ok) {
    const said = read.definition.say(called === undefined ? read.body : inNames(read.body as Body, called))
    return said.charAt(0).toUpperCase() + said.slice(1)
  }
  return read.why === 'malformed'
    ? `An entry that cannot be read (${event.type}, at ${read.path})`
    : `An entry of a newer Gripbook (${event.type} ${event.version})`
}

type Body = Record<string, unknown>

/** The body with names for the ids in it, also in what a reading is of. */
function inNames(body: Body, called: Called): Body {
  const { face, kind, part, of } = body
  return {
    ...body,
    ...(typeof face === 'string' && { face: called.face(face) }),
    ...(typeof kind === 'string' && { kind: called.kind(kind, typeof face === 'string' ? face : undefined) }),
    ...(typeof part === 'string' && { part: called.part(part) }),
    ...(typeof of === 'object' && of !== null && { of: inNames(of as Body, called) }),
  }
}
