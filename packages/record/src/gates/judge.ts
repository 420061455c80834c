/** Judges one entry by what is known where it is made. */
import type { BodyOf } from '../events/catalogue.ts'
import type { FoldedUnit } from '../unit.ts'
import { type BenchFace, benchFace } from './benchFace.ts'
import { openToClose, openUnder } from './closing.ts'
import { openOfFace, openOfUnit } from './open.ts'
import { own } from './own.ts'
import { type Done, standingOf } from './standing.ts'
import type { Facts, Open, Passed, Stop, StopName } from './stop.ts'
import { isTightening, tighteningStops } from './tightening.ts'
import { torqueStops } from './torque.ts'

/** What is known where an entry is judged; the parts that cost something are asked for only by the entries that need them. */
export type Known = {
  bench(face: string): BenchFace | undefined
  calibratedUntil(instrument: string): string | undefined
  folded(): FoldedUnit
  standing(): readonly Done[]
  silent(): readonly Passed[]
  heads(): Record<string, number>
}

export function knownFrom(unit: FoldedUnit, silent: () => readonly Passed[]): Known {
  return {
    bench: (face) => benchFace(unit, face),
    calibratedUntil: (instrument) =>
      own(unit.things.instrument, instrument)?.calibratedUntil?.value as string | undefined,
    folded: () => unit,
    standing: () => standingOf(unit),
    silent,
    heads: () => unit.heads,
  }
}

const JUDGED: ReadonlySet<string> = new Set([
  'bolt-placed',
  'face-closed',
  'job-done',
  'face-released',
  'unit-released',
])

/** Whether there is any stop in the way of such an entry. */
export function isJudged(happening: { type: string; body: unknown }): boolean {
  return JUDGED.has(happening.type) || isTightening(happening)
}

/** Judges a happening by what is known. The body has passed its schema. */
export function judged(known: Known, happening: { type: string; body: unknown }, facts: Facts): Stop[] {
  if (isTightening(happening)) {
    const bench = known.bench(happening.body.face) ?? { snug: false, holes: [] }
    const stops = tighteningStops(bench, happening)
    if (happening.type !== 'pass-torqued') return stops
    const number = happening.body.tool?.number
    return [
      ...stops,
      ...torqueStops(happening.body, bench, number === undefined ? undefined : known.calibratedUntil(number), facts),
    ]
  }
  switch (happening.type) {
    case 'bolt-placed':
      return placingStops(happening.body as BodyOf<'bolt-placed'>, facts)
    case 'face-closed': {
      const { face } = happening.body as BodyOf<'face-closed'>
      return stopsOf('closing step', openToClose(known.folded(), known.standing(), face), { face })
    }
    case 'job-done':
      return stopsOf(
        'closing step',
        openUnder(known.folded(), known.standing(), (happening.body as BodyOf<'job-done'>).job),
        {},
      )
    case 'face-released': {
      const { face, onlyPerson = false } = happening.body as BodyOf<'face-released'>
      return stopsOf('release', openOfFace(before(known, onlyPerson), face), { face })
    }
    case 'unit-released': {
      const { heads, onlyPerson = false } = happening.body as BodyOf<'unit-released'>
      const stops = stopsOf('release', openOfUnit(before(known, onlyPerson)), {})
      return sameHeads(heads, known.heads())
        ? stops
        : [...stops, { gate: 'release', why: { code: 'heads', heads: known.heads() } }]
    }
    default:
      return []
  }
}

function before(known: Known, onlyPerson: boolean) {
  return { folded: known.folded(), standing: known.standing(), silent: known.silent(), onlyPerson }
}

function placingStops({ face, hole, kind }: BodyOf<'bolt-placed'>, { belongs }: Facts): Stop[] {
  const may = own(own(belongs ?? {}, face) ?? {}, hole)
  return may === undefined || may.includes(kind)
    ? []
    : [{ gate: 'bolt does not belong', face, hole, why: { code: 'does-not-belong', kind, may } }]
}

/** The stop stands where the entry is made, whatever place is open. */
function stopsOf(gate: StopName, open: readonly Open[], at: { face?: string }): Stop[] {
  return open.map(({ why }) => ({ gate, ...at, why }))
}

function sameHeads(a: Record<string, number>, b: Record<string, number>): boolean {
  const devices = new Set([...Object.keys(a), ...Object.keys(b)])
  return [...devices].every((device) => a[device] === b[device])
}
