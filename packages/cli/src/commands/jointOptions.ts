import {
  type BearingRing,
  BOLT_CLASSES,
  bearingRing,
  boltClass,
  CONDITIONS,
  type Condition,
  type Extension,
  type Friction,
  frictionOf,
  HEAD_FORMS,
  type HeadWanted,
  headsFor,
  type Interval,
  intervalOf,
  type JointWanted,
  MATERIAL_NAMES,
  type ParentMaterial,
  parentMaterial,
  type Quantity,
  type Read,
  readLength,
  readThread,
  readTorque,
  statedFriction,
  type Thread,
} from '@gripbook/engine'

export const JOINT_OPTIONS = [
  '--thread',
  '--class',
  '--torque',
  '--material',
  '--seat',
  '--engagement',
  '--friction',
  '--head',
  '--drag',
  '--extension',
] as const
type OptionName = (typeof JOINT_OPTIONS)[number]

/** What to do instead, for each option. */
const INSTEAD: Record<OptionName, string> = {
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
}

/** An option that cannot be used: which, what was found there, and what to write instead. */
export class OptionFault extends Error {
  constructor(option: OptionName, found: string | undefined, note = 'is not understood') {
    const what = found === undefined ? `${option} is missing.` : `${option}: ${JSON.stringify(found)} ${note}.`
    super(`${what} ${INSTEAD[option]}`)
  }
}

export type JointAsked = { wanted: JointWanted; stated: Quantity; unitSlip: boolean }

/** The joint that the options describe. Throws `OptionFault` for the first that cannot be used. */
export function jointAsked(values: ReadonlyMap<string, string>): JointAsked {
  const thread = readThreadOption(values.get('--thread'))
  const mark = values.get('--class')
  const strength = boltClass(mark, thread)
  if (!strength) throw new OptionFault('--class', mark, `is no class that Gripbook knows for ${thread.name}`)
  const text = values.get('--torque')
  if (text === undefined) throw new OptionFault('--torque', undefined)
  const stated = quantityOption('--torque', text, readTorque(text))
  const torque = intervalOf(stated, 'torque')
  if (!(torque.lo > 0)) throw new OptionFault('--torque', text, 'must be above 0')
  if (!(torque.hi <= MOST_TORQUE))
    throw new OptionFault('--torque', text, `must be known and at most ${MOST_TORQUE} N·m`)
  const parent = materialOption('--material', values.get('--material'))
  const seat = materialOption('--seat', values.get('--seat')) ?? parent
  const engagement = engagementOption(values.get('--engagement'), thread)
  const drag = dragOption(values.get('--drag'))
  const extension = extensionOption(values.get('--extension'))
  const wanted: JointWanted = {
    thread,
    strength,
    torque,
    ring: headOption(values.get('--head'), thread),
    friction: frictionOption(values.get('--friction')),
    ...(parent ? { parent } : {}),
    ...(seat ? { seat } : {}),
    ...(engagement ? { engagement } : {}),
    ...(drag === undefined ? {} : { drag }),
    ...(extension ? { extension } : {}),
  }
  const unit = typeof stated === 'number' ? undefined : stated.unit
  return { wanted, stated, unitSlip: unit === 'lbf·ft' || unit === 'ft-lb' }
}

/** No bolt on a gearbox bench takes more: a figure above it is a slip. */
const MOST_TORQUE = 2000

function readThreadOption(text: string | undefined): Thread {
  if (text === undefined) throw new OptionFault('--thread', undefined)
  const read = readThread(text)
  if (!read.ok) throw new OptionFault('--thread', text, 'is no standard thread')
  return read.value
}

function quantityOption(option: OptionName, text: string, read: Read<Quantity>): Quantity {
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

function materialOption(option: '--material' | '--seat', text: string | undefined): ParentMaterial | undefined {
  const material = parentMaterial(text)
  if (text !== undefined && !material) throw new OptionFault(option, text, 'is no material that Gripbook knows')
  return material
}

function engagementOption(text: string | undefined, thread: Thread): Interval | undefined {
  if (text === undefined) return undefined
  const diameters = /^(\d+(?:[.,]\d+)?|\.\d+)\s*[dD]$/.exec(text.trim())
  const mm = diameters
    ? one(Number(diameters[1]!.replace(',', '.')) * thread.diameter)
    : intervalOf(quantityOption('--engagement', text, readLength(text)))
  if (!(mm.lo > 0)) throw new OptionFault('--engagement', text, 'must be above 0')
  if (!(mm.hi <= 10 * thread.diameter)) throw new OptionFault('--engagement', text, 'must be known and at most 10 d')
  return mm
}

function frictionOption(text: string | undefined): Friction {
  if (text === undefined) return frictionOf('unknown')
  const plain = text.trim().toLowerCase()
  const condition =
    CONDITIONS.find((name) => name === plain) ??
    (Object.hasOwn(SHORT_CONDITIONS, plain) ? SHORT_CONDITIONS[plain] : undefined)
  if (condition) return frictionOf(condition)
  const range = /^(\d*[.,]\d+)(?:\s*(?:-|–|to)\s*(\d*[.,]\d+))?$/.exec(plain)
  const number = (part: string): number => Number(part.replace(',', '.'))
  const stated = range ? statedFriction({ lo: number(range[1]!), hi: number(range[2] ?? range[1]!) }) : undefined
  if (!stated) throw new OptionFault('--friction', text)
  return stated
}

const SHORT_CONDITIONS: Record<string, Condition> = {
  oil: 'oiled',
  lubricated: 'oiled',
  sealant: 'thread sealant',
  threadlock: 'thread-lock',
  'thread lock': 'thread-lock',
  'thread locker': 'thread-lock',
}

function headOption(text: string | undefined, thread: Thread): BearingRing {
  const ring = bearingRing(thread, text === undefined ? {} : headWanted(text))
  if (ring) return ring
  const known = [
    ...new Set(
      headsFor(thread).map(({ standard, acrossFlats }) =>
        acrossFlats === undefined ? standard : `${standard} ${acrossFlats} mm`,
      ),
    ),
  ]
  const list = known.length > 0 ? `; for ${thread.name} Gripbook knows ${known.join(', ')}` : ''
  throw new OptionFault('--head', text, `is no head that Gripbook knows for ${thread.name}${list}`)
}

/** "flange", "10 mm", "hex 10", "EN 1665". */
function headWanted(text: string): HeadWanted {
  const plain = text.trim()
  const size = /^(.*?)\s*\b(\d+(?:\.\d+)?)\s*(?:mm)?$/i.exec(plain)
  const form = (size?.[1] ?? plain).trim().toLowerCase()
  const acrossFlats = size ? { acrossFlats: Number(size[2]) } : {}
  if (form === '') return acrossFlats
  if (HEAD_FORMS.includes(form)) return { form, ...acrossFlats }
  return { standard: plain }
}

function dragOption(text: string | undefined): number | undefined {
  if (text === undefined) return undefined
  const { lo, hi } = intervalOf(quantityOption('--drag', text, readTorque(text)), 'torque')
  if (!(hi <= MOST_TORQUE)) throw new OptionFault('--drag', text, `must be known and at most ${MOST_TORQUE} N·m`)
  return (lo + hi) / 2
}

function extensionOption(text: string | undefined): Extension | undefined {
  if (text === undefined) return undefined
  const unit = String.raw`\s*(?:mm|in)?\s*`
  const match = new RegExp(
    String.raw`^(\d+(?:\.\d+)?)${unit}/\s*(\d+(?:\.\d+)?)${unit}(?:@\s*(\d+(?:\.\d+)?)\s*°?)?$`,
  ).exec(text.trim())
  if (!match) throw new OptionFault('--extension', text)
  const [reach, lever, angle] = [Number(match[1]), Number(match[2]), Number(match[3] ?? 0)]
  if (!(lever > 0)) throw new OptionFault('--extension', text, 'needs a wrench length above 0')
  if (angle > 180) throw new OptionFault('--extension', text, 'has an angle above 180°')
  if (lever + reach * Math.cos((angle * Math.PI) / 180) < lever / 10)
    throw new OptionFault('--extension', text, 'turns back to the hand')
  return { reach, lever, angle }
}

function one(value: number): Interval {
  return { lo: value, hi: value }
}
