import { faceDescribed, fold, holeMarked, orderChosen, partCameOut, type Stop } from '@gripbook/record'
import { expect, test } from 'vitest'
import { holesOf, stopLines } from './stopLines.ts'
import { told } from './testing/told.ts'

const { id, events } = told([
  faceDescribed({ face: 'pan', name: 'Pan' }),
  faceDescribed({ face: 'filter-cover', name: 'Filter cover', inside: 'pan' }),
  partCameOut({ part: 'clip-1', what: 'clip', name: 'Wire clip', face: 'pan' }),
])
const around = {
  folded: fold(id, events),
  face: 'pan',
  named: (kind: string) => kind,
  told: (torque: number) => `${torque} N·m`,
}
const closing = (why: Stop['why']): Stop => ({ gate: 'closing step', face: 'pan', why })

test('what is open on this face and what is open on a face behind it are told apart', () => {
  const stops = [
    closing({ code: 'hole-not-final', face: 'filter-cover', hole: '1' }),
    closing({ code: 'hole-not-final', face: 'pan', hole: '2' }),
    closing({ code: 'face-not-closed', face: 'filter-cover' }),
    closing({ code: 'part-out', part: 'clip-1' }),
  ]
  expect(stopLines(stops, around)).toEqual([
    'Without their final pass: hole 2.',
    'Still out: Wire clip.',
    'Filter cover: no final pass at hole 1.',
    'Filter cover is not closed.',
  ])
  expect(holesOf(stops, 'pan')).toEqual(['2'])
})

test('a figure that was not read and resistance that stands are named, each once', () => {
  const stops = [
    closing({ code: 'figure-not-taken', reading: 'End play' }),
    closing({ code: 'figure-not-taken', reading: 'End play' }),
    closing({ code: 'resistance-stands', face: 'pan', hole: '3', feel: 'springy' }),
  ]
  expect(stopLines(stops, around)).toEqual([
    'Pan, hole 3: resistance is not cleared (springy).',
    'End play has a limit and was not read since teardown.',
  ])
  expect(holesOf(stops, 'pan')).toEqual(['3'])
})

test('a pass that is not complete is named as the bench counts it', () => {
  const face = 'lid'
  const lid = told([
    faceDescribed({ face }),
    holeMarked({ face, hole: '1', mark: [10, 10], thread: 'M8' }),
    holeMarked({ face, hole: '2', mark: [20, 10], thread: 'M8', visit: 2 }),
    orderChosen({
      face,
      name: 'by hand',
      passes: [
        { share: 0.5, sequence: ['1'] },
        { share: 1, sequence: ['1'] },
        { share: 0.5, sequence: ['2'] },
        { share: 1, sequence: ['2'] },
      ],
    }),
  ])
  const stop: Stop = { gate: 'pass before', face, hole: '2', why: { code: 'pass-not-complete', pass: 3, holes: ['2'] } }
  expect(stopLines([stop], { ...around, folded: fold(lid.id, lid.events), face })).toEqual([
    'Pass 1 of 2, 50 % is not complete: hole 2.',
  ])
})

test('the day on which a calibration ended is said as a day', () => {
  const stop: Stop = {
    gate: 'calibration',
    face: 'pan',
    hole: '1',
    why: { code: 'out-of-calibration', until: '2026-03-12' },
  }
  expect(stopLines([stop], around)).toEqual([expect.stringMatching(/(12 Mar|Mar 12,) 2026/)])
})
