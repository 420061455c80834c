import {
  type Event,
  faceDescribed,
  fold,
  type Happening,
  knowledgeOf,
  learn,
  nextEntry,
  partCameOut,
  partWentIn,
  sha256OfText,
} from '@gripbook/record'
import { expect, test } from 'vitest'
import { bodyOf, byFace, changePart, countOf, emptyForm, formOf, partsOf, strikeOutPart } from './partForm.ts'

const uuid = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const UNIT = uuid(1)

function written(before: readonly Event[], happenings: readonly Happening[]): Event[] {
  let known = knowledgeOf(UNIT, uuid(2), before)
  const events = [...before]
  for (const happening of happenings) {
    const given = { id: uuid(100 + events.length), at: '2026-03-01T09:00:00.000Z', who: 'w', ...happening }
    const event = nextEntry(known, given, sha256OfText)
    known = learn(known, event)
    events.push(event)
  }
  return events
}

const first = written(
  [],
  [
    faceDescribed({ face: 'pan' }),
    faceDescribed({ face: 'pump' }),
    partCameOut({ part: 'seal-1', what: 'seal', face: 'pump', wayRound: 'Lip inwards', count: 2 }),
    partCameOut({ part: 'clip-1', what: 'clip', name: 'Long one' }),
    partCameOut({ part: 'ring-1', what: 'ring', face: 'pan' }),
  ],
)

test('parts are grouped by face in the order of the faces, the others last', () => {
  const folded = fold(UNIT, first)
  const groups = byFace(partsOf(folded), folded.unit.faces)
  expect(groups.map(({ face, parts }) => [face, parts.map(({ id }) => id)])).toEqual([
    ['pan', ['ring-1']],
    ['pump', ['seal-1']],
    [null, ['clip-1']],
  ])
})

test('a change is one further entry', () => {
  const folded = fold(UNIT, first)
  const seal = partsOf(folded)[0]!
  const happenings = changePart(folded, seal, { ...formOf(seal), what: 'seal', condition: 'Lip torn' })
  expect(happenings.map(({ type }) => type)).toEqual(['part-came-out'])
  expect(partsOf(fold(UNIT, written(first, happenings)))[0]).toMatchObject({
    wayRound: 'Lip inwards',
    condition: 'Lip torn',
    count: 2,
  })
})

test('a form that was not changed writes nothing', () => {
  const folded = fold(UNIT, first)
  const seal = partsOf(folded)[0]!
  expect(changePart(folded, seal, { ...formOf(seal), what: 'seal' })).toEqual([])
})

test('what was emptied is empty afterwards, and what went in is still in', () => {
  const events = written(first, [partWentIn({ part: 'seal-1' })])
  const folded = fold(UNIT, events)
  const seal = partsOf(folded)[0]!
  const changed = fold(
    UNIT,
    written(events, changePart(folded, seal, { ...formOf(seal), what: 'seal', wayRound: ' ' })),
  )
  const now = partsOf(changed).find(({ id }) => id === 'seal-1')!
  expect(now.wayRound).toBeUndefined()
  expect(now.count).toBe(2)
  expect(now.fate).toBe('in')
})

test('a part that was struck out is gone from the list', () => {
  const folded = fold(UNIT, first)
  const left = partsOf(fold(UNIT, written(first, strikeOutPart(folded, 'clip-1'))))
  expect(left.map(({ id }) => id)).toEqual(['seal-1', 'ring-1'])
})

test('a form becomes an entry without what was left empty', () => {
  expect(bodyOf('shim-1', { ...emptyForm('pan'), what: 'shim', count: '３', place: ' under the \n bearing ' })).toEqual(
    {
      part: 'shim-1',
      what: 'shim',
      face: 'pan',
      place: 'under the bearing',
      count: 3,
    },
  )
})

test('only whole numbers count parts', () => {
  expect(['', ' 4 ', '100000'].map(countOf)).toEqual([undefined, 4, 100_000])
  expect(['0', '1.5', '-1', 'two', '100001'].map(countOf)).toEqual([null, null, null, null, null])
})
