/** What stops the record on a device, and what is wrong with a figure that was typed. */
import type { DeviceFaultCode } from '@gripbook/device'
import { DEVICE_FAULTS } from '@gripbook/device'
import type { Fault } from '@gripbook/engine'

export const faults: Record<DeviceFaultCode, string> = DEVICE_FAULTS

export const figureFaults: { [C in Fault['code']]: (fault: Extract<Fault, { code: C }>) => string } = {
  'not-a-thread': ({ found }) => `“${found}” is no thread. Write M6, M8×1 or 1/4-20.`,
  'not-a-length': ({ found }) => `“${found}” is no length. Write 31.9, 31.9 ± 0.1, 1 1/4 in or 11 to 13.`,
  'not-a-torque': ({ found }) => `“${found}” is no torque. Write 10, 20 lbf·ft or 9 to 11.`,
  'unknown-unit': ({ found, expected }) => `“${found}” is no unit here. Take ${expected.join(', ')}.`,
  'wrong-dimension': ({ found, expected }) => `${found} does not measure a ${expected}.`,
  negative: ({ found }) => `${found} is below zero.`,
  'ends-crossed': ({ atLeast, atMost }) => `${atLeast} is more than ${atMost}: the smaller one goes first.`,
  'two-figures-disagree': ({ value, unit, also, alsoUnit }) =>
    `${value} ${unit} and ${also} ${alsoUnit} are not the same: one of them is a slip.`,
}
