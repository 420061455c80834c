/** Devices on one unit, for tests of the gates: each makes entries with what it has, and is told of the others’ when the test says so. */
import { type Knowledge, knowledgeOf, learn, nextEntry } from '../../entry.ts'
import type { Happening } from '../../events/define.ts'
import type { Event } from '../../events/event.ts'
import { fold } from '../../fold.ts'
import { DEVICES, UNIT, uuid } from '../../testing/bench.ts'
import type { FoldedUnit } from '../../unit.ts'

const START = Date.parse('2026-03-01T09:00:00.000Z')

export type Workbench = {
  /** In the order in which they were made. */
  made: Event[]
  /** What a device knows of itself and the others. */
  knowledge(device: number): Knowledge
  /** Makes an entry on a device; the device’s person is `ann`, `ben` or `cem` unless another is named. */
  does(device: number, happening: Happening, more?: { who?: string; at?: string }): Event
  /** Hands a device everything, or one entry, that it has not got. */
  tell(device: number, event?: Event): void
  /** The unit of all entries. */
  folded(): FoldedUnit
}

export function workbench(): Workbench {
  const made: Event[] = []
  const known = DEVICES.map((device) => knowledgeOf(UNIT, device, []))
  // no test of a gate looks at the chain, and thousands of streams would spend their time on it
  const hash = () => made.length.toString(16).padStart(64, '0')
  return {
    made,
    knowledge: (device) => known[device]!,
    does(device, happening, { who = ['ann', 'ben', 'cem'][device]!, at } = {}) {
      const clock = at ?? new Date(START + made.length * 60_000).toISOString()
      const event = nextEntry(known[device]!, { id: uuid(0x1000 + made.length), at: clock, who, ...happening }, hash)
      made.push(event)
      known[device] = learn(known[device]!, event)
      return event
    },
    tell(device, event) {
      for (const one of event === undefined ? made : [event]) known[device] = learn(known[device]!, one)
    },
    folded: () => fold(UNIT, made),
  }
}

/** What a release by this device names. */
export function headsOf({ device, seq, seen }: Knowledge): Record<string, number> {
  return seq > 0 ? { ...seen, [device]: seq } : { ...seen }
}
