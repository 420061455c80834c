/**
 * Units as their entries make them, kept between requests. An entry is never changed, so a unit whose heads are the same is the same unit: what is kept can
 * be out of date, never wrong, and every process may keep its own.
 */
import { type Event, type FoldedUnit, fold, foldMore, type Store } from '@gripbook/record'

/** What a list shows of a unit. */
export type UnitInShort = {
  name: string | null
  model: string | null
  complaint: string | null
  released: boolean
  /** By the clock of whoever made the last entry in the order of the record. */
  lastAt: string
}

export type UnitStates = {
  /** Null for a unit without entries. */
  stateOf(unit: string): Promise<FoldedUnit | null>
  /** `entries`: how many the unit is known to have by now; asks the store only when they are more than last time. */
  inShort(unit: string, entries: number): Promise<UnitInShort | null>
}

/** A unit of 10,000 entries takes some 30 MB. */
const STATES_KEPT = 4
const SHORTS_KEPT = 10_000
const PAGE = 5_000

export function unitStates(store: Store): UnitStates {
  const states = new Map<string, FoldedUnit>()
  const shorts = new Map<string, { entries: number; short: UnitInShort }>()

  async function stateOf(unit: string): Promise<FoldedUnit | null> {
    const kept = states.get(unit)
    const news = await lacking(store, unit, kept?.heads ?? {})
    const state = kept === undefined ? fold(unit, news) : news.length === 0 ? kept : foldMore(kept, news)
    if (state.entries.length === 0) return null
    keep(states, unit, state, STATES_KEPT)
    return state
  }

  return {
    stateOf,
    async inShort(unit, entries) {
      const known = shorts.get(unit)
      if (known?.entries === entries) return known.short
      const state =
        states.get(unit)?.entries.length === entries ? states.get(unit)! : fold(unit, await store.ofUnit(unit))
      if (state.entries.length === 0) return null
      const short = shortOf(state)
      keep(shorts, unit, { entries: state.entries.length, short }, SHORTS_KEPT)
      return short
    },
  }
}

async function lacking(store: Store, unit: string, heads: Readonly<Record<string, number>>): Promise<Event[]> {
  const have = { ...heads }
  const events: Event[] = []
  for (let more = true; more; ) {
    const page = await store.beyond(unit, have, PAGE)
    for (const { device, seq } of page.events) have[device] = seq
    events.push(...page.events)
    more = page.more
  }
  return events
}

function shortOf({ unit, work, entries }: FoldedUnit): UnitInShort {
  return {
    name: unit.name ?? null,
    model: work.model?.value ?? null,
    complaint: work.complaint?.value ?? null,
    released: work.released !== undefined,
    lastAt: entries.at(-1)!.at,
  }
}

/** The one that has not been asked for longest goes first. */
function keep<T>(kept: Map<string, T>, key: string, value: T, most: number): void {
  kept.delete(key)
  kept.set(key, value)
  for (const oldest of kept.keys()) {
    if (kept.size <= most) break
    kept.delete(oldest)
  }
}
