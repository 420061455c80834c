/** A face as the gates look at it: which bolts belong together, how far each is, and by which passes it is tightened. */
import type { Face, Hole, Quantity } from '@gripbook/engine'
import type { FoldedUnit, HoleWork, Steps } from '../unit.ts'
import { own } from './own.ts'

/** A bolt that is further has been through what lies before. */
export type Reached = {
  started: boolean
  down: boolean
  snug: boolean
  /** Highest pass; Infinity after the final one, 0 before the first. */
  pass: number
}

export type BenchHole = {
  id: string
  visit: number
  locates: boolean
  torque?: Quantity
  /** What was felt and is not cleared; null while two devices say different things of it. */
  resistance?: string | null
  reached: Reached
}

export type BenchFace = {
  snug: boolean
  /** Chosen at the bench, else the manual’s; without one a face is tightened in plain passes, counted in each visit. */
  order?: NonNullable<Face['order']>
  holes: BenchHole[]
}

export function benchFace(folded: FoldedUnit, face: string): BenchFace | undefined {
  const work = own(folded.faces, face)
  if (work === undefined) return undefined
  const file = folded.unit.faces.find(({ id }) => id === face)
  const order = work.orderChosen?.value.passes ?? file?.order
  const disputed = new Set(
    folded.clashes.flatMap(({ place, field }) =>
      field === 'resistance' && place[1] === face && place[3] !== undefined ? [place[3]] : [],
    ),
  )
  const holes = new Map(file?.holes.map((hole) => [hole.id, hole]))
  return {
    snug: file?.snug === true,
    ...(order === undefined ? {} : { order }),
    holes: Object.entries(work.holes).map(([id, hole]) =>
      benchHole(id, hole, holes.get(id), file?.torque, disputed.has(id)),
    ),
  }
}

/** What the manual or the bench states of a hole that a gate asks for. */
type Stated = { [F in 'visit' | 'locates' | 'torque']?: Hole[F] | undefined }

export function benchHole(
  id: string,
  work: HoleWork,
  file: Stated | undefined,
  ofFace: Quantity | undefined,
  disputed: boolean,
): BenchHole {
  const torque = file?.torque ?? ofFace
  const resistance = disputed ? null : work.resistance?.value
  return {
    id,
    visit: file?.visit ?? 1,
    locates: file?.locates === true,
    ...(torque === undefined ? {} : { torque }),
    ...(resistance === undefined ? {} : { resistance }),
    reached: reachedBy(work.steps),
  }
}

/** Numbers of the passes that a bolt has had, the lowest first. */
export function passesIn(steps: Steps): number[] {
  return Object.keys(steps)
    .flatMap((step) => (step.startsWith('pass ') ? [Number(step.slice(5))] : []))
    .sort((a, b) => a - b)
}

function reachedBy(steps: Steps): Reached {
  const pass = steps.final === undefined ? (passesIn(steps).at(-1) ?? 0) : Number.POSITIVE_INFINITY
  const snug = pass > 0 || steps.snug !== undefined
  const down = snug || steps['run-down'] !== undefined || steps.turns?.value.seated === true
  return { started: down || steps['hand-started'] !== undefined, down, snug, pass }
}

/** The final torque of the work: without one the bolt is not tightened, whatever came before. */
export function isFinal({ reached }: BenchHole): boolean {
  return reached.pass === Number.POSITIVE_INFINITY
}
