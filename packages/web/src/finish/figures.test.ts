import {
  boltPlaced,
  cameBack,
  faceDescribed,
  faceOpened,
  figureTaken,
  fold,
  type Happening,
  handStarted,
  holeMarked,
  limitStated,
  partCameOut,
  readingWaived,
  undone,
} from '@gripbook/record'
import { expect, test } from 'vitest'
import { told } from '../bench/testing/told.ts'
import { changeOf, figureOf, freeName, lies, nextToTake, rowsOf, stageOf, usualUnit } from './figures.ts'

const unitOf = (...happenings: Happening[]) => {
  const { id, events } = told(happenings)
  return fold(id, events)
}
const limit = { least: 0.1, most: 0.5, unit: 'mm', source: 'manual, 4-2' }

test('readings of one name are one row, with their limit, their face and who waived', () => {
  const rows = rowsOf(
    unitOf(
      figureTaken({ reading: 'End play', when: 'before', value: 0.6, unit: 'mm', face: 'pump' }),
      limitStated({ reading: 'End play', ...limit }),
      figureTaken({ reading: 'Coil A', when: 'during', value: 12, unit: 'Ω' }),
      figureTaken({ reading: 'End play', when: 'after', value: 0.3, unit: 'mm', plusMinus: 0.01 }),
      readingWaived({ reading: 'Coil A', reason: 'new harness' }),
      limitStated({ reading: 'Flatness', most: 0.15, unit: 'mm', source: 'manual' }),
    ),
  )
  expect(rows.map(({ reading, face, unit }) => [reading, face, unit])).toEqual([
    ['End play', 'pump', 'mm'],
    ['Coil A', null, 'Ω'],
    ['Flatness', null, 'mm'],
  ])
  expect(rows[0]).toMatchObject({ before: { value: 0.6 }, after: { value: 0.3, plusMinus: 0.01 }, limit })
  expect(rows[1]!.waived).toEqual({ reason: 'new harness', who: 'ada' })
})

test('[GA5] what was read at the end before a cover came off again is to be read once more, and stands beside', () => {
  const end = (value: number) => figureTaken({ reading: 'End play', when: 'after', value, unit: 'mm', face: 'pump' })
  const before = [
    faceDescribed({ face: 'pump' }),
    end(0.3),
    cameBack({ complaint: 'whines', toAnswer: true }),
    faceOpened({ face: 'pump', holes: [] }),
  ]
  const [row] = rowsOf(unitOf(...before))
  expect(row).toMatchObject({ after: null, old: { figure: { value: 0.3 }, face: 'pump' }, unit: 'mm' })
  expect(nextToTake([row!], 'after', null)).toBe('End play')
  expect(rowsOf(unitOf(...before, end(0.4)))[0]).toMatchObject({ after: { value: 0.4 }, old: null })
})

test('a figure that was undone leaves no row', () => {
  const { id, events } = told([figureTaken({ reading: 'x', when: 'before', value: 1, unit: 'mm' })])
  const all = told([undone({ event: events[0]!.id })], { before: events }).events
  expect(rowsOf(fold(id, all))).toEqual([])
})

test.each([
  [0.3, undefined, 'mm', 'inside'],
  [0.1, undefined, 'mm', 'inside'],
  [0.49, 0.02, 'mm', 'edge'],
  [0.51, 0.02, 'mm', 'outside'],
  [0.09, undefined, 'mm', 'outside'],
  [0.01, undefined, 'in', 'inside'],
  [0.02, undefined, 'in', 'outside'],
  [0.3, undefined, 'Ω', 'other unit'],
] as const)('%d ± %s %s lies %s to 0.1 to 0.5 mm', (value, plusMinus, unit, found) => {
  expect(lies({ value, unit, ...(plusMinus === undefined ? {} : { plusMinus }) }, limit)).toBe(found)
})

test('without a limit nothing is outside', () => {
  expect(lies({ value: 9, unit: 'mm' }, null)).toBeNull()
})

test('the change is told in the unit of the reading after', () => {
  const figure = (value: number, unit = 'mm') => ({ value, unit })
  expect(changeOf({ before: figure(0.6), after: figure(0.35) })).toBe(-0.25)
  expect(changeOf({ before: figure(0.02, 'in'), after: figure(0.3) })).toBeCloseTo(-0.208, 9)
  expect(changeOf({ before: null, after: figure(1) })).toBeNull()
  expect(changeOf({ before: figure(1, 'Ω'), after: figure(1) })).toBeNull()
})

test.each([
  ['0.35', { value: 0.35, unit: 'mm' }],
  [' 0,35 ± 0.01 ', { value: 0.35, plusMinus: 0.01, unit: 'mm' }],
  ['+0.35', { value: 0.35, unit: 'mm' }],
  ['−0.2', { value: -0.2, unit: 'mm' }],
  ['.5', { value: 0.5, unit: 'mm' }],
  ['12 Ω', { value: 12, unit: 'Ω' }],
  ['0.014 in', { value: 0.014, unit: 'in' }],
  ['3 +/- 1 Nm', { value: 3, plusMinus: 1, unit: 'N·m' }],
  ['', null],
  ['much', null],
  ['1 2', null],
  ['1.2.3', null],
  ['1e12', null],
])('reads %s', (text, figure) => {
  expect(figureOf(text, 'mm')).toEqual(figure)
})

test('it is before teardown until something came out, and after once every face has bolts back in', () => {
  const faces = [
    faceDescribed({ face: 'pan' }),
    holeMarked({ face: 'pan', hole: '1', mark: [1, 1], thread: 'M6' }),
    faceDescribed({ face: 'pump' }),
    holeMarked({ face: 'pump', hole: '1', mark: [1, 1], thread: 'M6' }),
  ]
  const out = partCameOut({ part: 'seal-1', what: 'seal' })
  const placed = (face: string) => boltPlaced({ face, hole: '1', kind: 'b1' })
  expect(stageOf(unitOf(...faces))).toBe('before')
  expect(stageOf(unitOf(...faces, out))).toBe('during')
  expect(stageOf(unitOf(...faces, out, placed('pan')))).toBe('during')
  const together = [...faces, out, placed('pan'), placed('pump')]
  expect(stageOf(unitOf(...together))).toBe('after')
  const opened = faceOpened({ face: 'pan', holes: ['1'] })
  expect(stageOf(unitOf(...together, opened)), 'opened again').toBe('during')
  expect(stageOf(unitOf(...together, opened, handStarted({ face: 'pan', hole: '1' })))).toBe('after')
})

test('the next to read is the next that lacks it, round the end', () => {
  const row = (reading: string, after: number | null) => ({
    reading,
    unit: 'mm',
    face: null,
    limit: null,
    waived: null,
    old: null,
    before: null,
    during: null,
    after: after === null ? null : { value: after, unit: 'mm' },
  })
  const rows = [row('a', null), row('b', 1), row('c', null)]
  expect(nextToTake(rows, 'after', 'a')).toBe('c')
  expect(nextToTake(rows, 'after', 'c')).toBe('a')
  expect(nextToTake(rows, 'after', null)).toBe('a')
  expect(nextToTake([row('a', 1)], 'after', null)).toBeNull()
})

test('a figure has a name of its own and the unit that it is read in', () => {
  expect(freeName('End play', [])).toBe('End play')
  expect(freeName('End play', [{ reading: 'end play' }, { reading: 'End play 2' }])).toBe('End play 3')
  expect(usualUnit('coil resistance', { length: 'in', torque: 'N·m' })).toBe('Ω')
  expect(usualUnit('end play', { length: 'in', torque: 'N·m' })).toBe('in')
  expect(usualUnit('rotating torque', { length: 'in', torque: 'lbf·in' })).toBe('lbf·in')
})
