/**
 * The devices of the trial, which are not killed: they make entries and photographs, send, and send again until they are told that it is kept. This is
 * the truth that the record is held against.
 */
import { type Event, type Knowledge, knowledgeOf, learn, nextEntry } from '@gripbook/record'
import { sha256 } from '../../packages/server/src/sha256.ts'
import { type Answer, rightBody, type Served } from './served.ts'

/** A photograph on its way: `at` bytes of it are said to be there. */
type Sending = { photograph: string; bytes: Buffer; at: number }

export type Phone = {
  /** Made, and not yet said to be kept: what is sent, and sent again. */
  waiting: Event[]
  knowledge: Knowledge
  who: string
  cookie: string
  sending: Sending | null
}

export type Truth = {
  unit: string
  phones: readonly Phone[]
  /** Every entry that was ever made, by id. */
  made: Map<string, Event>
  acknowledged: Set<string>
  /** Photographs that were said to be kept, with the hash of what is kept. */
  photographs: Map<string, string>
}

/** Phones that are paired with a shop that has no owner yet. */
export async function newTruth(
  served: Served,
  ownerCode: string,
  random: () => number,
  devices: number,
): Promise<Truth> {
  const unit = uuid(random)
  const phones: Phone[] = []
  for (let i = 0; i < devices; i++)
    phones.push(await paired(served, unit, random, phones[0]?.cookie ?? null, ownerCode))
  return { unit, phones, made: new Map(), acknowledged: new Set(), photographs: new Map() }
}

async function paired(
  served: Served,
  unit: string,
  random: () => number,
  owner: string | null,
  ownerCode: string,
): Promise<Phone> {
  const device = uuid(random)
  let code = ownerCode
  if (owner !== null) {
    const made = await served.ask({
      method: 'POST',
      path: '/api/codes',
      cookie: owner,
      body: { name: 'A builder', role: 'builder' },
    })
    code = rightBody<{ code: string }>(made, 'a code').code
  }
  const body = { code, name: 'The owner', device: { id: device, secret: sha256(device), name: 'phone' } }
  const answer = await served.ask({ method: 'POST', path: '/api/pairing', body })
  const { person } = rightBody<{ person: { id: string } }>(answer, 'pairing')
  const cookie = String(answer.headers['set-cookie']).split(';')[0]!
  return { waiting: [], knowledge: knowledgeOf(unit, device, []), who: person.id, cookie, sending: null }
}

/** What the phone sends next: all that waits, and some more. */
export function nextBatch(truth: Pick<Truth, 'made'>, phone: Phone, random: () => number): Event[] {
  const more = 1 + Math.floor(random() ** 3 * 60)
  for (let i = 0; i < more; i++) {
    const body = { text: `pass ${i}: ${'torque as told, no slip. '.repeat(Math.floor(random() * 8))}${random()}` }
    const at = new Date(1_780_000_000_000 + truth.made.size * 1_000).toISOString()
    const given = { id: uuid(random), at, who: phone.who, type: 'note-written', version: 1, body }
    const event = nextEntry(phone.knowledge, given, sha256)
    phone.knowledge = learn(phone.knowledge, event)
    phone.waiting.push(event)
    truth.made.set(event.id, event)
  }
  return [...phone.waiting]
}

export function acknowledge(truth: Pick<Truth, 'acknowledged'>, phone: Phone, batch: readonly Event[]): void {
  for (const { id } of batch) truth.acknowledged.add(id)
  phone.waiting = phone.waiting.filter(({ id }) => !truth.acknowledged.has(id))
}

const PIECE = 6_000

/** Sends the next piece of the phone's photograph; asks first how far it has come when the last answer was lost. */
export async function sendPiece(
  served: Served,
  truth: Truth,
  phone: Phone,
  next: () => Promise<Buffer>,
): Promise<void> {
  if (phone.sending === null) {
    const bytes = await next()
    phone.sending = { photograph: sha256(bytes), bytes, at: 0 }
  }
  const { photograph, bytes, at } = phone.sending
  const path = `/api/photographs/${photograph}/upload`
  const piece = bytes.subarray(at, at + PIECE)
  const complete = at + piece.length === bytes.length
  const headers = {
    'upload-offset': String(at),
    'upload-length': String(bytes.length),
    'upload-complete': complete ? '?1' : '?0',
  }
  let answer: Answer
  try {
    answer = await served.ask({ method: 'PATCH', path, cookie: phone.cookie, body: piece, headers })
  } catch (error) {
    phone.sending = { photograph, bytes, at: -1 }
    throw error
  }
  hear(truth, phone, rightBody(answer, 'a piece'))
}

/** Where a photograph has come to, after an answer was lost. */
export async function askHowFar(served: Served, truth: Truth, phone: Phone): Promise<void> {
  if (phone.sending === null || phone.sending.at >= 0) return
  const path = `/api/photographs/${phone.sending.photograph}/upload`
  hear(truth, phone, rightBody(await served.ask({ method: 'GET', path, cookie: phone.cookie }), 'how far'))
}

function hear(
  truth: Truth,
  phone: Phone,
  { received, kept }: { received: number; kept: { sha256: string } | null },
): void {
  if (phone.sending === null) return
  const { photograph, bytes } = phone.sending
  if (kept === null) {
    phone.sending = { photograph, bytes, at: received }
    return
  }
  truth.photographs.set(photograph, kept.sha256)
  phone.sending = null
}

export function uuid(random: () => number): string {
  const hex = Array.from({ length: 32 }, () => Math.floor(random() * 16).toString(16)).join('')
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-4${hex.slice(13, 16)}-8${hex.slice(17, 20)}-${hex.slice(20)}`
}
