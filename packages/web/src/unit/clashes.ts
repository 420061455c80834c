/** What two devices say differently, as it is laid before a person. */
import { type Quantity, writeQuantity } from '@gripbook/engine'
import type { Clash } from '@gripbook/record'

export type Said =
  | { is: 'unknown' }
  | { is: 'there' }
  | { is: 'struck out' }
  | { is: 'photograph'; photograph: string }
  | { is: 'text'; text: string }

/** A value of a field in words; a quantity in the unit in which it was entered. */
export function saidOf({ field }: Pick<Clash, 'field'>, value: Clash['entries'][number]['value']): Said {
  if (field === 'there') return { is: value === false ? 'struck out' : 'there' }
  if (value === null) return { is: 'unknown' }
  if (field === 'photograph' && typeof value === 'object' && !Array.isArray(value))
    return { is: 'photograph', photograph: String(value.photograph) }
  return { is: 'text', text: textOf(field, value) }
}

/** One entry per value: two devices that say the same against a third are one choice. */
export function choicesOf(clash: Clash): { said: Said; entries: Clash['entries'] }[] {
  const choices = new Map<string, { said: Said; entries: Clash['entries'] }>()
  for (const entry of clash.entries) {
    const key = JSON.stringify(entry.value)
    const choice = choices.get(key)
    if (choice === undefined) choices.set(key, { said: saidOf(clash, entry.value), entries: [entry] })
    else choice.entries.push(entry)
  }
  return [...choices.values()]
}

const TORQUES = ['torque']
const LENGTHS = [
  'grip',
  'bracket',
  'gasket',
  'mouth',
  'threadDepth',
  'bottomDepth',
  'behind',
  'minimumEngagement',
  'length',
  'threadLength',
  'tip',
  'washer',
]

function textOf(field: string, value: unknown): string {
  if (LENGTHS.includes(field) && isQuantity(value)) return writeQuantity(value)
  if (TORQUES.includes(field) && isQuantity(value)) return writeQuantity(value, 'torque')
  if (Array.isArray(value)) return value.map((one) => textOf('', one)).join(', ')
  if (typeof value === 'object' && value !== null)
    return Object.entries(value)
      .map(
        ([name, one]) =>
          `${spaced(name)} ${isQuantity(one) && typeof one !== 'number' ? writeQuantity(one) : textOf('', one)}`,
      )
      .join(', ')
  return String(value)
}

function isQuantity(value: unknown): value is Quantity {
  if (typeof value === 'number') return true
  return (
    typeof value === 'object' &&
    value !== null &&
    ['value', 'atLeast', 'atMost', 'nominal'].some((name) => Object.hasOwn(value, name))
  )
}

/** `bottomDepth` as "bottom depth". */
export function spaced(name: string): string {
  return name.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
}
