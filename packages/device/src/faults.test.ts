import { expect, test } from 'vitest'
import { DEVICE_FAULTS, DeviceFault, type DeviceFaultCode, refusalWords, storageFault } from './faults.ts'

test('every fault has words that are a sentence', () => {
  for (const code of Object.keys(DEVICE_FAULTS) as DeviceFaultCode[])
    expect(new DeviceFault(code).message).toMatch(/^[A-Z].*\.$/)
})

test('what the database fails at is told by its reason, also when that lies within an aborted transaction', () => {
  const named = (name: string, inner?: object) => Object.assign(new Error(name), { name, inner })
  expect(storageFault(named('AbortError', named('QuotaExceededError'))).code).toBe('storage-full')
  expect(storageFault(named('VersionError')).code).toBe('newer-version')
  expect(storageFault(named('DatabaseClosedError')).code).toBe('storage-closed')
  expect(storageFault(named('UnknownError')).code).toBe('storage-failed')
  expect(storageFault('nothing known').code).toBe('storage-failed')
  const fault = new DeviceFault('bad-entry', { path: 'text' })
  expect(storageFault(fault)).toBe(fault)
})

test('a refusal that is not in the list is named by its code', () => {
  expect(refusalWords({ code: 'not-allowed', facts: {} })).toBe('Your role does not allow it.')
  expect(refusalWords({ code: 'of-tomorrow', facts: {} })).toContain('of-tomorrow')
})
