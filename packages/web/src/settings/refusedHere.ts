/** Entries on this device that the shop did not take, gathered by the reason. */
import { type Device, type EntryHere, refusalWords } from '@gripbook/device'

export type RefusedHere = { why: string; entries: number }

/** The most frequent reason first. */
export function byReason(entries: readonly EntryHere[]): RefusedHere[] {
  const counts = new Map<string, number>()
  for (const { state, refusal } of entries) {
    if (state !== 'refused' || refusal === undefined) continue
    const why = refusalWords(refusal)
    counts.set(why, (counts.get(why) ?? 0) + 1)
  }
  return [...counts].map(([why, entries]) => ({ why, entries })).sort((a, b) => b.entries - a.entries)
}

export async function everyEntry(device: Pick<Device, 'units' | 'entriesOf'>): Promise<EntryHere[]> {
  const units = await device.units()
  return (await Promise.all(units.map((unit) => device.entriesOf(unit)))).flat()
}
