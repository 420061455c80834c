import { figureTaken, fold, type Happening, instrumentChecked, passTorqued } from '@gripbook/record'
import { expect, test } from 'vitest'
import { told } from '../bench/testing/told.ts'
import { instrumentsUsed } from './instruments.ts'

const of = (...happenings: Happening[]) => {
  const { id, events } = told(happenings)
  return instrumentsUsed(fold(id, events))
}
const torqued = (tool: NonNullable<Parameters<typeof passTorqued>[0]['tool']>) =>
  passTorqued({ face: 'pan', hole: '1', pass: 1, final: true, torque: 10, tool })

test('each wrench and instrument once, with the check that was noted for it', () => {
  expect(
    of(
      torqued({ name: 'click wrench', number: 'W4' }),
      torqued({ name: 'click wrench', number: 'W4' }),
      figureTaken({ reading: 'End play', when: 'after', value: 1, unit: 'mm', instrument: { name: 'dial indicator' } }),
      instrumentChecked({ instrument: 'W4', calibratedUntil: '2026-12-31', result: 'within 3 %' }),
    ),
  ).toEqual([
    { id: 'W4', name: 'click wrench', until: '2026-12-31', result: 'within 3 %', last: '2026-03-01', out: false },
    { id: 'dial indicator', name: 'dial indicator', until: null, result: null, last: '2026-03-01', out: false },
  ])
})

test('one that was used after its day is out, whatever was noted later', () => {
  expect(
    of(
      torqued({ name: 'click wrench', number: 'W4', calibratedUntil: '2026-02-01' }),
      instrumentChecked({ instrument: 'W4', calibratedUntil: '2027-01-01' }),
    ),
  ).toMatchObject([{ until: '2026-02-01', out: true }])
})

test('a hand is no instrument', () => {
  expect(of(torqued({ name: 'by hand', byFeel: true }))).toEqual([])
})
