import type { Status } from '@gripbook/device'
import type { IconName } from '../look/icons.tsx'

export type Sending = 'here only' | 'sent' | 'waiting' | 'refused' | 'full' | 'unknown'

/** How far what was entered has come, in one word. */
export function sendingOf(status: Status | null): Sending {
  if (status === null) return 'unknown'
  if (status.storage.full) return 'full'
  if (status.refused.entries + status.refused.photographs > 0) return 'refused'
  if (status.signedIn === 'no') return 'here only'
  if (status.waiting.entries + status.waiting.photographs > 0) return 'waiting'
  return status.signedIn === 'yes' ? 'sent' : 'here only'
}

/** Its sign, which no colour is needed for. */
export const SIGN_OF: Readonly<Record<Sending, IconName>> = {
  'here only': 'book',
  sent: 'sent',
  waiting: 'waiting',
  refused: 'warning',
  full: 'warning',
  unknown: 'waiting',
}
