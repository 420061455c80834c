/** The steps at the bench: the hands' way over a face, in rounds, with its closing at the end. */
import type { FaceStep, FoldedUnit } from '@gripbook/record'
import { faceSteps } from '@gripbook/record'

export type Round = {
  what: 'start' | 'run down' | 'snug' | 'pass' | 'mark' | 'close'
  visit: number
  /** Of a pass: which of how many of the visit, and its share of the torque. */
  number: number
  of: number
  share: number
  /** Of a pass: its bolts are in no pass of the order that is followed; such passes are counted by themselves. */
  apart: boolean
}

export type BenchStep = {
  /** The same for the same step on every device. */
  key: string
  round: Round
  /** Null: the face as a whole. */
  hole: string | null
  locates: boolean
  /** Of a pass: as the entry counts it, whether it is the bolt's last, what is wanted. */
  pass: number
  final: boolean
  wanted?: NonNullable<FaceStep['wanted']>
  /** Of a start: the kind was put there already. */
  placed: boolean
  /** … and the bolt was started, whatever else the step still lacks. */
  started: boolean
  done: { who: string; at: string } | null
}

const WHATS: Record<FaceStep['stage'], Round['what']> = {
  place: 'start',
  'hand-start': 'start',
  'run-down': 'run down',
  snug: 'snug',
  pass: 'pass',
  'witness mark': 'mark',
}

/** Placing and hand-starting are one step of the hands; the last step closes the face. Empty for a face without holes. */
export function benchSteps(folded: FoldedUnit, face: string): BenchStep[] {
  const steps = faceSteps(folded, face)
  if (steps.length === 0) return []
  const placed = new Map(steps.flatMap((step) => (step.stage === 'place' ? [[step.hole, step.done]] : [])))
  const order =
    folded.faces[face]?.orderChosen?.value.passes ?? folded.unit.faces.find(({ id }) => id === face)?.order ?? []
  // Passes that follow an order are numbered behind its own.
  const isApart = (pass: number) => order.length > 0 && pass > order.length
  const group = (visit: number, pass: number) => `${visit} ${isApart(pass)}`
  const passes = new Map<string, number[]>()
  for (const { visit, pass } of steps) {
    if (pass === undefined) continue
    const known = passes.get(group(visit, pass)) ?? []
    if (!known.includes(pass)) passes.set(group(visit, pass), [...known, pass])
  }
  const way = steps.flatMap((step): BenchStep[] => {
    if (step.stage === 'place') return []
    const { visit, hole, locates, pass = 0, share = 1, final = false, wanted, done } = step
    const what = WHATS[step.stage]
    const apart = what === 'pass' && isApart(pass)
    const counted = passes.get(group(visit, pass)) ?? []
    const isPlaced = placed.get(hole) !== undefined
    const isDone = done !== undefined && (what !== 'start' || isPlaced)
    return [
      {
        key: [visit, what, pass, hole].join(' '),
        round: { what, visit, number: counted.indexOf(pass) + 1, of: counted.length, share, apart },
        hole,
        locates,
        pass,
        final,
        ...(wanted === undefined ? {} : { wanted }),
        placed: isPlaced,
        started: done !== undefined,
        done: isDone ? { who: done.who, at: done.at } : null,
      },
    ]
  })
  const closed = folded.faces[face]?.closed
  const visit = way.at(-1)!.round.visit
  return [
    ...way,
    {
      key: 'close',
      round: { what: 'close', visit, number: 0, of: 0, share: 1, apart: false },
      hole: null,
      locates: false,
      pass: 0,
      final: false,
      placed: false,
      started: false,
      done: closed?.value === true ? { who: closed.who, at: closed.at } : null,
    },
  ]
}

/** What is to be done next; null when all is. */
export function nextOf(steps: readonly BenchStep[]): BenchStep | null {
  return steps.find(({ done }) => done === null) ?? null
}

/** The steps of the same round, in order. */
export function roundMates(steps: readonly BenchStep[], { round, pass }: BenchStep): BenchStep[] {
  return steps.filter((one) => one.round.what === round.what && one.round.visit === round.visit && one.pass === pass)
}

/** How many visits the face has: more than one is told. */
export function visitsIn(steps: readonly BenchStep[]): number {
  return new Set(steps.map(({ round }) => round.visit)).size
}
