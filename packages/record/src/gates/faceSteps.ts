/** The way of the hands over a face, from the first bolt placed to the witness mark. */
import { facePasses, type Quantity, visitsOf } from '@gripbook/engine'
import type { FoldedUnit, Standing, Steps } from '../unit.ts'
import { type BenchHole, benchFace, passesIn } from './benchFace.ts'

export type Stage = 'place' | 'hand-start' | 'run-down' | 'snug' | 'pass' | 'witness mark'

export type FaceStep = {
  stage: Stage
  visit: number
  hole: string
  locates: boolean
  /** Of a pass: its number as `pass-torqued` takes it, its share, whether it is the bolt's last, and share × torque where one is stated. */
  pass?: number
  share?: number
  final?: boolean
  wanted?: Quantity
  /** The entry that did it; where only a later stage is on the record, that one. */
  done?: { event: string; who: string; at: string }
}

/** Visit after visit: place and hand-start all, those that locate first; run down; snug where the face is; the passes; the witness marks. */
export function faceSteps(unit: FoldedUnit, face: string): FaceStep[] {
  const bench = benchFace(unit, face)
  if (bench === undefined) return []
  const passes = facePasses(bench.holes, bench.order)
  const work = unit.faces[face]!.holes
  const byId = new Map(bench.holes.map((hole) => [hole.id, hole]))
  const last = new Map(passes.flatMap(({ pass, visit, holes }) => holes.map((id) => [id, `${visit} ${pass}`])))
  return visitsOf(bench.holes).flatMap((visit): FaceStep[] => {
    const own = bench.holes.filter((hole) => hole.visit === visit)
    const inVisit = passes.filter((pass) => pass.visit === visit)
    const order = new Map((inVisit[0]?.holes ?? []).map((id, i) => [id, i]))
    const turn = ({ id }: BenchHole) => order.get(id) ?? order.size
    const inOrder = own.toSorted((a, b) => turn(a) - turn(b))
    const locatingFirst = inOrder.toSorted((a, b) => Number(b.locates) - Number(a.locates))
    const step = (stage: Stage, hole: BenchHole, done: Standing<unknown> | undefined): FaceStep => ({
      stage,
      visit,
      hole: hole.id,
      locates: hole.locates,
      ...(done === undefined ? {} : { done: { event: done.event, who: done.who, at: done.at } }),
    })
    return [
      ...locatingFirst.flatMap((hole) => [
        step('place', hole, work[hole.id]!.placed),
        step('hand-start', hole, doneBy(work[hole.id]!.steps, 'hand-started')),
      ]),
      ...inOrder.map((hole) => step('run-down', hole, doneBy(work[hole.id]!.steps, 'run-down'))),
      ...(bench.snug ? inOrder.map((hole) => step('snug', hole, doneBy(work[hole.id]!.steps, 'snug'))) : []),
      ...inVisit.flatMap(({ pass, share, holes }) =>
        holes.map((id): FaceStep => {
          const hole = byId.get(id)!
          const wanted = hole.torque === undefined ? undefined : scaled(hole.torque, share)
          return {
            ...step('pass', hole, doneBy(work[id]!.steps, pass)),
            pass,
            share,
            final: last.get(id) === `${visit} ${pass}`,
            ...(wanted === undefined ? {} : { wanted }),
          }
        }),
      ),
      ...inOrder.map((hole) => step('witness mark', hole, work[hole.id]!.steps['witness mark'])),
    ]
  })
}

/** The entry of a stage or pass, else of the next one after it that is on the record. */
function doneBy(steps: Steps, stage: 'hand-started' | 'run-down' | 'snug' | number): Standing<unknown> | undefined {
  const seated = steps.turns?.value.seated === true ? steps.turns : undefined
  const rounds: [number, Standing<unknown> | undefined][] = [
    [-2, steps['hand-started']],
    [-1, steps['run-down'] ?? seated],
    [0, steps.snug],
    ...passesIn(steps).map((pass): [number, Standing<unknown> | undefined] => [pass, steps[`pass ${pass}`]]),
    [Number.POSITIVE_INFINITY, steps.final],
  ]
  const from = typeof stage === 'number' ? stage : { 'hand-started': -2, 'run-down': -1, snug: 0 }[stage]
  return rounds.find(([round, done]) => round >= from && done !== undefined)?.[1]
}

/** A share of a torque, in its own unit; digits beyond what a double holds are left out. */
function scaled(torque: Quantity, share: number): Quantity {
  if (share === 1) return torque
  const of = (value: number) => Number((value * share).toPrecision(12))
  if (typeof torque === 'number') return of(torque)
  const { also: _, ...figures } = { also: undefined, ...torque }
  return Object.fromEntries(
    Object.entries(figures).map(([name, value]) => [name, typeof value === 'number' ? of(value) : value]),
  ) as Quantity
}
