import type { Clash } from '@gripbook/record'
import { expect, test } from 'vitest'
import { choicesOf, saidOf } from './clashes.ts'

const entry = (event: string, value: Clash['entries'][number]['value']) => ({
  event,
  device: 'd',
  who: 'w',
  at: '2026-03-01T09:00:00.000Z',
  value,
})

test('a quantity is told in the unit in which it was entered', () => {
  expect(saidOf({ field: 'grip' }, { value: 20.9, plusMinus: 0.1 })).toEqual({ is: 'text', text: '20.9 ± 0.1 mm' })
  expect(saidOf({ field: 'torque' }, 22)).toEqual({ is: 'text', text: '22 N·m' })
  expect(saidOf({ field: 'torque' }, { value: 18, unit: 'lbf·ft' })).toEqual({ is: 'text', text: '18 lbf·ft' })
  expect(saidOf({ field: 'count' }, 4)).toEqual({ is: 'text', text: '4' })
})

test('lists and objects are told in words, not as code', () => {
  expect(saidOf({ field: 'thread' }, ['M6', '1/4-20'])).toEqual({ is: 'text', text: 'M6, 1/4-20' })
  expect(saidOf({ field: 'head' }, { form: 'hex flange', acrossFlats: 8 })).toEqual({
    is: 'text',
    text: 'form hex flange, across flats 8',
  })
  expect(saidOf({ field: 'washer' }, { thickness: { value: 1.5 }, captive: true })).toEqual({
    is: 'text',
    text: 'thickness 1.5 mm, captive true',
  })
})

test('made unknown, struck out and a photograph have words of their own', () => {
  expect(saidOf({ field: 'grip' }, null)).toEqual({ is: 'unknown' })
  expect(saidOf({ field: 'there' }, false)).toEqual({ is: 'struck out' })
  expect(saidOf({ field: 'there' }, true)).toEqual({ is: 'there' })
  expect(saidOf({ field: 'photograph' }, { photograph: 'abc', width: 1, height: 1 })).toEqual({
    is: 'photograph',
    photograph: 'abc',
  })
})

test('devices that say the same are one choice', () => {
  const clash: Clash = {
    place: [],
    field: 'name',
    entries: [entry('a', 'Pump'), entry('b', 'Box'), entry('c', 'Pump')],
  }
  expect(choicesOf(clash).map(({ entries }) => entries.map(({ event }) => event))).toEqual([['a', 'c'], ['b']])
})
