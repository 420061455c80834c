import { expect, test } from 'vitest'
import type { Wrench } from '../device/settings.ts'
import { RATCHET, readExtension, wrenchFor, writeExtension } from './wrenchHere.ts'

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
