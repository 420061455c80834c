import {
  boltFound,
  boltPlaced,
  cameBack,
  comeBackAnswered,
  type Event,
  faceClosed,
  faceDescribed,
  figureTaken,
  fold,
  gateOverridden,
  type Happening,
  holeMarked,
  kindLaidOut,
  limitStated,
  noteWritten,
  partCameOut,
  partReplaced,
  passTorqued,
  resistanceCleared,
  resistanceFelt,
} from '@gripbook/record'
import { expect, test } from 'vitest'
import { told, UNIT } from '../bench/testing/told.ts'
import { type Answer, answersOf, builtUnit, comeBacksNow } from './comeBack.ts'
import { releaseOf } from './release.ts'

const limit = { most: 0.5, unit: 'mm', source: 'manual' }
const story: Happening[] = [
  faceDescribed({ face: 'pan', name: 'Oil pan' }),
  holeMarked({ face: 'pan', hole: '1', mark: [1, 1], thread: 'M6' }),
  holeMarked({ face: 'pan', hole: '2', mark: [9, 1], thread: 'M6' }),
  kindLaidOut({ face: 'pan', kind: 'b1', thread: 'M6', count: 1 }),
  kindLaidOut({ face: 'pan', kind: 'b2', thread: 'M6', count: 1 }),
  boltFound({ face: 'pan', hole: '1', kind: 'b1' }),
  boltFound({ face: 'pan', hole: '2', kind: 'b1' }),
  figureTaken({ reading: 'End play', when: 'before', value: 0.6, unit: 'mm' }),
  limitStated({ reading: 'End play', ...limit }),
  figureTaken({ reading: 'End play', when: 'after', value: 0.49, plusMinus: 0.02, unit: 'mm' }),
  figureTaken({ reading: 'Coil A', when: 'before', value: 12, unit: 'Ω' }),
  figureTaken({ reading: 'Backlash', when: 'after', value: 0.2, unit: 'mm' }),
  figureTaken({ reading: 'Flatness', when: 'before', value: 0.1, unit: 'mm' }),
  figureTaken({ reading: 'Flatness', when: 'after', value: 0.1, unit: 'mm' }),
  limitStated({ reading: 'Coil B', most: 14, unit: 'Ω', source: 'manual' }),
  figureTaken({ reading: 'Coil B', when: 'before', value: 12, unit: 'Ω' }),
  figureTaken({ reading: 'Coil B', when: 'after', value: 12.1, unit: 'Ω' }),
  figureTaken({ reading: 'Rotating torque', when: 'before', value: 2, unit: 'N·m' }),
  figureTaken({ reading: 'Rotating torque', when: 'after', value: 1.4, unit: 'N·m' }),
  partCameOut({ part: 'seal-1', what: 'seal', name: 'Front seal' }),
  partReplaced({ part: 'seal-1', by: 'a new one' }),
  boltPlaced({ face: 'pan', hole: '1', kind: 'b1' }),
  boltPlaced({ face: 'pan', hole: '2', kind: 'b2' }),
  resistanceFelt({ face: 'pan', hole: '2', feel: 'springy' }),
  resistanceCleared({ face: 'pan', hole: '2', found: 'seal lay in the joint' }),
  gateOverridden({ gate: 'hand-start', face: 'pan', hole: '1', reason: 'the pan leaks when it hangs' }),
  passTorqued({ face: 'pan', hole: '1', pass: 1, final: true, torque: 10 }),
  gateOverridden({ gate: 'hand-start', face: 'pan', hole: '2', reason: 'the same' }),
  passTorqued({ face: 'pan', hole: '2', pass: 1, final: true }),
  faceClosed({ face: 'pan' }),
]

const of = (events: readonly Event[]) => fold(UNIT, events)
const before = told(story).events
const found = (answers: readonly Answer[], is: Answer['is']) => answers.filter((answer) => answer.is === is)

test('the record tells what about the build was out of the ordinary', () => {
  const answers = answersOf(of(before), 'hums')
  const figures = answers.flatMap((answer) => (answer.is === 'figure' ? [[answer.row.reading, answer.why]] : []))
  expect(figures).toEqual([
    ['End play', 'edge'],
    ['Coil A', 'not after'],
    ['Backlash', 'no baseline'],
    ['Rotating torque', 'changed'],
  ])
  expect(found(answers, 'override')).toMatchObject([
    { gate: 'hand-start', face: 'pan', holes: ['1'], who: 'ada' },
    { gate: 'hand-start', face: 'pan', holes: ['2'] },
  ])
  expect(found(answers, 'kind changed')).toMatchObject([{ face: 'pan', hole: '2', found: 'b1', placed: 'b2' }])
  expect(found(answers, 'part changed')).toMatchObject([{ name: 'Front seal', fate: 'replaced', by: 'a new one' }])
  expect(found(answers, 'by feel')).toMatchObject([{ face: 'pan', holes: ['2'] }])
  expect(found(answers, 'resistance')).toMatchObject([{ hole: '2', said: 'springy' }])
  expect(answers.every(({ speaksOf }) => !speaksOf)).toBe(true)
})

test('what speaks of the same as the complaint comes first', () => {
  const answers = answersOf(of(before), 'It leaks at the front, since the seals')
  const first = answers.filter(({ speaksOf }) => speaksOf)
  expect(answers.slice(0, first.length)).toEqual(first)
  expect(first.map(({ is }) => is)).toEqual(['override', 'part changed'])
})

test('the build is what was released, whatever was written since, and what was written is told', () => {
  expect(builtUnit(of(before))).toBeNull()
  const release = releaseOf(of(before), true)
  if (!release.ok) throw new Error(JSON.stringify(release.stops))
  const released = told([release.happening, noteWritten({ text: 'sticker lost' })], { before }).events
  expect(builtUnit(of(released))?.entries).toEqual(before)
  expect(found(answersOf(builtUnit(of(released))!, '', of(released)), 'since release')).toMatchObject([
    { said: 'Note: sticker lost' },
  ])
  const back = told([cameBack({ complaint: 'slips' }), faceDescribed({ face: 'new' })], { before: released }).events
  expect(builtUnit(of(back))?.unit.faces.map(({ id }) => id)).toEqual(['pan'])
})

test('one reason that was given at many holes is one answer, whatever pass it was', () => {
  const wrench = (hole: string) => gateOverridden({ gate: 'calibration', face: 'pan', hole, reason: 'compared today' })
  const { events } = told(['1', '2', '1', '2'].map(wrench), { before })
  expect(found(answersOf(of(events), ''), 'override').slice(-1)).toMatchObject([
    { gate: 'calibration', holes: ['1', '2'] },
  ])
  expect(found(answersOf(of(events), ''), 'override')).toHaveLength(3)
})

test('a complaint is told until the unit is released again, and the next one is answered by what was found then', () => {
  const release = (events: readonly Event[]) => {
    const made = releaseOf(of(events), true)
    if (!made.ok) throw new Error(JSON.stringify(made.stops))
    return told([made.happening], { before: events }).events
  }
  const back = told([cameBack({ complaint: 'leaks', toAnswer: true })], { before: release(before) }).events
  const cameBackId = back.at(-1)!.id
  expect(comeBacksNow(of(back))).toMatchObject([{ complaint: 'leaks', asked: true, answers: [] }])
  expect(releaseOf(of(back), true)).toMatchObject({
    ok: false,
    stops: [{ why: { code: 'come-back-not-answered', event: cameBackId } }],
  })

  const answer = comeBackAnswered({ cameBack: cameBackId, found: 'torn gasket', done: 'a new one', face: 'pan' })
  const answered = told([answer], { before: back }).events
  expect(comeBacksNow(of(answered))).toMatchObject([{ answers: [{ found: 'torn gasket', face: 'pan' }] }])

  const again = release(answered)
  expect(comeBacksNow(of(again))).toEqual([])
  const next = told([cameBack({ complaint: 'leaks again', toAnswer: true })], { before: again }).events
  expect(comeBacksNow(of(next)).map(({ complaint }) => complaint)).toEqual(['leaks again'])
  expect(found(answersOf(builtUnit(of(next))!, 'leaks again', of(next)), 'came back')).toMatchObject([
    { complaint: 'leaks', found: ['Found at Oil pan: torn gasket\nDone: a new one'], speaksOf: true },
  ])
})
