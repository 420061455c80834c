import { expect, test } from 'vitest'
import type { Happening } from '../events/define.ts'
import { faceClosed } from '../events/faceClosed.ts'
import { faceDescribed } from '../events/faceDescribed.ts'
import { figureTaken } from '../events/figureTaken.ts'
import { holeMarked } from '../events/holeMarked.ts'
import { jobDone } from '../events/jobDone.ts'
import { jobPlanned } from '../events/jobPlanned.ts'
import { limitStated } from '../events/limitStated.ts'
import { partCameOut } from '../events/partCameOut.ts'
import { partWentIn } from '../events/partWentIn.ts'
import { passTorqued } from '../events/passTorqued.ts'
import { readingWaived } from '../events/readingWaived.ts'
import { resistanceFelt } from '../events/resistanceFelt.ts'
import { stepSigned } from '../events/stepSigned.ts'
import { openBefore } from './openBefore.ts'
import { stopsFor } from './stopsFor.ts'
import { workbench } from './testing/workbench.ts'

const pan = faceDescribed({ face: 'pan' })
const ball = partCameOut({ part: 'ball', what: 'check ball', face: 'pan' })
const limit = limitStated({ reading: 'lift', most: 2, unit: 'mm', source: 'manual' })

/** Codes of the stops that the last of these entries passes over after the others. */
function stops(...entries: Happening[]): string[] {
  const bench = workbench()
  for (const entry of entries.slice(0, -1)) bench.does(0, entry)
  return stopsFor(bench.folded(), entries.at(-1)!).map(({ gate, why }) => (gate === 'closing step' ? why.code : gate))
}
const closed = faceClosed({ face: 'pan' })

test('a face with nothing behind it and all bolts tight is closed', () => {
  const hole = { face: 'pan', hole: '1' }
  expect(stops(pan, closed)).toEqual([])
  expect(stops(pan, holeMarked({ ...hole, thread: 'M6' }), closed)).toEqual(['hole-not-final'])
  const tight = [holeMarked({ ...hole, thread: 'M6' }), passTorqued({ ...hole, pass: 1, final: true })]
  expect(stops(pan, ...tight, closed)).toEqual([])
  expect(stops(pan, ...tight, resistanceFelt({ ...hole, feel: 'springy' }), closed)).toEqual(['resistance-stands'])
})

test('a part that came out behind the cover has to be in first; one at a hole, or put on from outside, need not', () => {
  expect(stops(pan, ball, closed)).toEqual(['part-out'])
  expect(stops(pan, ball, partWentIn({ part: 'ball' }), closed)).toEqual([])
  expect(stops(pan, partCameOut({ part: 'b1', what: 'bracket', face: 'pan' }), closed)).toEqual([])
  expect(stops(pan, partCameOut({ part: 's1', what: 'seal', face: 'pan', hole: '3' }), closed)).toEqual([])
  expect(stops(pan, partCameOut({ part: 'other', what: 'spring', face: 'pump' }), closed)).toEqual([])
})

test('a figure with a limit that was read at the face is read again or waived first', () => {
  const read = (when: 'before' | 'during' | 'after', value: number) =>
    figureTaken({ reading: 'lift', when, value, unit: 'mm', face: 'pan' })
  expect(stops(pan, limit, read('before', 1), closed)).toEqual(['figure-not-taken'])
  expect(stops(pan, limit, read('before', 1), read('during', 1.5), closed)).toEqual([])
  expect(stops(pan, limit, read('during', 3), closed)).toEqual(['figure-outside'])
  expect(stops(pan, limit, read('during', 3), readingWaived({ reading: 'lift', reason: 'agreed' }), closed)).toEqual([])
  expect(stops(pan, limit, closed)).toEqual([])
})

test('a face inside is finished, and what lies behind it, before the outer one is closed', () => {
  const body = faceDescribed({ face: 'body', inside: 'pan' })
  expect(stops(pan, body, closed)).toEqual(['face-not-closed'])
  expect(stops(pan, body, faceClosed({ face: 'body' }), closed)).toEqual([])
  const deep = faceDescribed({ face: 'cap', inside: 'body' })
  const bracket = partCameOut({ part: 'b1', what: 'bracket', face: 'cap' })
  expect(stops(pan, body, deep, bracket, faceClosed({ face: 'body' }), closed)).toEqual(['face-not-closed', 'part-out'])
  expect(stops(pan, faceDescribed({ face: 'pan', inside: 'body' }), body, closed)).toEqual(['face-not-closed'])
})

test('a job that buries something waits for it, for the jobs before it and for what it needs', () => {
  const job = { job: 'filter', name: 'fit the filter' }
  const done = jobDone({ job: 'filter' })
  const clean = jobPlanned({ job: 'clean', name: 'clean the case' })
  expect(stops(ball, jobPlanned({ ...job, buries: ['ball'] }), done)).toEqual(['part-out'])
  expect(stops(clean, jobPlanned({ ...job, buries: ['clean'] }), done)).toEqual(['job-not-done'])
  expect(stops(clean, jobPlanned({ ...job, buries: ['pan'], after: ['clean'] }), pan, done)).toEqual([
    'job-not-done',
    'face-not-closed',
  ])
  expect(stops(clean, jobPlanned({ ...job, after: ['clean'] }), done), 'it buries nothing').toEqual([])
  expect(
    stops(jobPlanned({ job: 'clean', name: 'clean', skip: true }), jobPlanned({ ...job, buries: ['clean'] }), done),
  ).toEqual([])
  const needs = jobPlanned({
    ...job,
    buries: ['x'],
    needs: [{ name: 'valves', what: 'signature' }, { name: 'lift', what: 'reading' }, 'socket'],
  })
  expect(stops(needs, done)).toEqual(['not-signed', 'figure-not-taken'])
  const lift = figureTaken({ reading: 'lift', when: 'during', value: 1, unit: 'mm' })
  expect(stops(needs, stepSigned({ step: 'valves', as: 'builder' }), lift, done)).toEqual([])
  expect(stops(done)).toEqual([])
})

test('what the user adds to the closing of a face in the plan counts when the face is closed', () => {
  const change = jobPlanned({ job: 'pan/place', buries: ['ball'], needs: [{ name: 'sealing', what: 'signature' }] })
  expect(stops(pan, partCameOut({ part: 'ball', what: 'check ball' }), change, closed)).toEqual([
    'part-out',
    'not-signed',
  ])
  expect(stops(pan, ball, change, closed), 'behind the face and in the plan: told once').toEqual([
    'part-out',
    'not-signed',
  ])
})

test('what is open before a face is closed can be asked without an entry', () => {
  const bench = workbench()
  for (const entry of [pan, ball]) bench.does(0, entry)
  expect(openBefore(bench.folded(), {}, { close: 'pan' })).toEqual([
    { face: 'pan', why: { code: 'part-out', part: 'ball' } },
  ])
})
