import { expect, test } from 'vitest'
import { keyMeans, mayBePedal } from './keys.ts'

test.each([
  ['Enter', 'done'],
  [' ', 'done'],
  ['Backspace', 'undo'],
  ['b', 'binds'],
  ['B', 'binds'],
  ['ArrowRight', 'look'],
  ['ArrowUp', 'look'],
])('%j means %s', (key, does) => {
  expect(keyMeans({ key }, null, null)?.does).toBe(does)
})

test('digits belong to a figure, and are nothing where none is wanted', () => {
  expect(keyMeans({ key: '7' }, '', null)).toEqual({ does: 'type', text: '7' })
  expect(keyMeans({ key: ',' }, '2', null)).toEqual({ does: 'type', text: ',' })
  expect(keyMeans({ key: '7' }, null, null)).toBeNull()
})

test('Backspace takes back a digit first, and only then a step', () => {
  expect(keyMeans({ key: 'Backspace' }, '22', null)).toEqual({ does: 'erase' })
  expect(keyMeans({ key: 'Backspace' }, '', null)).toEqual({ does: 'undo' })
})

test('a key held down does not run through the steps', () => {
  expect(keyMeans({ key: 'Enter', repeat: true }, null, null)).toBeNull()
  expect(keyMeans({ key: 'Backspace', repeat: true }, '', null)).toBeNull()
  expect(keyMeans({ key: 'Backspace', repeat: true }, '22', null)).toEqual({ does: 'erase' })
})

test('the pedal’s own key means done, whatever it meant before', () => {
  expect(keyMeans({ key: 'PageDown' }, null, 'PageDown')).toEqual({ does: 'done' })
  expect(keyMeans({ key: 'PageDown' }, null, null)).toBeNull()
})

test('with Control, Alt or Meta a key is the browser’s', () => {
  expect(keyMeans({ key: 'b', ctrlKey: true }, null, null)).toBeNull()
  expect(keyMeans({ key: 'ArrowLeft', altKey: true }, null, null)).toBeNull()
})

test('a pedal may not type what undoes, what reports a stop, what is a digit or what leaves the field', () => {
  for (const key of ['Backspace', 'b', '5', 'Tab', 'Escape', 'Shift']) expect(mayBePedal(key), key).toBe(false)
  for (const key of ['PageDown', 'F13', 'q', 'Enter', 'ArrowRight']) expect(mayBePedal(key), key).toBe(true)
})
