/** Whether the entries of a backup are those that its manifest says, in whole chains, and fold to what they folded to when it was made. */
import { chainFaults, type Event, fold, movedFaults, photographsOf, recordHash, stateHash } from '@gripbook/record'
import { sha256 } from '../sha256.ts'
import { chainFaultOf, type Fault } from './fault.ts'
import type { BackupManifest } from './manifest.ts'

/** So many entries are in memory at a time, unless one unit alone has more: the file is read once for each group of units that fits. */
const GROUP = 50_000
const MOST_TOLD = 200

/** `entries`: those of these units that can be read, from the beginning of the file each time. At most a few hundred faults are told. */
export async function unitFaults(
  manifest: BackupManifest,
  entries: (units: ReadonlySet<string>) => AsyncIterable<Event>,
  compareStates: boolean,
): Promise<Fault[]> {
  const faults: Fault[] = []
  const spokenOf = new Set<string>()
  for (const group of groupsOf(manifest)) {
    const found = new Map<string, Event[]>(group.map((unit) => [unit, []]))
    for await (const event of entries(new Set(group))) {
      const ofUnit = found.get(event.unit)
      // What is one more than was packed is kept, so that its doubling is named, but no more of it.
      if (ofUnit !== undefined && ofUnit.length <= manifest.units[event.unit]!.entries) ofUnit.push(event)
    }
    for (const [unit, events] of found) {
      faults.push(...faultsOf(unit, events, manifest.units[unit]!, compareStates))
      for (const photograph of photographsOf(events)) spokenOf.add(photograph)
      if (faults.length >= MOST_TOLD) return faults.slice(0, MOST_TOLD)
    }
  }
  return [...faults, ...photographFaults(manifest, spokenOf)]
}

function* groupsOf({ units }: BackupManifest): Generator<string[]> {
  let group: string[] = []
  let size = 0
  for (const [unit, { entries }] of Object.entries(units)) {
    if (group.length > 0 && size + entries > GROUP) {
      yield group
      group = []
      size = 0
    }
    group.push(unit)
    size += entries
  }
  if (group.length > 0) yield group
}

function faultsOf(
  unit: string,
  events: readonly Event[],
  said: BackupManifest['units'][string],
  compareStates: boolean,
): Fault[] {
  const found = [...chainFaults(events, sha256, said.heads), ...movedFaults(events)]
  const faults = found.map((fault) => chainFaultOf(unit, fault))
  return faults.length > 0 ? faults : differences(unit, events, said, compareStates)
}

/** Whether these entries are those that the manifest says, and fold to what they folded to. */
export function differences(
  unit: string,
  events: readonly Event[],
  { entries, record, state }: BackupManifest['units'][string],
  compareStates: boolean,
): Fault[] {
  if (events.length !== entries || recordHash(events, sha256) !== record)
    return [{ words: `Unit ${unit}: the entries are not those that were backed up.`, unit }]
  return compareStates && stateHash(fold(unit, events), sha256) !== state
    ? [{ words: `Unit ${unit} does not fold to what it was.`, unit }]
    : []
}

function photographFaults({ photographs, absent }: BackupManifest, spokenOf: ReadonlySet<string>): Fault[] {
  const told = new Set([...photographs.map(({ photograph }) => photograph), ...absent])
  return [...spokenOf]
    .filter((photograph) => !told.has(photograph))
    .map((photograph) => ({
      words: `The photograph ${photograph}, of which entries speak, is neither here nor told as absent.`,
      photograph,
    }))
}
