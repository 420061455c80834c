/** What one device knew of the unit, carried on from each of its entries to the next. */
import type { Quantity } from '@gripbook/engine'
import { assemble } from '../assemble.ts'
import { held } from '../clash.ts'
import { combined } from '../combine.ts'
import type { Event } from '../events/event.ts'
import type { Json } from '../events/json.ts'
import { facePlace, holePlace, keyOf, type Place, STEP, thingPlace } from '../events/places.ts'
import { inOrder } from '../inOrder.ts'
import { entriesOf, type PlaceFields } from '../ledger.ts'
import type { FoldedUnit, HoleWork, Standing } from '../unit.ts'
import { type BenchFace, type BenchHole, benchHole } from './benchFace.ts'
import { registers } from './registers.ts'
import type { Done } from './standing.ts'

export type DeviceView = {
  /** Takes in what the maker of this entry knew when it was made. */
  learn(event: Event): void
  bench(face: string): BenchFace | undefined
  calibratedUntil(instrument: string): string | undefined
  /** Faces, things and clashes; without what the entries themselves tell. */
  folded(): FoldedUnit
}

export function deviceView(unit: string, byDevice: ReadonlyMap<string, readonly Done[]>): DeviceView {
  const next = new Map<string, number>()
  const faces = new Map<string, FaceCache>()
  const faceAt = (face: string): FaceCache => {
    let cache = faces.get(face)
    if (cache === undefined) {
      cache = { holes: new Map() }
      faces.set(face, cache)
    }
    return cache
  }
  const touched = ([what, face, , hole]: Place): void => {
    if (what !== 'face') return
    const cache = faceAt(face!)
    if (hole !== undefined) cache.holes.set(hole, undefined)
    else {
      cache.stated = undefined
      for (const id of cache.holes.keys()) cache.holes.set(id, undefined)
    }
  }
  const { ledger, enter } = registers(touched)
  const at = (place: Place): PlaceFields | undefined => ledger.get(keyOf(place))

  const stated = (face: string): Stated => {
    const here = at(facePlace(face))
    const chosen = fieldOf(here, 'orderChosen') as { passes: NonNullable<BenchFace['order']> } | undefined
    const order = chosen?.passes ?? (fieldOf(here, 'order') as BenchFace['order'])
    const torque = statedOf('face', here, 'torque') as Quantity | undefined
    return {
      snug: fieldOf(here, 'snug') === true,
      ...(order === undefined ? {} : { order }),
      ...(torque === undefined ? {} : { torque }),
    }
  }
  const holeOf = (face: string, hole: string, ofFace: Quantity | undefined): BenchHole | null => {
    const here = at(holePlace(face, hole))
    if (here === undefined || isGone(here)) return null
    const steps: Record<string, Standing> = {}
    for (const field of here.fields.keys()) {
      const holds = field.startsWith(STEP) ? held(entriesOf(here, field)) : undefined
      if (holds?.is === 'one') steps[field.slice(STEP.length)] = holds.standing
    }
    const resistance = held(entriesOf(here, 'resistance'))
    const work = { steps, ...(resistance.is === 'one' ? { resistance: resistance.standing } : {}) } as HoleWork
    const file = {
      visit: fieldOf(here, 'visit') as number | undefined,
      locates: fieldOf(here, 'locates') as boolean | undefined,
      torque: statedOf('hole', here, 'torque') as Quantity | undefined,
    }
    const hasThread = statedOf('hole', here, 'thread') !== undefined
    return benchHole(hole, work, hasThread ? file : undefined, ofFace, resistance.is === 'clash')
  }

  return {
    learn(event) {
      const fresh: Done[] = []
      for (const [device, list] of byDevice) {
        const upTo = device === event.device ? event.seq - 1 : (event.seen[device] ?? 0)
        let i = next.get(device) ?? 0
        for (; i < list.length && list[i]!.event.seq <= upTo; i++) fresh.push(list[i]!)
        next.set(device, i)
      }
      for (const done of fresh.sort((a, b) => inOrder(a.event, b.event))) {
        // settling something of which nothing is left says nothing, and must not bring it back
        if (done.event.type === 'clash-settled' && !done.writes.every((write) => ledger.has(keyOf(write.at)))) continue
        enter(done.event, done.writes)
      }
    },
    bench(face) {
      const here = at(facePlace(face))
      if (here === undefined || isGone(here)) return undefined
      const cache = faceAt(face)
      cache.stated ??= stated(face)
      const { torque, ...rest } = cache.stated
      const holes: BenchHole[] = []
      for (const [id, known] of cache.holes) {
        const hole = known === undefined ? holeOf(face, id, torque) : known
        if (known === undefined) cache.holes.set(id, hole)
        if (hole !== null) holes.push(hole)
      }
      return { ...rest, holes }
    },
    calibratedUntil: (instrument) =>
      fieldOf(at(thingPlace('instrument', instrument)), 'calibratedUntil') as string | undefined,
    folded: () => assemble(unit, { entries: [], standing: [], notUnderstood: [], undoneBy: new Map(), ledger }),
  }
}

type Stated = Omit<BenchFace, 'holes'> & { torque?: Quantity }
/** Read anew after a write; a hole that is not there is null. */
type FaceCache = { stated?: Stated | undefined; holes: Map<string, BenchHole | null | undefined> }

/** What holds in a field; undefined while it is contradicted. */
function fieldOf(here: PlaceFields | undefined, field: string): Json | undefined {
  const holds = held(here === undefined ? [] : entriesOf(here, field))
  return holds.is === 'one' ? holds.standing.value : undefined
}

/** What the unit file shows of a field, contradicted or not. */
function statedOf(owner: 'face' | 'hole', here: PlaceFields | undefined, field: string): Json | undefined {
  const holds = held(here === undefined ? [] : entriesOf(here, field))
  if (holds.is === 'nothing') return undefined
  return holds.is === 'one'
    ? holds.standing.value
    : combined(
        owner,
        field,
        holds.entries.map(({ value }) => value),
      )
}

/** Taken away, or never spoken of; while that is disputed it is there. */
function isGone({ there }: PlaceFields): boolean {
  const holds = held(there)
  return holds.is === 'nothing' || (holds.is === 'one' && holds.standing.value === false)
}
