/** The story of a unit: its entries newest first, each with its sentence, its state and what may be done about it. */
import type { EntryHere } from '@gripbook/device'
import type { Event } from '@gripbook/record'

export type Told = {
  event: Event
  /** Face that the entry is about. */
  face: string | null
  /** What the entry takes back, or brings back: the entry that it undoes, and for an undoing of an undoing the first one. */
  about: { does: 'took back' | 'brought back'; event: Event } | null
  /** The entry that undid this one. */
  undoneBy: Event | null
}

/** Entries in the order of the record in, newest first out. `undone` as the folded unit tells it. */
export function storyOf(entries: readonly Event[], undone: readonly { event: string; by: string }[]): Told[] {
  const byId = new Map(entries.map((event) => [event.id, event]))
  const undoneBy = new Map(undone.map(({ event, by }) => [event, by]))
  return entries.toReversed().map((event) => ({
    event,
    face: faceOf(event) ?? null,
    about: aboutOf(event, byId),
    undoneBy: byId.get(undoneBy.get(event.id) ?? '') ?? null,
  }))
}

/** Which face an entry is about; an undoing is about the face of what it undoes. */
export function ofFace(story: readonly Told[], face: string): Told[] {
  return story.filter((told) => (told.about === null ? told.face : faceOf(told.about.event)) === face)
}

/** Consecutive entries of one day, by the days that `dayOf` tells apart. */
export function byDay(story: readonly Told[], dayOf: (at: string) => number): { day: string; told: Told[] }[] {
  const days: { day: string; number: number; told: Told[] }[] = []
  for (const told of story) {
    const number = dayOf(told.event.at)
    const last = days.at(-1)
    if (last?.number === number) last.told.push(told)
    else days.push({ day: told.event.at, number, told: [told] })
  }
  return days
}

export type State = 'here' | 'waiting' | 'sent' | 'refused' | 'other'

/** How far an entry has come: `here` where nothing is sent from this device, `other` for one that came from another device. */
export function stateOf(here: EntryHere | undefined, sends: boolean): State {
  if (here === undefined) return sends ? 'waiting' : 'here'
  if (here.state === 'received') return 'other'
  if (here.state === 'waiting') return sends ? 'waiting' : 'here'
  return here.state
}

function aboutOf(event: Event, byId: ReadonlyMap<string, Event>): Told['about'] {
  if (event.type !== 'undone') return null
  let does: 'took back' | 'brought back' = 'took back'
  let target = byId.get(String(event.body.event))
  // Undoing an undoing brings back; each further step turns it round. An entry undoes only earlier ones, so this ends; forged ones end by the count.
  for (let steps = 0; target?.type === 'undone' && steps < 1_000; steps++) {
    does = does === 'took back' ? 'brought back' : 'took back'
    target = byId.get(String(target.body.event))
  }
  return target === undefined ? null : { does, event: target }
}

function faceOf(event: Event): string | undefined {
  const { face, of, at } = event.body as { face?: unknown; of?: { face?: unknown } | null; at?: unknown }
  if (typeof face === 'string') return face
  if (typeof of?.face === 'string') return of.face
  return Array.isArray(at) && at[0] === 'face' && typeof at[1] === 'string' ? at[1] : undefined
}
