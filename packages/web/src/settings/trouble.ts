import type { Status } from '@gripbook/device'

export type Trouble = 'no answer' | 'not the shop' | 'shop busy' | 'signed out'

/** What stands in the way of sending, as far as it has words of its own; null when nothing does. */
export function troubleOf(
  trouble: Status['trouble'],
): Trouble | { code: string; facts: Record<string, unknown> } | null {
  if (trouble === null) return null
  if (trouble.why === 'no-answer') return 'no answer'
  if (trouble.why === 'strange-answer') return 'not the shop'
  if (trouble.why === 'later') return 'shop busy'
  return trouble.status === 401 ? 'signed out' : { code: trouble.code, facts: trouble.facts }
}
