import { type Event, readEvent } from '@gripbook/record'

/** The entry that a text is; null when it is none. */
export function entryIn(text: string): Event | null {
  try {
    const read = readEvent(JSON.parse(text))
    return read.ok ? read.value : null
  } catch {
    return null
  }
}
