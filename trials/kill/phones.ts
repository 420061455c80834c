/** The devices of the trial, which are not killed: they make entries, send, and send again until they are told that it is kept. This is the truth that the store is held against. */
import { createHash } from 'node:crypto'
import { type Event, type Knowledge, knowledgeOf, learn, nextEntry } from '@gripbook/record'

export const sha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex')

/** A number from 0 up to 1, the same series for the same seed (mulberry32). */
export function seeded(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
}

export type Phone = {
  /** Made, and not yet said to be kept: what is sent, and sent again. */
  waiting: Event[]
  knowledge: Knowledge
}

export type Truth = {
  units: readonly string[]
  phones: readonly Phone[]
  /** Every entry that was ever made, by id. */
  made: Map<string, Event>
  acknowledged: Set<string>
}

export function newTruth(random: () => number, devices: number): Truth {
  const unit = uuid(random)
  const phones = Array.from({ length: devices }, () => ({
    waiting: [],
    knowledge: knowledgeOf(unit, uuid(random), []),
  }))
  return { units: [unit], phones, made: new Map(), acknowledged: new Set() }
}

/** What the phone sends next: all that waits, and some more. */
export function nextBatch(truth: Truth, phone: Phone, random: () => number): Event[] {
  const more = 1 + Math.floor(random() ** 3 * 60)
  for (let i = 0; i < more; i++) {
    const body = {
      text: `pass ${i}: ${'torque as told, no slip. '.repeat(Math.floor(random() * 8))}`,
      figure: random(),
    }
    const at = new Date(1_780_000_000_000 + truth.made.size * 1_000).toISOString()
    const given = { id: uuid(random), at, who: 'builder 1', type: 'note-written', version: 1, body }
    const event = nextEntry(phone.knowledge, given, sha256)
    phone.knowledge = learn(phone.knowledge, event)
    phone.waiting.push(event)
    truth.made.set(event.id, event)
  }
  return [...phone.waiting]
}

export function acknowledge(truth: Truth, phone: Phone, batch: readonly Event[]): void {
  for (const { id } of batch) truth.acknowledged.add(id)
  phone.waiting = phone.waiting.filter(({ id }) => !truth.acknowledged.has(id))
}

function uuid(random: () => number): string {
  const hex = Array.from({ length: 32 }, () => Math.floor(random() * 16).toString(16)).join('')
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-4${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20)}`
}
