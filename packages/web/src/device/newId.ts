import { uuidOf } from '@gripbook/device'

/** An id that nobody else makes: of a unit, of a person who works before the device is paired. */
export function newId(): string {
  return uuidOf(crypto.getRandomValues(new Uint8Array(16)))
}
