/** An entry as text: written once, for its hash, for its size and for keeping. */
import { canonical } from './canonical.ts'
import type { Event } from './events/event.ts'

/** Both are canonical JSON (RFC 8785): the whole entry, and the entry without its hash, which the hash is made of. */
export type EntryText = { whole: string; hashed: string }

/** The names of an entry stand in their canonical order here, so that its content is written once; `hash` lies between `device` and `id`. */
export function entryText(entry: Event): EntryText {
  const { at, before, body, device, hash } = entry
  const front = `{"at":${canonical(at)},"before":${canonical(before)},"body":${canonical(body)},"device":${canonical(device)},`
  const back = backOf(entry)
  return { whole: `${front}"hash":${canonical(hash)},${back}`, hashed: front + back }
}

function backOf({ id, seen, seq, tick, type, unit, version, who }: Event): string {
  return `"id":${canonical(id)},"seen":${canonical(seen)},"seq":${seq},"tick":${tick},"type":${canonical(type)},"unit":${canonical(unit)},"version":${version},"who":${canonical(who)}}`
}
