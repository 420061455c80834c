import {
  boltPlaced,
  cameBack,
  faceClosed,
  faceDescribed,
  faceOpened,
  fold,
  type Happening,
  handStarted,
  holeMarked,
  jobDone,
  jobPlanned,
  kindLaidOut,
  partCameOut,
  passTorqued,
  plugFound,
  plugPlaced,
  runDown,
  witnessMarked,
} from '@gripbook/record'
import { expect, test } from 'vitest'
import { told } from '../bench/testing/told.ts'
import { placeOfJob, workOf } from './whatNext.ts'

const of = (...happenings: Happening[]) => {
  const { id, events } = told(happenings)
  return workOf(fold(id, events))
}
const HOLES = ['1', '2']
const at = (hole: string) => ({ face: 'pan', hole })
const face: Happening[] = [
  faceDescribed({ face: 'pan', name: 'Oil pan', torque: 10 }),
  ...HOLES.map((hole) => holeMarked({ ...at(hole), mark: [1, 1], thread: 'M6' })),
  kindLaidOut({ face: 'pan', kind: 'b1', thread: 'M6', count: 2 }),
]
const ids = (work: ReturnType<typeof of>) => work!.next.map(({ id }) => id)

test('a unit without a hole has no work yet', () => {
  expect(of(faceDescribed({ face: 'pan' }))).toBeNull()
})

test('a new unit gets an order from its faces, parts and plugs', () => {
  const work = of(
    ...face,
    partCameOut({ part: 'seal-1', what: 'seal', face: 'pan' }),
    plugFound({ plug: 'P1', socket: 'S1' }),
  )!
  expect(work.done).toBe(0)
  expect(work.next).toHaveLength(work.all)
  expect(ids(work).slice(0, 1)).toEqual(['pan/clean'])
  expect(ids(work).at(-1)).toBe('readings')
  expect(ids(work)).toContain('plug/P1')
  expect(work.next.find(({ id }) => id === 'part/seal-1')).toMatchObject({ doneBy: { part: 'seal-1' }, face: 'pan' })
  expect(work.clashes).toEqual([])
})

test('what the bench has written ticks off its jobs, and what lay before them', () => {
  const started = HOLES.flatMap((hole) => [boltPlaced({ ...at(hole), kind: 'b1' }), handStarted(at(hole))])
  expect(ids(of(...face, ...started.slice(0, 2)))[0]).toBe('pan/hand-start')
  expect(ids(of(...face, ...started))[0]).toBe('pan/run down')
  const down = [...started, ...HOLES.map((hole) => runDown(at(hole)))]
  expect(ids(of(...face, ...down))[0]).toBe('pan/pass 1')
  const first = HOLES.map((hole) => passTorqued({ ...at(hole), pass: 1, final: false, torque: 5 }))
  expect(ids(of(...face, ...down, ...first))[0]).toBe('pan/pass 2')
  const final = HOLES.map((hole) => passTorqued({ ...at(hole), pass: 3, final: true, torque: 10 }))
  expect(ids(of(...face, ...down, ...first, ...final))[0]).toBe('pan/witness marks')
  const marked = HOLES.map((hole) => witnessMarked(at(hole)))
  expect(ids(of(...face, ...down, ...first, ...final, ...marked))[0]).toBe('pan/close')
  expect(ids(of(...face, ...down, ...first, ...final, ...marked, faceClosed({ face: 'pan' })))).toEqual(['readings'])
})

test('the user ticks off, adds and leaves out', () => {
  expect(ids(of(...face, jobDone({ job: 'pan/clean' })))).not.toContain('pan/clean')
  expect(ids(of(...face, jobPlanned({ job: 'pan/dry fit', skip: true })))).not.toContain('pan/dry fit')
  const added = of(...face, jobPlanned({ job: 'wash', name: 'Wash the case', after: ['pan/clean'], minutes: 30 }))!
  expect(added.next.find(({ id }) => id === 'wash')).toMatchObject({
    name: 'Wash the case',
    minutes: 30,
    doneBy: 'hand',
  })
})

test('[GA5] what was ticked off at a face, or at none, is next again once its cover came off again', () => {
  const ticked = ['pan/clean', 'pan/dry fit', 'readings'].map((job) => jobDone({ job }))
  const off = [cameBack({ complaint: 'weeps', toAnswer: true }), faceOpened({ face: 'pan', holes: HOLES })]
  const done = (...happenings: Happening[]) => {
    const next = ids(of(...face, ...ticked, ...happenings))
    return ['pan/clean', 'pan/dry fit', 'readings'].filter((job) => !next.includes(job))
  }
  expect(done()).toHaveLength(3)
  expect(done(off[1]!), 'it did not come back').toHaveLength(3)
  expect(done(...off)).toEqual([])
  expect(done(...off, jobDone({ job: 'pan/clean' }))).toEqual(['pan/clean'])
})

test('a plug in its socket is done', () => {
  expect(
    ids(of(...face, plugFound({ plug: 'P1', socket: 'S1' }), plugPlaced({ plug: 'P1', socket: 'S1' }))),
  ).not.toContain('plug/P1')
})

test('jobs that run in a circle are told, and there is no order', () => {
  const work = of(...face, jobPlanned({ job: 'a', after: ['b'] }), jobPlanned({ job: 'b', after: ['a'] }))!
  expect(work.next).toEqual([])
  expect(work.clashes[0]).toMatchObject({ what: 'circle' })
})

test('a job leads to where it is done', () => {
  const here = { book: 'shop', unit: 'u' } as const
  const work = of(...face)!
  const to = (id: string) => placeOfJob(work.next.find((job) => job.id === id)!, here)
  expect(to('pan/hand-start')).toEqual({ at: 'bench', ...here, face: 'pan' })
  expect(to('pan/tray')).toEqual({ at: 'tray', ...here, face: 'pan' })
  expect(to('pan/clean')).toEqual({ at: 'readings', ...here, face: 'pan' })
  expect(to('readings')).toEqual({ at: 'figures', ...here })
  expect(to('pan/dry fit')).toBeNull()
})
