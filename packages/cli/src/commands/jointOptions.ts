import {
  type BearingRing,
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
  type ParentMaterial,
  parentMaterial,
  type Quantity,
  readLength,
  readThread,
  readTorque,
  statedFriction,
  type Thread,
} from '@gripbook/engine'
import type { KnownJoint } from './benchChecks.ts'
import { type BenchAsked, benchAsked } from './benchOptions.ts'
import { OptionFault, quantityOption } from './jointOptionFault.ts'

/** A stated torque and the joint it is for. */
export type TorqueAsked = { wanted: JointWanted; stated: Quantity; unitSlip: boolean }

/** What the options ask: a torque, something beside it, or both. `thread` is absent where only a socket is asked for. */
export type JointAsked = {
  thread?: Thread
  torque?: TorqueAsked
  bench: BenchAsked
  /** What is known of the joint, with or without a torque. */
  known?: KnownJoint
}

/** What the options ask. Throws `OptionFault` for the first that cannot be used. */
export function jointAsked(values: ReadonlyMap<string, string>): JointAsked {
  if (values.has('--socket') && values.size === 1) return { bench: benchAsked(values, undefined) }
  const thread = readThreadOption(values.get('--thread'))
  const mark = values.get('--class')
  const strength = boltClass(mark, thread)
  if (!strength) throw new OptionFault('--class', mark, `is no class that Gripbook knows for ${thread.name}`)
  const text = values.get('--torque')
  if (text === undefined) torqueNotNeeded(values)
  const stated = text === undefined ? undefined : statedTorque(text)
  const parent = materialOption('--material', values.get('--material'))
  const seat = materialOption('--seat', values.get('--seat')) ?? parent
  const engagement = engagementOption(values.get('--engagement'), thread)
  const drag = dragOption(values.get('--drag'))
  const extension = extensionOption(values.get('--extension'))
  const ring = headOption(values.get('--head'), thread)
  const friction = frictionOption(values.get('--friction'))
  const bench = benchAsked(values, thread)
  const known: KnownJoint = {
    strength,
    ring,
    ...(parent ? { parent } : {}),
    ...(seat ? { seat } : {}),
    ...(engagement ? { engagement } : {}),
  }
  if (stated === undefined) return { thread, bench, known }
  const deviation = bench.wrench?.deviation
  const wanted: JointWanted = {
    thread,
    torque: intervalOf(stated, 'torque'),
    friction,
    ...known,
    ...(deviation === undefined ? {} : { deviation }),
    ...(drag === undefined ? {} : { drag }),
    ...(extension ? { extension } : {}),
  }
  const unit = typeof stated === 'number' ? undefined : stated.unit
  return { thread, bench, known, torque: { wanted, stated, unitSlip: unit === 'lbf·ft' || unit === 'ft-lb' } }
}

/** Questions that stand without a torque. */
const ALONE = ['--angle', '--stick-out', '--new-length', '--length-now', '--socket'] as const
/** Options that say something about a torque only. */
const OF_TORQUE = ['--friction', '--drag', '--extension', '--wrench', '--swivel'] as const

function torqueNotNeeded(values: ReadonlyMap<string, string>): void {
  const one = OF_TORQUE.find((option) => values.has(option))
  const alone = ALONE.some((option) => values.has(option))
  if (one && alone) throw new OptionFault('--torque', undefined, `${one} needs it`)
  // an option that says more about a question asks for that one first
  if (!alone) {
    benchAsked(values, undefined)
    throw new OptionFault('--torque', undefined)
  }
}

function statedTorque(text: string): Quantity {
  const stated = quantityOption('--torque', text, readTorque(text))
  const torque = intervalOf(stated, 'torque')
  if (!(torque.lo > 0)) throw new OptionFault('--torque', text, 'must be above 0')
  if (!(torque.hi <= MOST_TORQUE))
    throw new OptionFault('--torque', text, `must be known and at most ${MOST_TORQUE} N·m`)
  return stated
}

/** No bolt on a gearbox bench takes more: a figure above it is a slip. */
const MOST_TORQUE = 2000

function readThreadOption(text: string | undefined): Thread {
  if (text === undefined) throw new OptionFault('--thread', undefined)
  const read = readThread(text)
  if (!read.ok) throw new OptionFault('--thread', text, 'is no standard thread')
  return read.value
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
