/** Words that the sentences of entries share. */
import { type Dimension, type Quantity, writeQuantity } from '@gripbook/engine'

export function atWords({ face, hole }: { face?: string | undefined; hole?: string | undefined }): string {
  if (face === undefined) return hole === undefined ? '' : ` at hole ${hole}`
  return hole === undefined ? ` at ${face}` : ` at hole ${hole} of ${face}`
}

export function quantityWords(quantity: Quantity, dimension: Dimension = 'length'): string {
  return writeQuantity(quantity, dimension)
}

/** `, because …` when there is a reason. */
export function becauseWords(reason: string | undefined): string {
  return reason === undefined ? '' : `, because: ${reason}`
}

/** Names of what was given, as a list in words. */
export function fieldWords(body: object, ...but: readonly string[]): string {
  return Object.keys(body)
    .filter((name) => !but.includes(name) && name !== 'unknown')
    .map(spaced)
    .join(', ')
}

/** `bottomDepth` as `bottom depth`. */
export function spaced(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
}

/** `; unknown again: …` for the fields that were taken back. */
export function unknownWords(fields: readonly string[] | undefined): string {
  return fields === undefined ? '' : `; unknown again: ${fields.map(spaced).join(', ')}`
}
