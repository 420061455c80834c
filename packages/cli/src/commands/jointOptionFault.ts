import {
  BOLT_CLASSES,
  CONDITIONS,
  HEAD_FORMS,
  type Interval,
  intervalOf,
  MATERIAL_NAMES,
  type Quantity,
  type Read,
  readLength,
} from '@gripbook/engine'

/** How a bolt came to rest, as it can be written. */
export const RESTS = ['hard stop', 'tight all the way', 'springy', 'head on its seat'] as const

/** Every option with a value, and what to write for it. */
const INSTEAD = {
  '--thread': 'Write a size such as M6, M8x1 or 5/16-18 UNC.',
  '--class': `Write the head mark: ${BOLT_CLASSES.join(', ')}, or "no mark".`,
  '--torque': 'Write a torque such as "10 N·m", "20 lbf·ft" or "9 to 11 N·m".',
  '--material': `Write one of: ${MATERIAL_NAMES.join(', ')}.`,
  '--seat': `Write one of: ${MATERIAL_NAMES.join(', ')}.`,
  '--engagement': 'Write a length such as "9 mm", "9 ± 0.5 mm" or "1.5 d".',
  '--friction': `Write one of: ${CONDITIONS.join(', ')}; or a coefficient such as 0.12 or 0.10-0.16.`,
  '--head': `Write a form (${HEAD_FORMS.join(', ')}), a size across flats such as "10 mm", or a standard such as "EN 1665".`,
  '--drag': 'Write the torque felt before the head seats, such as "1.5 N·m".',
  '--extension': 'Write reach/wrench length, such as 50/300 (mm), with the angle when it is not in line: 50/300@90.',
  '--wrench': 'Write the range on its label, such as "4 to 20 N·m".',
  '--deviation': 'Write what its certificate states, such as "3 %".',
  '--calibrated': 'Write the day of its last calibration as year-month-day, such as 2026-03-01.',
  '--calibrated-for': 'Write for how many months a calibration counts, such as 6.',
  '--swivel': 'Write the angle of the swivel in degrees, such as 20.',
  '--angle': 'Write the degrees to turn after snug or after the torque, such as 90, or a range such as 85-95.',
  '--clamped': 'Write the thickness of all that is clamped under the head, such as "30 mm".',
  '--shank': 'Write the length of the bolt without thread within the clamped parts, such as "12 mm".',
  '--stick-out': 'Write the bolt length past the joint face, such as "14.5 ± 0.5 mm".',
  '--mouth': 'Write the depth before the first full thread, such as "1 mm".',
  '--tip': 'Write the length of the tip without full thread, such as "1 to 2 mm".',
  '--bottom': 'Write the depth of the hole from the joint face to its bottom, such as "22 mm".',
  '--turns': 'Write the turns counted from the first bite of the thread, such as 6.5.',
  '--rest': `Write one of: ${RESTS.join(', ')}.`,
  '--new-length': 'Write the length of a new one, such as "45 ± 0.05 mm", "nominal 45 mm" or "at most 45.5 mm".',
  '--length-now': 'Write the length of the bolt as measured, such as "45.3 ± 0.05 mm".',
  '--socket': 'Write the size across flats of the socket, such as "10 mm" or "1/2 in".',
} as const

export type OptionName = keyof typeof INSTEAD
export const JOINT_OPTIONS = Object.keys(INSTEAD) as OptionName[]

/** An option that cannot be used: which, what was found there, and what to write instead. Not found: why it is needed, where that is to be said. */
export class OptionFault extends Error {
  constructor(option: OptionName, found: string | undefined, note?: string) {
    const what =
      found === undefined
        ? `${option} is missing${note === undefined ? '' : `, ${note}`}.`
        : `${option}: ${JSON.stringify(found)} ${note ?? 'is not understood'}.`
    super(`${what} ${INSTEAD[option]}`)
  }
}

/** The quantity that was read, or the fault in words. */
export function quantityOption(option: OptionName, text: string, read: Read<Quantity>): Quantity {
  if (read.ok) return read.value
  const fault = read.faults[0]
  if (fault.code === 'unknown-unit')
    throw new OptionFault(option, text, `has a unit that is not known, ${JSON.stringify(fault.found)}`)
  if (fault.code === 'wrong-dimension')
    throw new OptionFault(option, text, `is in ${fault.found}, which measures something else`)
  if (fault.code === 'two-figures-disagree')
    throw new OptionFault(option, text, 'gives two figures that do not agree, look in the book again')
  if (fault.code === 'negative') throw new OptionFault(option, text, 'is below 0')
  if (fault.code === 'ends-crossed') throw new OptionFault(option, text, 'has its ends crossed')
  throw new OptionFault(option, text)
}

/** A length in mm of which the most is known and at most `most`. */
export function lengthOption(option: OptionName, text: string, most: number): Interval {
  const mm = intervalOf(quantityOption(option, text, readLength(text)))
  if (!(mm.hi <= most)) throw new OptionFault(option, text, `must be known and at most ${most} mm`)
  return mm
}
