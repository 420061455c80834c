import { expect, test } from 'vitest'
import { midOf } from '../readings/entry.ts'
import { threadsOffered } from './choices.ts'
import { changesOf, type Draft, draftAfter, draftOf, emptyDraft, readDraft, twinOf } from './draft.ts'
import { nextKindId } from './kindId.ts'
import { trayLines } from './said.ts'

const caliper = { name: 'digital caliper', plusMinus: 0.05, unit: 'mm' } as const
const read = (draft: Partial<Draft>) => readDraft({ ...emptyDraft('M6'), ...draft }, 'mm', caliper)

test('an id of a kind is never given twice, not even after it was struck out', () => {
  expect(nextKindId([])).toBe('b1')
  expect(nextKindId([{ body: { kind: 'b2' } }, { body: { kind: 'long' } }, { body: null }, { body: {} }])).toBe('b3')
  expect(nextKindId([{ body: { kind: 'b9', face: 'x' } }, { body: { kind: 'b10' } }])).toBe('b11')
})

test('a measured length is a reading, a marked one a nominal size', () => {
  const measured = read({ length: '44.93', count: '4', class: '8.8' })
  expect(measured).toEqual({
    ok: true,
    fields: { thread: 'M6', count: 4, class: '8.8' },
    taken: {
      value: { value: 44.93, plusMinus: 0.05 },
      instrument: { name: 'digital caliper', errorLimit: 0.05 },
    },
  })
  expect(read({ how: 'marked', length: '45' })).toMatchObject({ fields: { length: { nominal: 45 } }, taken: null })
  expect(read({ how: 'marked', length: '1 3/4 in' })).toMatchObject({
    fields: { length: { nominal: 1.75, unit: 'in' } },
  })
  expect(read({ how: 'marked', length: '44 to 46' })).toMatchObject({ fields: { length: { atLeast: 44, atMost: 46 } } })
})

test('everything else goes into its field, trimmed, and what is empty is left out', () => {
  expect(
    read({
      thread: ' m8x1 ',
      count: '',
      features: [' patch', 'patch', ''],
      form: 'hex flange',
      acrossFlats: '10',
      washer: '1.6',
      captive: true,
      note: '  ',
    }),
  ).toEqual({
    ok: true,
    fields: {
      thread: 'M8×1',
      features: ['patch'],
      head: { form: 'hex flange', acrossFlats: 10 },
      washer: { thickness: 1.6, captive: true },
    },
    taken: null,
  })
})

test('all faults are told at once, each at its field', () => {
  const wrong = read({ thread: 'Q7', length: 'long', count: '-1', acrossFlats: '10', washer: 'x' })
  expect(wrong.ok ? [] : wrong.faults.map(({ field }) => field)).toEqual([
    'thread',
    'length',
    'count',
    'form',
    'washer',
  ])
  expect(read({ thread: ' ' })).toMatchObject({ faults: [{ field: 'thread', fault: 'needed' }] })
})

test('the next one keeps thread, class and head, and asks for length and count anew', () => {
  const draft = { ...emptyDraft('M8'), class: '10.9', length: '30', count: '6', features: ['patch'], note: 'x' }
  expect(draftAfter(draft)).toEqual({ ...emptyDraft('M8'), class: '10.9' })
})

test('a kind opened and kept untouched changes nothing', () => {
  const kind = {
    id: 'b1',
    thread: ['M6', '1/4-20 UNC'],
    length: { value: 1.77, plusMinus: 0.002, unit: 'in' as const },
    count: 3,
    head: { form: 'stud' },
    washer: { thickness: { value: 1.6, plusMinus: 0.1 }, captive: true },
    features: ['stud end'],
  }
  const draft = draftOf(kind, 'mm')
  const again = readDraft(draft, 'mm', caliper)
  expect(again.ok && again.fields.thread).toEqual(kind.thread)
  expect(again.ok && again.taken?.value).toEqual(kind.length)
  expect(again.ok && changesOf(draft, draft, again.fields)).toEqual({ changes: {}, unknown: [] })
})

test('what was changed is written, what was emptied becomes unknown', () => {
  const before = draftOf({ id: 'b1', thread: 'M6', count: 3, class: '8.8', length: { nominal: 45 } }, 'mm')
  const after = { ...before, count: '', class: '10.9', length: '' }
  const fields = readDraft(after, 'mm', caliper)
  expect(fields.ok && changesOf(before, after, fields.fields)).toEqual({
    changes: { class: '10.9' },
    unknown: ['length', 'count'],
  })
  // A length that was measured anew is a reading of its own, not unknown.
  const measured = { ...before, how: 'measured' as const, length: '44.9' }
  const anew = readDraft(measured, 'mm', caliper)
  expect(anew.ok && changesOf(before, measured, anew.fields)).toEqual({ changes: {}, unknown: [] })
})

test('the same bolts are known again within the tolerance of their length', () => {
  const kinds = [{ id: 'b1', thread: 'M6', length: { nominal: 45 }, class: '8.8' }]
  expect(twinOf(kinds, { thread: 'M6', class: '8.8' }, { value: 44.9 }, midOf)?.id).toBe('b1')
  expect(twinOf(kinds, { thread: 'M6', class: '8.8' }, { value: 40 }, midOf)).toBeNull()
  expect(twinOf(kinds, { thread: 'M6', class: '8.8', features: ['patch'] }, { value: 45 }, midOf)).toBeNull()
  expect(twinOf(kinds, { thread: 'M6' }, undefined, midOf)).toBeNull()
})

test('the threads offered begin with the last one and those of the unit', () => {
  const unit = { gripbook: 'unit/1', faces: [{ id: 'pan', holes: [{ id: '1', thread: 'M8×1' }] }] } as const
  expect(threadsOffered(unit as never, 'M6').slice(0, 3)).toEqual(['M6', 'M8×1', 'M5'])
})

const answer = {
  face: 'pan',
  feasible: true,
  holes: {},
  pairs: [],
  conflict: null,
  changes: { count: 0, cycles: [] },
  missing: 0,
  leftOver: {},
  wanted: [],
  next: null,
  likelihood: { method: 'exact' as const },
}

test('a tray says what is wanted, hole by hole of one size, then what is left over', () => {
  const wanted = ['7', '9'].map((hole) => ({ hole, thread: 'M6', lengths: [40], why: '' }))
  expect(
    trayLines({ ...answer, wanted, missing: 3, leftOver: { b1: 2, b2: 0 }, leftOverFits: { b1: ['cover'] } }),
  ).toEqual([
    { is: 'wanted', thread: 'M6', lengths: [40], holes: ['7', '9'] },
    { is: 'left over', kind: 'b1', count: 2, fits: ['cover'] },
    { is: 'short', count: 1 },
  ])
  expect(trayLines(answer)).toEqual([{ is: 'all', holes: 0 }])
})
