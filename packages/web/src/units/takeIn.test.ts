import { readBody, sha256OfText } from '@gripbook/record'
import { expect, test } from 'vitest'
import { type Draft, emptyDraft, holdsSomething, readDraft, takeInHappenings } from './takeIn.ts'

const photograph = { photograph: sha256OfText('a'), width: 40, height: 30 }
const full: Draft = {
  ...emptyDraft('u'),
  name: ' Gearbox\tof the yard loader ',
  model: 'YL 3',
  job: '4711',
  complaint: 'Slips in second\nwhen warm',
  history: 'never opened',
  signs: [
    { text: 'Two sealants', photograph },
    { text: ' ', photograph: null },
    { text: '', photograph },
  ],
  photographs: [{ ...photograph, caption: 'Front' }],
}

test('all that was entered comes into one write, each entry one that the record takes', () => {
  const happenings = takeInHappenings(full, 'See the photograph')
  expect(happenings.map(({ type }) => type)).toEqual([
    'unit-taken-in',
    'photographed',
    'opened-before-seen',
    'photographed',
    'opened-before-seen',
    'photographed',
  ])
  for (const happening of happenings) expect(readBody(happening).ok).toBe(true)
  expect(happenings[0]!.body).toEqual({
    name: 'Gearbox of the yard loader',
    model: 'YL 3',
    job: '4711',
    complaint: 'Slips in second\nwhen warm',
    history: 'never opened',
  })
  expect(happenings[4]!.body).toEqual({ sign: 'See the photograph', photograph: photograph.photograph })
})

test('a long sign is whole in its entry and shortened under its photograph', () => {
  const sign = 'x'.repeat(2_000)
  for (const happening of takeInHappenings({ ...full, signs: [{ text: sign, photograph }] }, ''))
    expect(readBody(happening).ok).toBe(true)
})

test('what was left empty is left out', () => {
  expect(takeInHappenings({ ...emptyDraft('u'), name: 'Pump' }, '')[0]!.body).toEqual({ name: 'Pump' })
})

test('a draft comes back as it was kept, and nonsense comes back as none', () => {
  expect(readDraft(JSON.stringify(full))).toEqual(full)
  expect(readDraft(JSON.stringify({ unit: 'u', name: 'Pump' }))).toEqual({ ...emptyDraft('u'), name: 'Pump' })
  for (const text of [null, '', '{', '[]', '4', '{"unit":"u","signs":4}', '{"unit":"u","name":4}'])
    expect(readDraft(text)).toBeNull()
})

test('a form that was only opened holds nothing', () => {
  expect(holdsSomething(emptyDraft('u'))).toBe(false)
  expect(holdsSomething({ ...emptyDraft('u'), history: 'unknown' })).toBe(true)
  expect(holdsSomething({ ...emptyDraft('u'), complaint: 'x' })).toBe(true)
})
