/** What the entries say about the devices that made them: how far each has come, what is still on its way, whose clock is off. */
import type { Event } from './events/event.ts'
import type { Understood } from './fold.ts'
import type { FoldedUnit, UnitWork } from './unit.ts'

/** Clocks of phones differ by seconds; nobody needs to hear of that. */
const CLOCK_SLACK = 60_000

export function headsOf(entries: readonly Event[]): Record<string, number> {
  const most = new Map<string, number>()
  for (const { device, seq } of entries) raise(most, device, seq)
  return sortedByName(most)
}

/** Numbers that are passed over in the entries, and numbers that some device had seen and that are not here. */
export function missingIn(entries: readonly Event[]): FoldedUnit['missing'] {
  const known = new Map<string, number>()
  const numbers = new Map<string, Set<number>>()
  for (const { device, seq, seen } of entries) {
    raise(known, device, seq)
    for (const other in seen) raise(known, other, seen[other]!)
    const own = numbers.get(device)
    if (own === undefined) numbers.set(device, new Set([seq]))
    else own.add(seq)
  }
  return Object.entries(sortedByName(known)).flatMap(([device, last]) => {
    const own = numbers.get(device) ?? new Set()
    // All numbers up to the last are here, as they nearly always are: nothing to look for.
    if (own.size === last) return []
    const here = [...own].sort((a, b) => a - b)
    return [...here, last + 1].flatMap((seq, i) => {
      const from = (here[i - 1] ?? 0) + 1
      return seq > from ? [{ device, from, to: seq - 1 }] : []
    })
  })
}

/** By how much each device's clock ran behind the ticks that it had to go on from. */
export function clocksApart(entries: readonly Event[]): FoldedUnit['clocks'] {
  const behind = new Map<string, number>()
  for (const { device, tick, at } of entries) raise(behind, device, tick - Date.parse(at))
  return Object.entries(sortedByName(behind))
    .filter(([, by]) => by > CLOCK_SLACK)
    .map(([device, by]) => ({ device, behind: by }))
}

/** Entries that stand and that the signer of the release did not have before him; the release itself is not among them. */
export function sinceRelease(standing: readonly Understood[], released: UnitWork['released']): string[] {
  if (released === undefined) return []
  const { heads } = released.value
  return standing
    .filter(({ event }) => event.id !== released.event && event.seq > (heads[event.device] ?? 0))
    .map(({ event }) => event.id)
}

function raise(most: Map<string, number>, name: string, number: number): void {
  const known = most.get(name)
  if (known === undefined || number > known) most.set(name, number)
}

function sortedByName(most: ReadonlyMap<string, number>): Record<string, number> {
  return Object.fromEntries([...most].sort(([a], [b]) => (a < b ? -1 : 1)))
}
