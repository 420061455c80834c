/** What two devices say differently, as it is laid before a person. */
import { type Quantity, writeQuantity } from '@gripbook/engine'
import { NONE } from '@gripbook/print'
import type { Clash } from '@gripbook/record'
import { spaced } from '../words/spaced.ts'

export type Said =
  | { is: 'unknown' }
  | { is: 'there' }
  | { is: 'struck out' }
  | { is: 'backed out' }
  | { is: 'by feel' }
  | { is: 'done' }
  | { is: 'released' }
  | { is: 'not released' }
  | { is: 'empty' }
  | { is: 'yes' }
  | { is: 'no' }
  | { is: 'photograph'; photograph: string }
  | { is: 'text'; text: string }

type Named = (kind: string) => string

/** A value of a field in words; a quantity in the unit in which it was entered, a bolt as it is called. */
export function saidOf({ field }: Pick<Clash, 'field'>, value: Clash['entries'][number]['value'], named: Named): Said {
  if (field === 'there') return { is: value === false ? 'struck out' : 'there' }
  if (field === 'released') return { is: value === null ? 'not released' : 'released' }
  if (field.startsWith(STEP)) return saidOfStep(value)
  if (value === null) return { is: 'unknown' }
  if (typeof value === 'boolean') return { is: value ? 'yes' : 'no' }
  if ((field === 'asFound' || field === 'placed') && typeof value === 'string')
    return value === NONE ? { is: 'empty' } : { is: 'text', text: named(value) }
  if (field === 'orderChosen' && typeof value === 'object' && !Array.isArray(value))
    return { is: 'text', text: String(value.name) }
  if (field === 'photograph' && typeof value === 'object' && !Array.isArray(value))
    return { is: 'photograph', photograph: String(value.photograph) }
  return { is: 'text', text: textOf(field, value) }
}

/** How far a bolt is, and with which torque. */
function saidOfStep(value: Clash['entries'][number]['value']): Said {
  if (value === null) return { is: 'backed out' }
  if (typeof value !== 'object' || Array.isArray(value)) return { is: 'done' }
  const { torque, angle, turns } = value
  if (typeof turns === 'number') return { is: 'text', text: String(turns) }
  if (!isQuantity(torque)) return { is: 'by feel' }
  return { is: 'text', text: `${writeQuantity(torque, 'torque')}${typeof angle === 'number' ? ` + ${angle}°` : ''}` }
}

/** One entry per value: two devices that say the same against a third are one choice. */
export function choicesOf(clash: Clash, named: Named): { said: Said; entries: Clash['entries'] }[] {
  const choices = new Map<string, { said: Said; entries: Clash['entries'] }>()
  for (const entry of clash.entries) {
    const key = JSON.stringify(entry.value)
    const choice = choices.get(key)
    if (choice === undefined) choices.set(key, { said: saidOf(clash, entry.value, named), entries: [entry] })
    else choice.entries.push(entry)
  }
  return [...choices.values()]
}

/** Fields of how far a bolt is begin so. */
const STEP = 'step '
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
  'thickness',
]

function textOf(field: string, value: unknown): string {
  if (LENGTHS.includes(field) && isQuantity(value)) return writeQuantity(value)
  if (TORQUES.includes(field) && isQuantity(value)) return writeQuantity(value, 'torque')
  if (Array.isArray(value)) return value.map((one) => textOf('', one)).join(', ')
  if (typeof value === 'object' && value !== null)
    return isQuantity(value)
      ? writeQuantity(value)
      : Object.entries(value)
          .map(([name, one]) => `${spaced(name)} ${textOf('', one)}`)
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
