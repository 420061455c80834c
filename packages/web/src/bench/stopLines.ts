/** The stops against a step, in sentences, and the holes on this face that they wait for. */
import type { FoldedUnit, Open, OpenWhy, Stop, Why } from '@gripbook/record'
import { groupsOf } from '../finish/lines.ts'
import { sayOpen } from '../finish/sayOpen.ts'
import { partNameIn } from '../unit/partName.ts'
import { place } from '../units/here.ts'
import { sayCalendarDay } from '../units/when.ts'
import { words } from '../words/bench.ts'
import { benchSteps } from './round.ts'
import { newtonMetres } from './torque.ts'

type Around = {
  folded: FoldedUnit
  face: string
  named: (kind: string) => string
  /** A torque in N·m, in the unit of the page. */
  told: (torque: number) => string
}

/** Each once: what stands against the entry, then what is open on this face, then what is open behind it. */
export function stopLines(stops: readonly Stop[], around: Around): string[] {
  const { folded, face } = around
  const lines: string[] = []
  const holes: Record<'hole-not-final' | 'hole-not-placed', string[]> = { 'hole-not-final': [], 'hole-not-placed': [] }
  const parts: string[] = []
  const further: Open[] = []
  for (const { why } of stops) {
    const said = sayAtHand(why, around)
    if (typeof said === 'string') lines.push(said)
    else if ((said.code === 'hole-not-final' || said.code === 'hole-not-placed') && said.face === face)
      holes[said.code].push(said.hole)
    else if (said.code === 'part-out') parts.push(partNameIn(folded, said.part))
    else further.push(openAt(said))
  }
  if (holes['hole-not-final'].length > 0) lines.push(words.stops.unfinished(holes['hole-not-final']))
  if (holes['hole-not-placed'].length > 0) lines.push(words.stops.unplaced(holes['hole-not-placed']))
  if (parts.length > 0) lines.push(words.stops.part(parts))
  for (const { lines: open } of groupsOf(further)) lines.push(...open.map((line) => `${sayOpen(line, folded)}.`))
  return [...new Set(lines)]
}

/** The holes of this face that the stops wait for, in their order. */
export function holesOf(stops: readonly Stop[], face: string): string[] {
  return stops.flatMap(({ why }) => {
    if ('holes' in why) return why.holes
    return 'hole' in why && why.hole !== undefined && why.face === face ? [why.hole] : []
  })
}

/** What stands against the work in the hand; what is open beside it is given back. */
function sayAtHand(why: Why, around: Around): string | OpenWhy {
  const { named, told } = around
  const say = words.stops
  switch (why.code) {
    case 'locating-first':
      return say.locating(why.holes)
    case 'not-hand-started':
      return say.started(why.holes)
    case 'not-run-down':
      return say.down(why.holes)
    case 'not-snug':
      return say.snug(why.holes)
    case 'pass-not-complete':
      return say.pass(roundNamed(why.pass, why.holes, around), why.holes)
    case 'visit-not-complete':
      return say.visit(why.visit, why.holes)
    case 'resistance':
      return say.resistance(why.holes)
    case 'does-not-belong':
      return say.belongs(named(why.kind), why.may.map(named))
    case 'out-of-band': {
      const reached = newtonMetres(why.torque) ?? 0
      const off = reached < why.band.atLeast ? words.below : words.above
      return off(told(reached), told(why.band.atLeast), told(why.band.atMost))
    }
    case 'out-of-range':
      return say.range
    case 'out-of-calibration':
      return say.calibration(sayCalendarDay(why.until, place.language))
    case 'heads':
      return say.other
    default:
      return why
  }
}

/** A pass as the bench counts it: the record counts through all visits. */
function roundNamed(pass: number, holes: readonly string[], { folded, face }: Around): string {
  const step = benchSteps(folded, face).find(
    (one) => one.round.what === 'pass' && one.pass === pass && one.hole !== null && holes.includes(one.hole),
  )
  return step === undefined ? words.stops.passNumber(pass) : words.roundOf(step.round)
}

function openAt(why: OpenWhy): Open {
  return {
    why,
    ...('face' in why && why.face !== undefined ? { face: why.face } : {}),
    ...('hole' in why && why.hole !== undefined ? { hole: why.hole } : {}),
  }
}
