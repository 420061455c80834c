/** For tests: what happened, as the entries of one device, a second apart. */
import { type Event, type Happening, knowledgeOf, learn, nextEntry, sha256OfText } from '@gripbook/record'

export const UNIT = '0193a000-0000-4000-8000-000000000001'
export const DEVICE = '0193a000-0000-4000-8000-0000000000d1'

export function told(
  happenings: readonly Happening[],
  { before = [], device = DEVICE, who = 'ada' }: { before?: readonly Event[]; device?: string; who?: string } = {},
): { id: string; events: Event[] } {
  const events = [...before]
  let knowledge = knowledgeOf(UNIT, device, events)
  for (const happening of happenings) {
    const number = events.length + 1
    const given = {
      id: `0193a000-0000-4000-9000-${String(number).padStart(12, '0')}`,
      at: new Date(Date.UTC(2026, 2, 1, 9, 0, number)).toISOString(),
      who,
      ...happening,
    }
    const event = nextEntry(knowledge, given, sha256OfText)
    knowledge = learn(knowledge, event)
    events.push(event)
  }
  return { id: UNIT, events }
}
