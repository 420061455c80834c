/** What stops the record on a device, and what is wrong with a figure that was typed. */
import type { DeviceFaultCode } from '@gripbook/device'
import { DEVICE_FAULTS } from '@gripbook/device'
import type { Fault } from '@gripbook/engine'

export const faults: Record<DeviceFaultCode, string> = DEVICE_FAULTS

const NEEDS: Record<'cover' | 'bed' | 'place' | 'two bolts', string> = {
  cover: 'Draw the cover first.',
  bed: 'Say what lies in the joint.',
  place: 'This hole has no place in millimetres yet. Mark it on the face.',
  'two bolts': 'An order needs at least two bolts.',
}

/** mm of the face, whole: it is to be found by eye. */
const place = ([x, y]: readonly [number, number]) => `${Math.round(x)} mm across, ${Math.round(y)} mm up`
const length = (millimetres: number) => `${Number(millimetres.toFixed(1))} mm`

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
  'tightening-needs': ({ missing }) => NEEDS[missing],
  'bed-not-above-zero': () => 'A joint without any stiffness carries nothing. Give a figure above zero.',
  'outline-crosses-itself': ({ near }) =>
    `The outline crosses itself near ${place(near)}. Drag the corners there apart.`,
  'outline-without-area': () => 'The corners lie in one line: there is no area between them.',
  'opening-leaves-cover': ({ near }) => `It leaves the cover near ${place(near)}.`,
  'openings-cross': ({ other, near }) => `It crosses number ${other + 1} near ${place(near)}.`,
  'bolt-outside-cover': ({ at }) => `This hole lies outside the cover, at ${place(at)}.`,
  'bolt-in-opening': ({ at, opening }) => `This hole lies in opening ${opening + 1}, at ${place(at)}.`,
  'bolts-at-one-place': ({ other, apart, least }) =>
    `This hole lies ${length(apart)} from hole ${other}: closer than ${length(least)} no two bolts stand.`,
  'line-leaves-cover': ({ near }) => `It leaves the cover near ${place(near)}.`,
  'nothing-to-lie-on': () => 'The hollows leave nothing for the cover to lie on.',
  'cover-too-soft': () => 'So thin a cover on so stiff a bed: no bolt would feel the next. Look both figures up again.',
  'cover-too-stiff': () => 'So thick a cover on so soft a bed: it lies as a block. Look both figures up again.',
}
