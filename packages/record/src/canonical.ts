import { must } from '@gripbook/engine'
import type { Json } from './events/json.ts'

/**
 * The one text of a JSON value (RFC 8785, JSON Canonicalization Scheme): names sorted by their UTF-16 units, no space, numbers and strings as
 * ECMAScript writes them. The same value gives the same text, byte for byte, on every device. A text with half a surrogate pair, and a number
 * that is not finite, have no such form and throw `Bug`; the schemas refuse them first.
 */
export function canonical(value: Json): string {
  if (typeof value === 'string') {
    must(isWellFormedText(value), 'canonical: half a surrogate pair', value)
    return JSON.stringify(value)
  }
  if (typeof value === 'number') {
    must(Number.isFinite(value), 'canonical: a number that JSON cannot hold', value)
    return JSON.stringify(value)
  }
  if (value === null || typeof value === 'boolean') return String(value)
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`
  const names = Object.keys(value).sort()
  return `{${names.map((name) => `${canonical(name)}:${canonical(value[name]!)}`).join(',')}}`
}

/** Whether every surrogate of a text has its other half, so that it can be written as UTF-8. */
export function isWellFormedText(text: string): boolean {
  return !/\p{Surrogate}/u.test(text)
}
