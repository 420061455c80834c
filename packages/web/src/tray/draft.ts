/** A kind as it is typed: texts and choices, until it is kept. */
import {
  type Fault,
  type Kind,
  type LengthUnit,
  type Quantity,
  readLength,
  readThread,
  type Washer,
} from '@gripbook/engine'
import type { Instrument } from '../device/settings.ts'
import { readingOf, type Taken } from '../readings/entry.ts'

export const HEAD_FORMS = ['hexagon', 'hex flange', 'socket cap', 'stud'] as const

export type Draft = {
  thread: string
  /** `marked`: the size in the catalogue; `measured`: read with an instrument. */
  how: 'measured' | 'marked'
  length: string
  count: string
  class: string
  features: string[]
  form: string
  acrossFlats: string
  threadLength: string
  washer: string
  captive: boolean
  note: string
}

export type DraftField = keyof Draft
export type DraftFault = { field: DraftField; fault: Fault | 'needed' | 'no count' }

/** What a kind has beside its id. */
export type KindFields = Omit<Kind, 'id'>

export type ReadDraft =
  | { ok: true; fields: KindFields; taken: Taken | null }
  | { ok: false; faults: [DraftFault, ...DraftFault[]] }

export function emptyDraft(thread: string, how: Draft['how'] = 'measured'): Draft {
  return {
    thread,
    how,
    length: '',
    count: '1',
    class: '',
    features: [],
    form: '',
    acrossFlats: '',
    threadLength: '',
    washer: '',
    captive: false,
    note: '',
  }
}

/** The next one in a tray of look-alikes: thread, class, head and the way to measure stay; what tells them apart does not. */
export function draftAfter(draft: Draft): Draft {
  const { thread, how, form, acrossFlats } = draft
  return { ...emptyDraft(thread, how), class: draft.class, form, acrossFlats }
}

export function draftOf(kind: Kind, unit: LengthUnit): Draft {
  const { length, head, washer } = kind
  const held = washer !== undefined && typeof washer === 'object' && 'thickness' in washer ? washer : null
  const marked = typeof length === 'object' && 'nominal' in length
  return {
    thread: typeof kind.thread === 'string' ? kind.thread : kind.thread.join(', '),
    how: marked ? 'marked' : 'measured',
    length: textOf(length, unit),
    count: kind.count === undefined ? '' : String(kind.count),
    class: kind.class ?? '',
    features: kind.features ?? [],
    form: head?.form ?? '',
    acrossFlats: textOf(head?.acrossFlats, unit),
    threadLength: textOf(kind.threadLength, unit),
    washer: textOf(held === null ? (washer as Quantity | undefined) : held.thickness, unit),
    captive: held?.captive ?? false,
    note: kind.note ?? '',
  }
}

/** A quantity as one would type it: in its own unit, which is named where it is not the page's. */
function textOf(quantity: Quantity | undefined, unit: LengthUnit): string {
  if (quantity === undefined) return ''
  const plain = typeof quantity === 'number' ? { value: quantity } : quantity
  const own = plain.unit === 'in' ? 'in' : 'mm'
  const named = own === unit ? '' : ` ${own}`
  if ('nominal' in plain) return `${plain.nominal}${named}`
  if ('value' in plain) return `${plain.value}${plain.plusMinus ? ` ± ${plain.plusMinus}` : ''}${named}`
  const { atLeast, atMost } = plain
  if (atLeast === undefined) return `≤ ${atMost}${named}`
  return atMost === undefined ? `≥ ${atLeast}${named}` : `${atLeast} to ${atMost}${named}`
}

/** The fields of a kind, and the reading of its length where it was measured. All faults at once, in the order of the form. */
export function readDraft(draft: Draft, unit: LengthUnit, instrument: Instrument): ReadDraft {
  const faults: DraftFault[] = []
  const fields: Partial<KindFields> = {}
  const quantity = (field: 'acrossFlats' | 'threadLength' | 'washer'): Quantity | undefined => {
    if (draft[field].trim() === '') return undefined
    const read = readLength(draft[field], unit)
    if (read.ok) return read.value
    faults.push({ field, fault: read.faults[0] })
    return undefined
  }

  const threads = draft.thread
    .split(/,\s+|;/)
    .map((text) => text.trim())
    .filter(Boolean)
  if (threads.length === 0) faults.push({ field: 'thread', fault: 'needed' })
  const names = threads.map((text) => {
    const read = readThread(text)
    if (!read.ok) faults.push({ field: 'thread', fault: read.faults[0] })
    return read.ok ? read.value.name : text
  })
  fields.thread = names.length === 1 ? names[0]! : names

  let taken: Taken | null = null
  if (draft.length.trim() !== '') {
    const read = readingOf(draft.length, unit, instrument)
    if (!read.ok) faults.push({ field: 'length', fault: read.fault })
    else if (draft.how === 'measured') taken = read.taken
    else fields.length = markedSize(read.taken.value)
  }

  const count = draft.count.trim()
  if (/^\d{1,5}$/.test(count)) fields.count = Number(count)
  else if (count !== '') faults.push({ field: 'count', fault: 'no count' })

  if (draft.class.trim() !== '') fields.class = draft.class.trim()
  const features = [...new Set(draft.features.map((text) => text.trim()).filter(Boolean))]
  if (features.length > 0) fields.features = features
  const acrossFlats = quantity('acrossFlats')
  const form = draft.form.trim()
  if (form !== '') fields.head = { form, ...(acrossFlats === undefined ? {} : { acrossFlats }) }
  else if (acrossFlats !== undefined) faults.push({ field: 'form', fault: 'needed' })
  const threadLength = quantity('threadLength')
  if (threadLength !== undefined) fields.threadLength = threadLength
  const thickness = quantity('washer')
  if (thickness !== undefined) {
    const washer: Washer = draft.captive ? { thickness, captive: true } : thickness
    fields.washer = washer
  }
  if (draft.note.trim() !== '') fields.note = draft.note.trim()

  const [first, ...rest] = faults
  if (first !== undefined) return { ok: false, faults: [first, ...rest] }
  return { ok: true, fields: fields as KindFields, taken }
}

/** A marked size is the nominal length; whoever typed ends or a ± of his own knows better. */
function markedSize(value: Quantity): Quantity {
  if (typeof value === 'number' || !('value' in value) || value.value === 0) return value
  return { nominal: value.value, ...(value.unit === undefined ? {} : { unit: value.unit }) }
}

/** What of a kind is new, and what is known no longer; `length` among the new ones only where its text was changed. */
export function changesOf(
  before: Draft,
  after: Draft,
  fields: KindFields,
): { changes: Partial<KindFields>; unknown: (keyof KindFields)[] } {
  const touched = (...names: DraftField[]) => names.some((name) => !alike(before[name], after[name]))
  const from: [keyof KindFields, boolean][] = [
    ['thread', touched('thread')],
    ['length', touched('length', 'how')],
    ['count', touched('count')],
    ['class', touched('class')],
    ['features', touched('features')],
    ['head', touched('form', 'acrossFlats')],
    ['threadLength', touched('threadLength')],
    ['washer', touched('washer', 'captive')],
    ['note', touched('note')],
  ]
  const changes: Partial<Record<keyof KindFields, unknown>> = {}
  const unknown: (keyof KindFields)[] = []
  for (const [name, changed] of from) {
    if (!changed) continue
    if (fields[name] !== undefined) changes[name] = fields[name]
    else if (name !== 'length' || after.length.trim() === '') unknown.push(name)
  }
  return { changes: changes as Partial<KindFields>, unknown }
}

function alike(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b)
}

/** mm: a bolt that would be told apart from another by no more than this is perhaps the same kind. */
const ALIKE = 0.6

/** A kind that is there already and looks the same: thread, class, features and, within what a bolt's tolerance is, the length. */
export function twinOf(
  kinds: readonly Kind[],
  fields: KindFields,
  length: Quantity | undefined,
  mid: (value: Quantity) => number,
): Kind | null {
  if (length === undefined) return null
  const same = (kind: Kind) =>
    kind.length !== undefined &&
    alike(kind.thread, fields.thread) &&
    alike(kind.class, fields.class) &&
    alike(kind.features ?? [], fields.features ?? []) &&
    Math.abs(mid(kind.length) - mid(length)) <= ALIKE
  return kinds.find(same) ?? null
}
