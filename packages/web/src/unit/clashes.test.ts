import { type Clash, faceDescribed, fold, holeMarked, kindLaidOut } from '@gripbook/record'
import { expect, test } from 'vitest'
import { told, UNIT } from '../bench/testing/told.ts'
import { choicesOf, saidOf } from './clashes.ts'
import { kindIn, sayClash } from './sayClash.ts'

const named = (kind: string) => (kind === 'b2' ? 'M6×40' : kind)
const entry = (event: string, value: Clash['entries'][number]['value']) => ({
  event,
  device: 'd',
  who: 'w',
  at: '2026-03-01T09:00:00.000Z',
  value,
})

test('a quantity is told in the unit in which it was entered', () => {
  expect(saidOf({ field: 'grip' }, { value: 20.9, plusMinus: 0.1 }, named)).toEqual({
    is: 'text',
    text: '20.9 ± 0.1 mm',
  })
  expect(saidOf({ field: 'torque' }, 22, named)).toEqual({ is: 'text', text: '22 N·m' })
  expect(saidOf({ field: 'torque' }, { value: 18, unit: 'lbf·ft' }, named)).toEqual({ is: 'text', text: '18 lbf·ft' })
  expect(saidOf({ field: 'count' }, 4, named)).toEqual({ is: 'text', text: '4' })
  expect(saidOf({ field: 'thickness' }, 1.25, named)).toEqual({ is: 'text', text: '1.25 mm' })
  for (const [figure, text] of [
    [{ value: 0.35, unit: 'mm', plusMinus: 0.01 }, '0.35 ± 0.01 mm'],
    [{ value: 12.5, unit: 'Ω' }, '12.5 Ω'],
    [{ value: -0.2, unit: 'my own' }, '-0.2 my own'],
  ] as const)
    expect(saidOf({ field: 'before' }, figure, named)).toEqual({ is: 'text', text })
})

test('lists and objects are told in words, not as code', () => {
  expect(saidOf({ field: 'thread' }, ['M6', '1/4-20'], named)).toEqual({ is: 'text', text: 'M6, 1/4-20' })
  expect(saidOf({ field: 'head' }, { form: 'hex flange', acrossFlats: 8 }, named)).toEqual({
    is: 'text',
    text: 'form hex flange, across flats 8',
  })
  expect(saidOf({ field: 'washer' }, { thickness: { value: 1.5 }, captive: true }, named)).toEqual({
    is: 'text',
    text: 'thickness 1.5 mm, captive true',
  })
})

test('made unknown, struck out and a photograph have words of their own', () => {
  expect(saidOf({ field: 'grip' }, null, named)).toEqual({ is: 'unknown' })
  expect(saidOf({ field: 'there' }, false, named)).toEqual({ is: 'struck out' })
  expect(saidOf({ field: 'there' }, true, named)).toEqual({ is: 'there' })
  expect(saidOf({ field: 'photograph' }, { photograph: 'abc', width: 1, height: 1 }, named)).toEqual({
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
  expect(choicesOf(clash, named).map(({ entries }) => entries.map(({ event }) => event))).toEqual([['a', 'c'], ['b']])
})

test('bolts are told as they are called, and how far one is in the trade’s words', () => {
  expect(saidOf({ field: 'asFound' }, 'b2', named)).toEqual({ is: 'text', text: 'M6×40' })
  expect(saidOf({ field: 'placed' }, 'none', named)).toEqual({ is: 'empty' })
  expect(saidOf({ field: 'step final' }, { torque: 9.5 }, named)).toEqual({ is: 'text', text: '9.5 N·m' })
  expect(saidOf({ field: 'step final' }, { torque: { value: 7, unit: 'lbf·ft' }, angle: 90 }, named)).toEqual({
    is: 'text',
    text: '7 lbf·ft + 90°',
  })
  expect(saidOf({ field: 'step final' }, {}, named)).toEqual({ is: 'by feel' })
  expect(saidOf({ field: 'step pass 2' }, null, named)).toEqual({ is: 'backed out' })
  expect(saidOf({ field: 'step run-down' }, true, named)).toEqual({ is: 'done' })
  expect(saidOf({ field: 'step turns' }, { turns: 8.5, seated: true }, named)).toEqual({ is: 'text', text: '8.5' })
  expect(saidOf({ field: 'released' }, { heads: {}, record: 'c' }, named)).toEqual({ is: 'released' })
  expect(saidOf({ field: 'released' }, null, named)).toEqual({ is: 'not released' })
  expect(saidOf({ field: 'closed' }, false, named)).toEqual({ is: 'no' })
})

test('a bolt is looked up in the tray of its face, and the socket of a plug in none', () => {
  const { events } = told([
    kindLaidOut({ kind: 'b1', thread: 'M8', length: 30, count: 1 }),
    kindLaidOut({ face: 'end-cover', kind: 'b2', thread: 'M6', length: 40, count: 1 }),
  ])
  const folded = fold(UNIT, events)
  expect(kindIn({ place: ['face', 'end-cover', 'hole', '3'] }, folded)('b2')).toBe('M6×40')
  expect(kindIn({ place: ['face', 'end-cover', 'hole', '3'] }, folded)('b1')).toBe('M8×30')
  expect(kindIn({ place: ['plug', 'p1'] }, folded)('b1')).toBe('b1')
})

test('what is said differently is told without a word of the program', () => {
  const { events } = told([
    faceDescribed({ face: 'end-cover', name: 'End cover' }),
    holeMarked({ face: 'end-cover', hole: '3', mark: [1, 1], thread: 'M6' }),
    kindLaidOut({ face: 'end-cover', kind: 'b2', thread: 'M6', length: 40, count: 1 }),
  ])
  const folded = fold(UNIT, events)
  const say = (field: string, ...place: string[]) => sayClash({ place, field }, folded)
  expect(say('step final', 'face', 'end-cover', 'hole', '3')).toBe('Hole 3 of End cover: its final torque')
  expect(say('step pass 2', 'face', 'end-cover', 'hole', '3')).toBe('Hole 3 of End cover: its torque in pass 2')
  expect(say('asFound', 'face', 'end-cover', 'hole', '3')).toBe('Hole 3 of End cover: what came out of it')
  expect(say('bottomDepth', 'face', 'end-cover', 'hole', '3')).toBe('Hole 3 of End cover: bottom depth')
  expect(say('count', 'face', 'end-cover', 'kind', 'b2')).toBe('M6×40 of End cover: count')
  expect(say('placed', 'face', 'end-cover', 'hole', '3')).toBe('Hole 3 of End cover: what goes back into it')
  expect(say('placed', 'plug', 'p1')).toBe('Plug p1: which socket it went into')
  expect(say('socket', 'plug', 'p1')).toBe('Plug p1: which socket it was in')
  expect(say('cameBack')).toBe('The unit: why it came back')
})
