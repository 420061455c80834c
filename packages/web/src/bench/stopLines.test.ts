import { faceDescribed, fold, partCameOut, type Stop } from '@gripbook/record'
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
