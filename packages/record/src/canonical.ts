import { must } from '@gripbook/engine'
import type { Json } from './events/json.ts'

/**
 * The one text of a JSON value (RFC 8785, JSON Canonicalization Scheme): names sorted by their UTF-16 units, no space, numbers and strings as
 * ECMAScript writes them. The same value gives the same text, byte for byte, on every device. A text with half a surrogate pair, and a number
 * that is not finite, have no such form and throw `Bug`; the schemas refuse them first.
 */
export function canonical(value: Json): string {
  if (isInOrder(value)) {
    const text = JSON.stringify(value)
    // JSON.stringify writes half a surrogate pair as \ud…, and so may end a text with a backslash in it: then every text is looked at by itself.
    if (!text.includes('\\ud')) return text
  }
  if (typeof value === 'string') return canonicalText(value)
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`
  let text = ''
  for (const name of Object.keys(value as object).sort())
    text += `${text === '' ? '' : ','}${canonicalText(name)}:${canonical((value as { [name: string]: Json })[name]!)}`
  return `{${text}}`
}

/** Whether ECMAScript's own JSON text is the canonical one, but for half surrogate pairs: what was canonical text before is read in that order. */
function isInOrder(value: Json): boolean {
  if (typeof value === 'number') must(Number.isFinite(value), 'canonical: a number that JSON cannot hold', value)
  if (typeof value !== 'object' || value === null) return true
  if (Array.isArray(value)) return value.every(isInOrder)
  let before = ''
  for (const name of Object.keys(value)) {
    if (name < before || !isInOrder(value[name]!)) return false
    before = name
  }
  return true
}

function canonicalText(text: string): string {
  must(isWellFormedText(text), 'canonical: half a surrogate pair', text)
  return JSON.stringify(text)
}

/** A text that JSON writes as it is, as nearly all are: looked at first, because it is quick. */
const PLAIN = /^[ !#-[\]-~]*$/

export function isPlainAscii(text: string): boolean {
  return PLAIN.test(text)
}

/** Whether every surrogate of a text has its other half, so that it can be written as UTF-8. */
export function isWellFormedText(text: string): boolean {
  return isPlainAscii(text) || !/\p{Surrogate}/u.test(text)
}
