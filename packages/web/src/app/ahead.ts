/**
 * What was just said and is on its way to the disk, so that a verdict need not wait for it: the unit as it will stand is shown and computed on
 * at once. It is shown only; what is kept is what the device says it has, and a write that fails takes its part back.
 */
import { type Event, type FoldedUnit, foldMore, type Happening, knowledgeOf, learn, nextEntry } from '@gripbook/record'

export type Ahead = {
  who: string
  happenings: readonly Happening[]
  /** Ids of the entries that it became; empty until it is on the disk. */
  kept: readonly string[]
}

/** A mark on the photograph is its own and only sign that it was kept: it shows when it is on the disk, and not before. */
const SHOWN_WHEN_KEPT: ReadonlySet<string> = new Set(['hole-marked', 'hole-moved', 'face-photographed'])

type Listener = (ahead: readonly Ahead[]) => void

const ahead = new Map<string, Ahead[]>()
const listeners = new Map<string, Set<Listener>>()

/** Says what is about to be written; gives what ends it: with the entries that it became, or with null when it was not written. */
export function sayAhead(
  unit: string,
  who: string,
  happenings: readonly Happening[],
): (kept: readonly Event[] | null) => void {
  if (happenings.some(({ type }) => SHOWN_WHEN_KEPT.has(type))) return () => {}
  const one: Ahead = { who, happenings, kept: [] }
  set(unit, [...of(unit), one])
  return (kept) => {
    const others = of(unit).filter((other) => other !== one)
    // It goes when the record that is shown has its entries, so that nothing flickers in between.
    if (kept !== null) one.kept = kept.map(({ id }) => id)
    set(unit, kept === null ? others : [...of(unit)])
  }
}

/** Called with what is ahead of a unit's record, now and when that changes; gives what stops it. */
export function listenAhead(unit: string, listener: Listener): () => void {
  const here = listeners.get(unit) ?? new Set()
  listeners.set(unit, here.add(listener))
  listener(of(unit))
  return () => {
    here.delete(listener)
    if (here.size === 0) {
      listeners.delete(unit)
      // Nobody looks at this unit: whoever does next reads it from the disk.
      ahead.delete(unit)
    }
  }
}

/** What of it the record does not have yet. */
export function stillAhead(all: readonly Ahead[], folded: FoldedUnit): Ahead[] {
  if (all.length === 0) return []
  const there = new Set(folded.entries.map(({ id }) => id))
  return all.filter(({ kept }) => kept.length === 0 || !kept.every((id) => there.has(id)))
}

/** Forgets what the record has by now. */
export function dropArrived(unit: string, folded: FoldedUnit): void {
  const left = stillAhead(of(unit), folded)
  if (left.length !== of(unit).length) set(unit, left)
}

/** The unit as it will stand. Its entries are those of the record alone: what is ahead has no id that could be undone. */
export function withAhead(folded: FoldedUnit, device: string, all: readonly Ahead[]): FoldedUnit {
  if (all.length === 0) return folded
  let knowledge = knowledgeOf(folded.id, device, folded.entries)
  const provisional = all.flatMap(({ who, happenings }) =>
    happenings.map((happening) => {
      const id = `ahead ${knowledge.seq + 1}`
      const event = nextEntry(knowledge, { id, at: new Date(0).toISOString(), who, ...happening }, () => id)
      knowledge = learn(knowledge, event)
      return event
    }),
  )
  return { ...foldMore(folded, provisional), entries: folded.entries }
}

function of(unit: string): readonly Ahead[] {
  return ahead.get(unit) ?? []
}

function set(unit: string, next: Ahead[]): void {
  if (!listeners.has(unit)) return
  ahead.set(unit, next)
  for (const listener of listeners.get(unit) ?? []) listener(next)
}
