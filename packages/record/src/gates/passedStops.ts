/**
 * Which entries of a record passed over a stop, and which of them a person answered for.
 *
 * Every entry is judged by what its own device knew when it was made, out of the entries that stand today: by what the page could have shown. So of
 * two people who work on one unit offline nobody passes a stop that only the other could see. An entry that was undone passes nothing, overrides
 * nothing, and is no step that anything else could rest on.
 *
 * An override covers the next entry that passes over the stop that it names (gate, face and hole) and whose device knew it; then it is used up.
 */
import { knew } from '../clash.ts'
import type { BodyOf } from '../events/catalogue.ts'
import type { Event } from '../events/event.ts'
import { missingIn } from '../spread.ts'
import type { FoldedUnit } from '../unit.ts'
import { type DeviceView, deviceView } from './deviceView.ts'
import { isJudged, judged, type Known } from './judge.ts'
import { type Done, standingOf } from './standing.ts'
import type { Facts, Passed, Stop } from './stop.ts'

/** In the order of the record. Calibration is judged by the day of the entry, placement by `belongs` where it is given. */
export function passedStops(unit: FoldedUnit, { belongs }: Pick<Facts, 'belongs'> = {}): readonly Passed[] {
  const known = walked.get(unit)
  if (known !== undefined && known.belongs === belongs) return known.passed
  const passed = walk(unit, belongs)
  walked.set(unit, { belongs, passed })
  return passed
}

/** A folded unit is never changed, and a page asks several times about the same one. */
const walked = new WeakMap<FoldedUnit, { belongs: Facts['belongs']; passed: readonly Passed[] }>()

function walk(unit: FoldedUnit, belongs: Facts['belongs']): Passed[] {
  const standing = standingOf(unit)
  const byDevice = chainsOf(standing)
  const views = new Map<string, DeviceView>()
  const viewOf = (device: string): DeviceView => {
    const view = views.get(device) ?? deviceView(unit.id, byDevice)
    views.set(device, view)
    return view
  }
  const unused = new Map<string, Event[]>()
  const passed: Passed[] = []
  const silent: Silent[] = []
  for (const { event, body } of standing) {
    if (event.type === 'gate-overridden') {
      const key = keyOfStop(body as BodyOf<'gate-overridden'>)
      unused.set(key, [...(unused.get(key) ?? []), event])
    }
    if (!isJudged({ type: event.type, body })) continue
    const view = viewOf(event.device)
    view.learn(event)
    const known = knownTo(event, unit, view, standing, silent)
    const stops = judged(
      known,
      { type: event.type, body },
      { today: event.at.slice(0, 10), ...(belongs === undefined ? {} : { belongs }) },
    )
    const covered = new Map<string, Passed['override']>()
    for (const stop of stops) {
      const key = keyOfStop(stop)
      const isFirst = !covered.has(key)
      if (isFirst) covered.set(key, useUp(unused, key, event))
      const override = covered.get(key)
      const one = { event: event.id, stop, ...(override === undefined ? {} : { override }) }
      passed.push(one)
      if (isFirst && override === undefined) silent.push({ event, one })
    }
  }
  return passed
}

/** The first of the stops that an entry passed at one gate without an override. */
type Silent = { event: Event; one: Passed }

/** What the maker of an entry had before him. */
function knownTo(
  event: Event,
  unit: FoldedUnit,
  view: DeviceView,
  standing: readonly Done[],
  silent: readonly Silent[],
): Known {
  return {
    bench: view.bench,
    calibratedUntil: view.calibratedUntil,
    folded: () => {
      const entries = unit.entries.filter((other) => knew(event, other))
      const notUnderstood = unit.notUnderstood.filter((entry) => entries.some(({ id }) => id === entry.event))
      return { ...view.folded(), notUnderstood, missing: missingIn(entries) }
    },
    standing: () => standing.filter((other) => knew(event, other.event)),
    silent: () => silent.flatMap((other) => (knew(event, other.event) ? [other.one] : [])),
    heads: () => (event.seq > 1 ? { ...event.seen, [event.device]: event.seq - 1 } : event.seen),
  }
}

function chainsOf(standing: readonly Done[]): Map<string, Done[]> {
  const chains = new Map<string, Done[]>()
  for (const done of standing) {
    const chain = chains.get(done.event.device)
    if (chain === undefined) chains.set(done.event.device, [done])
    else chain.push(done)
  }
  // only forged ticks make the order of the record another than that of the device
  for (const chain of chains.values()) chain.sort((a, b) => a.event.seq - b.event.seq)
  return chains
}

/** Takes the overrides of a stop that the entry knew; the last of them answers for it. */
function useUp(unused: Map<string, Event[]>, key: string, event: Event): Passed['override'] {
  const there = unused.get(key) ?? []
  const mine = there.filter((override) => knew(event, override))
  if (mine.length === 0) return undefined
  unused.set(
    key,
    there.filter((override) => !knew(event, override)),
  )
  const { id, who, body } = mine.at(-1)!
  return { event: id, who, reason: (body as BodyOf<'gate-overridden'>).reason }
}

/** Ids hold no control characters, so the keys of two stops never meet. */
function keyOfStop({ gate, face = '', hole = '' }: Pick<Stop, 'gate' | 'face' | 'hole'>): string {
  return [gate, face, hole].join('\u0000')
}
