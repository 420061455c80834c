import { expect, test } from 'vitest'
import { changesOf } from './changes.ts'

test('only what was changed is written, and what was emptied becomes unknown', () => {
  const shown = { name: 'Pump', torque: '10 N·m', gasket: '0.5 mm', note: '' }
  const typed = { name: 'Pump cover', torque: ' 10 N·m', gasket: '  ', note: '' }
  const values = { name: 'Pump cover', torque: { value: 10 }, gasket: undefined, note: undefined }
  expect(changesOf(shown, typed, values)).toEqual({ fields: { name: 'Pump cover' }, unknown: ['gasket'] })
})

test('nothing changed, nothing written', () => {
  const shown = { name: 'Pump' }
  expect(changesOf(shown, shown, { name: 'Pump' })).toEqual({ fields: {}, unknown: [] })
})
