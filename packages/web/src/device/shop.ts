/** What the settings ask the shop for: its people, their sessions, codes for new devices. Only with signal, since nothing of it is kept here. */
import { meaningOf } from '@gripbook/device'

export const ROLES = ['owner', 'builder', 'checker', 'viewer'] as const
export type Role = (typeof ROLES)[number]

/** `left`: ISO 8601, or null for someone who is still there. */
export type ShopPerson = { id: string; name: string; role: Role; since: string; left: string | null }
export type ShopSession = {
  id: string
  person: ShopPerson
  device: { id: string; name: string }
  since: string
  lastUsed: string
  expires: string
}
/** `qr` is the SVG text of the link. */
export type ShopCode = { code: string; expires: string; link: string; qr: string }
export type ForWhom = { name: string; role: Role } | { person: string }

/** `code`: the shop's own name of why not, or what came in place of its answer. */
export type ShopNo = { ok: false; code: string }
export type FromShop<T> = { ok: true; value: T } | ShopNo

/** Longer than this a person does not wait for a list, in ms. */
const PATIENCE = 15_000

export const shop = {
  people: async (): Promise<FromShop<ShopPerson[]>> => listOf<ShopPerson>(await ask('GET', '/people'), 'people'),
  sessions: async (): Promise<FromShop<ShopSession[]>> =>
    listOf<ShopSession>(await ask('GET', '/sessions'), 'sessions'),
  makeCode: async (forWhom: ForWhom): Promise<FromShop<ShopCode>> => whole(await ask('POST', '/codes', forWhom)),
  changePerson: async (
    person: string,
    change: { name?: string; role?: Role; left?: boolean },
  ): Promise<FromShop<ShopPerson>> => whole(await ask('PATCH', `/people/${person}`, change)),
  endSession: async (session: string): Promise<FromShop<null>> => {
    const answer = await ask('DELETE', `/sessions/${session}`)
    return answer.ok ? { ok: true, value: null } : answer
  },
}

async function ask(method: string, path: string, body?: object): Promise<FromShop<unknown>> {
  try {
    const response = await fetch(`/api${path}`, {
      method,
      headers: { accept: 'application/json', ...(body === undefined ? {} : { 'content-type': 'application/json' }) },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      credentials: 'same-origin',
      cache: 'no-store',
      redirect: 'error',
      signal: AbortSignal.timeout(PATIENCE),
    })
    const answer = meaningOf(response, await response.text(), Date.now())
    if (answer.ok) return { ok: true, value: answer.body }
    if (answer.why === 'refused') return { ok: false, code: answer.code }
    if (answer.why === 'later') return { ok: false, code: answer.status === 429 ? 'too-often' : 'no-answer' }
    return { ok: false, code: answer.why }
  } catch {
    return { ok: false, code: 'no-answer' }
  }
}

function listOf<T>(answer: FromShop<unknown>, name: string): FromShop<T[]> {
  if (!answer.ok) return answer
  const list = (answer.value as Record<string, unknown>)[name]
  return Array.isArray(list) ? { ok: true, value: list as T[] } : { ok: false, code: 'strange-answer' }
}

function whole<T>(answer: FromShop<unknown>): FromShop<T> {
  return answer.ok ? { ok: true, value: answer.value as T } : answer
}
