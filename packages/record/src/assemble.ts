/** The folded unit from the fields that the record left: what holds goes into its shape, what contradicts itself is listed. */
import type { Face, Hole, Kind, Rank, Trial } from '@gripbook/engine'
import { clashOf, type Entry, held, knew } from './clash.ts'
import { combined, type Owner } from './combine.ts'
import type { BodyOf } from './events/catalogue.ts'
import type { Event } from './events/event.ts'
import type { Json } from './events/json.ts'
import { faceFields, holeFields, kindFields, unitFields } from './events/parts.ts'
import { keyOf, kindPlace, type Place, STEP, THINGS } from './events/places.ts'
import type { Understood } from './fold.ts'
import { entriesOf, type Ledger, type PlaceFields } from './ledger.ts'
import { jobsIn, partsIn } from './plannedWork.ts'
import { clocksApart, headsOf, missingIn, sinceRelease } from './spread.ts'
import type { Clash, FaceWork, FoldedUnit, HoleWork, NotUnderstood, Standing, UnitWork } from './unit.ts'

export type Folding = {
  entries: Event[]
  standing: Understood[]
  notUnderstood: NotUnderstood[]
  undoneBy: ReadonlyMap<string, string>
  ledger: Ledger
}

const FILE_FIELDS: Record<Owner, ReadonlySet<string>> = {
  unit: new Set(Object.keys(unitFields)),
  face: new Set(Object.keys(faceFields)),
  hole: new Set(Object.keys(holeFields)),
  kind: new Set(Object.keys(kindFields)),
}

/** What holds at one place: fields of the unit file, the stages of tightening, and the rest. */
type Holding = {
  place: Place
  file: Record<string, Json>
  /** The entries that counted a kind. */
  counted: readonly Entry[]
  steps: Record<string, Standing>
  rest: Record<string, Standing>
}

export function assemble(id: string, { entries, standing, notUnderstood, undoneBy, ledger }: Folding): FoldedUnit {
  const clashes: Clash[] = []
  const withoutThread: Place[] = []
  const holdings: Holding[] = []
  let root: Holding = { place: [], file: {}, counted: [], steps: {}, rest: {} }
  for (const here of ledger.values()) {
    if (!isThere(ledger, here.place)) continue
    if (here.there.length > 1) {
      const there = held(here.there)
      if (there.is === 'clash') clashes.push(clashOf(here.place, 'there', there.entries))
    }
    const holding = holdingOf(here, clashes)
    if (here.place.length === 0) root = holding
    else holdings.push(holding)
  }
  const lying = under(holdings)
  const stated = statements(standing)
  const withThread = <T>(what: 'hole' | 'kind', place: Place): T[] =>
    lying(place, what).flatMap((holding): T[] => {
      if (holding.file.thread === undefined) withoutThread.push(holding.place)
      return holding.file.thread === undefined ? [] : [{ id: holding.place.at(-1)!, ...holding.file } as T]
    })
  const changes = changesOfCount(standing)
  const counts = new Map(holdings.map(({ place, counted }) => [keyOf(place), counted]))
  const countNow = (count: number, kind: Place): number => {
    const counted = counts.get(keyOf(kind)) ?? []
    const since = (changes.get(keyOf(kind)) ?? []).filter(
      ({ event }) => !counted.some((count) => knew(count.event, event)),
    )
    return Math.max(
      0,
      since.reduce((sum, { by }) => sum + by, count),
    )
  }
  const tray = ({ place, rest }: Holding): { kinds?: Kind[] } => {
    const kinds = withThread<Kind>('kind', place)
    for (const kind of kinds)
      if (kind.count !== undefined) kind.count = countNow(kind.count, [...place, 'kind', kind.id])
    return kinds.length > 0 || rest.tray !== undefined ? { kinds } : {}
  }
  const faces = lying([], 'face')
  const work = root.rest as UnitWork
  const things = Object.fromEntries(
    THINGS.map((what) => [what, Object.fromEntries(lying([], what).map(({ place, rest }) => [place.at(-1)!, rest]))]),
  ) as FoldedUnit['things']
  const parts = partsIn(things.part)
  const jobs = jobsIn(things.job)
  return {
    id,
    unit: {
      gripbook: 'unit/1',
      ...root.file,
      faces: faces.map((face): Face => {
        const name = face.place.at(-1)!
        const { ranks, trials } = stated.get(name) ?? { ranks: [], trials: [] }
        return {
          id: name,
          ...face.file,
          holes: withThread<Hole>('hole', face.place),
          ...tray(face),
          ...(ranks.length > 0 ? { ranks } : {}),
          ...(trials.length > 0 ? { trials } : {}),
        }
      }),
      ...tray(root),
      ...(parts.length > 0 ? { parts } : {}),
      ...(jobs.length > 0 ? { jobs } : {}),
    },
    work: without(work, 'tray'),
    faces: Object.fromEntries(faces.map((face) => [face.place.at(-1)!, faceWork(face, lying(face.place, 'hole'))])),
    things,
    withoutThread,
    clashes,
    entries,
    undone: entries.flatMap(({ id: event }) => {
      const by = undoneBy.get(event)
      return by === undefined ? [] : [{ event, by }]
    }),
    notUnderstood,
    heads: headsOf(entries),
    missing: missingIn(entries),
    clocks: clocksApart(entries),
    sinceRelease: sinceRelease(standing, work.released),
  }
}

/** A place is there when it, and all that it lies in, was spoken of and not taken away; while that is disputed it is there. */
function isThere(ledger: Ledger, place: Place): boolean {
  for (let depth = 2; depth <= place.length; depth += 2) {
    const there = held(ledger.get(keyOf(place.slice(0, depth)))?.there ?? [])
    if (there.is === 'nothing' || (there.is === 'one' && there.standing.value === false)) return false
  }
  return true
}

function holdingOf(here: PlaceFields, clashes: Clash[]): Holding {
  const { place } = here
  const owner = (place.at(-2) ?? 'unit') as Owner
  const holding: Holding = { place, file: {}, counted: entriesOf(here, 'count'), steps: {}, rest: {} }
  for (const field of here.fields.keys()) {
    const holds = held(entriesOf(here, field))
    const inFile = FILE_FIELDS[owner]?.has(field) ?? false
    if (holds.is === 'clash') {
      clashes.push(clashOf(place, field, holds.entries))
      const value = inFile
        ? combined(
            owner,
            field,
            holds.entries.map((entry) => entry.value),
          )
        : undefined
      if (value !== undefined) holding.file[field] = value
    } else if (holds.is === 'one') {
      if (inFile) holding.file[field] = holds.standing.value
      else if (field.startsWith(STEP)) holding.steps[field.slice(STEP.length)] = holds.standing
      else holding.rest[field] = holds.standing
    }
  }
  return holding
}

function faceWork(face: Holding, holes: readonly Holding[]): FaceWork {
  return {
    ...without(face.rest, 'tray'),
    holes: Object.fromEntries(
      holes.map(({ place, rest, steps }): [string, HoleWork] => [place.at(-1)!, { ...rest, steps } as HoleWork]),
    ),
  } as FaceWork
}

/** What lies directly in a place, by what it is, in the order in which it was first spoken of. */
function under(holdings: readonly Holding[]): (place: Place, what: string) => readonly Holding[] {
  const lying = new Map<string, Holding[]>()
  for (const holding of holdings) {
    const key = keyOf(holding.place.slice(0, -1))
    const list = lying.get(key)
    if (list === undefined) lying.set(key, [holding])
    else list.push(holding)
  }
  return (place, what) => lying.get(keyOf([...place, what])) ?? []
}

/**
 * Bolts added and written off, by kind. Changes add up, so two devices that each write off one bolt have written off two. Whoever counted the
 * tray after a change has it in his count; a change that the count did not know is added to it.
 */
function changesOfCount(standing: readonly Understood[]): Map<string, { event: Event; by: number }[]> {
  const byKind = new Map<string, { event: Event; by: number }[]>()
  for (const { event, definition, body } of standing) {
    if (definition.type !== 'bolts-added' && definition.type !== 'bolts-written-off') continue
    const { face, kind, count } = body as BodyOf<'bolts-added'>
    const key = keyOf(kindPlace(face, kind))
    byKind.set(key, [...(byKind.get(key) ?? []), { event, by: definition.type === 'bolts-added' ? count : -count }])
  }
  return byKind
}

/** Rank lines and trials of each face, in the order of the record. */
function statements(standing: readonly Understood[]): Map<string, { ranks: Rank[]; trials: Trial[] }> {
  const byFace = new Map<string, { ranks: Rank[]; trials: Trial[] }>()
  for (const { definition, body } of standing) {
    if (definition.type !== 'rank-stated' && definition.type !== 'bolt-tried') continue
    const { face, ...said } = body as BodyOf<'rank-stated'> | BodyOf<'bolt-tried'>
    const lines = byFace.get(face) ?? { ranks: [], trials: [] }
    byFace.set(face, lines)
    if ('trial' in said) lines.trials.push(said.trial)
    else lines.ranks.push(said)
  }
  return byFace
}

function without<T extends object>(value: T, name: string): T {
  return Object.fromEntries(Object.entries(value).filter(([field]) => field !== name)) as T
}
