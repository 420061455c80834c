/** What the parts of a build record are made from: the entries that stand, read, with the names of those who made them. */
import type { BodyOf, EventType } from '../events/catalogue.ts'
import type { Event } from '../events/event.ts'
import { standingOf } from '../gates/standing.ts'
import type { FoldedUnit, Standing } from '../unit.ts'
import type { Done } from './buildRecord.ts'

export type Told<T extends EventType = EventType> = { event: Event; body: BodyOf<T> }

export type Telling = {
  folded: FoldedUnit
  /** Entries that stand, in the order of the record, of this type. */
  of<T extends EventType>(type: T): Told<T>[]
  /** An entry of any kind by its id. */
  byId(event: string): Event | undefined
  /** Whether it comes after the other in the order of the record. */
  isLater(event: Event, than: Event): boolean
  done(event: Event): Done
  doneBy(standing: Standing<unknown>): Done
}

/** `people`: names by the ids that entries carry; whoever is not among them is printed by the id. */
export function tellingOf(folded: FoldedUnit, people: Readonly<Record<string, string>>): Telling {
  const byType = new Map<string, Told[]>()
  for (const { event, body } of standingOf(folded)) {
    const told = { event, body } as Told
    const others = byType.get(event.type)
    if (others === undefined) byType.set(event.type, [told])
    else others.push(told)
  }
  const byId = new Map(folded.entries.map((event) => [event.id, event]))
  const place = new Map(folded.entries.map(({ id }, i) => [id, i]))
  const name = (who: string): string => (Object.hasOwn(people, who) ? people[who]! : who)
  return {
    folded,
    of: <T extends EventType>(type: T) => (byType.get(type) ?? []) as unknown as Told<T>[],
    byId: (event) => byId.get(event),
    isLater: (event, than) => place.get(event.id)! > place.get(than.id)!,
    done: ({ id, who, at }) => ({ event: id, who: name(who), at }),
    doneBy: ({ event, who, at }) => ({ event, who: name(who), at }),
  }
}

/** For sorting by the clocks of the devices; what bears the same time stays as it is. */
export function byTime(a: Pick<Done, 'at'>, b: Pick<Done, 'at'>): number {
  return a.at < b.at ? -1 : a.at > b.at ? 1 : 0
}

/** The fields that are given, so that an absent one is left out and not undefined. */
export function given<T extends object>(
  fields: T,
): { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>
} {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined)) as never
}
