/** What pairing decides before and after the shop is asked. */
import { DeviceFault, type DeviceFaultCode, type EntryHere } from '@gripbook/device'

/** Letters and digits of a code; spaces and hyphens do not count, as the shop reads it. */
const CODE_LENGTH = 12
/** The shop takes no more ids than this. */
const MOST_BEFORE = 20

/** How many letters and digits a typed code has, when that is not how many a code has; null when it can be one. */
export function codeLengthFault(typed: string): { found: number; wanted: number } | null {
  const found = typed.replace(/[\s\p{Pd}]/gu, '').length
  return found === CODE_LENGTH ? null : { found, wanted: CODE_LENGTH }
}

export type PairFault = { at: 'code' | 'name' | 'form'; code: DeviceFaultCode | 'name-missing' | 'other-browser' }

/** Which field a refused pairing is put right in. Null when it is none of the device's faults. */
export function pairFault(error: unknown): PairFault | null {
  if (!(error instanceof DeviceFault)) return null
  if (error.code === 'code-not-valid') return { at: 'code', code: error.code }
  if (error.facts.code === 'wrong-secret') return { at: 'form', code: 'other-browser' }
  // The first device of a shop brings its owner's name; every later code belongs to a person that the shop knows.
  if (error.code === 'refused-by-shop' && String(error.facts.at).endsWith('name'))
    return { at: 'name', code: 'name-missing' }
  return { at: 'form', code: error.code }
}

/** Ids under which entries were made here and have not been taken: who is paired now vouches for them. The device's own id is first, since it becomes a new person's. */
export function idsBefore(own: string, entries: readonly EntryHere[]): string[] {
  const open = entries.filter(({ state }) => state === 'waiting' || state === 'refused').map(({ event }) => event.who)
  return [...new Set([own, ...open])].slice(0, MOST_BEFORE)
}
