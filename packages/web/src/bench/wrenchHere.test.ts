import { expect, test } from 'vitest'
import type { Wrench } from '../device/settings.ts'
import { RATCHET, readExtension, wrenchElsewhere, wrenchFor, writeExtension } from './wrenchHere.ts'

const small: Wrench = { name: 'Small', number: 'W-1', tells: 'clicks' }
const large: Wrench = { name: 'Large', tells: 'shows' }
const torqued = (tool: object, face = 'pan') => ({ type: 'pass-torqued', body: { face, tool } })

test('the wrench chosen here for the face counts', () => {
  const kept = { wrenches: [small, large], used: { place: 'Large' } }
  expect(wrenchFor(kept, 'place', [torqued({ name: 'Small' })], 'pan')).toBe(large)
})

test('else the one that the record names last for this face, by name or number', () => {
  const kept = { wrenches: [small, large], used: {} }
  expect(wrenchFor(kept, 'place', [torqued({ name: 'Large' }), torqued({ name: 'W', number: 'W-1' })], 'pan')).toBe(
    small,
  )
  expect(wrenchFor(kept, 'place', [torqued({ name: 'Large' }, 'rear')], 'pan')).toBeNull()
  expect(wrenchFor(kept, 'place', [torqued({ name: 'not known here' })], 'pan')).toBeNull()
})

test('a ratchet without a reading can be chosen on every device', () => {
  expect(wrenchFor({ wrenches: [], used: { place: RATCHET.name } }, 'place', [], 'pan')).toBe(RATCHET)
})

test('what sits on the wrench comes back as it was kept', () => {
  const foot = { lever: 300, reach: 38.1, angle: 90 }
  expect(readExtension(writeExtension(foot))).toEqual(foot)
  for (const text of [undefined, '', 'x y z', '300']) expect(readExtension(text), text).toBeNull()
  expect(readExtension(writeExtension(null))).toBeNull()
})

test('a wrench that another device has used is offered as its entries tell of it', () => {
  const dial = { name: 'Dial, crow-foot 38 mm', number: 'W-4', calibratedUntil: '2027-01-31' }
  const named = (number: string) => (number === 'W-4' ? 'Dial' : null)
  expect(wrenchElsewhere([small], [torqued(dial), torqued(dial, 'rear')], named)).toEqual({ ...dial, name: 'Dial' })
  expect(wrenchElsewhere([{ ...small, number: 'W-4' }], [torqued(dial)], named)).toBeNull()
  expect(wrenchElsewhere([], [torqued(dial), torqued({ name: RATCHET.name, byFeel: true })], named)).toBeNull()
  expect(wrenchElsewhere([], [], named)).toBeNull()
})
