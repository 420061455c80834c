import { type ChainFault, chainFaultText, type Event } from '@gripbook/record'

/** What is wrong with a record, a backup or an archive: in words, and what it is about where that is one thing. */
export type Fault = {
  words: string
  unit?: string
  device?: string
  /** Of the entry, among those of its device about its unit. */
  number?: number
  /** Its id. */
  entry?: string
  photograph?: string
}

export function chainFaultOf(unit: string, fault: ChainFault): Fault {
  const { event, device, seq } = fault
  const about = { unit, device, number: seq, ...(event === '' ? {} : { entry: event }) }
  return { words: `Unit ${unit}: ${chainFaultText(fault)}`, ...about }
}

export function entryFault(
  words: string,
  { unit, device, seq, id }: Pick<Event, 'unit' | 'device' | 'seq' | 'id'>,
): Fault {
  return { words, unit, device, number: seq, entry: id }
}

/** An error that is a list of faults. */
export class Faults extends Error {
  readonly faults: readonly Fault[]
  constructor(name: string, head: string, faults: readonly Fault[]) {
    super([...(head === '' ? [] : [head]), ...faults.map(({ words }) => words)].join('\n'))
    this.name = name
    this.faults = faults
  }
}
