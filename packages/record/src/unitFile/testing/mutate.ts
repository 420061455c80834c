/** Damage to unit files, as slips, half-saved files and mischief do it. Everything follows from the seed of the random stream. */
import { pick, type Random } from './random.ts'

const ODD_NUMBERS = [-1, 0, -0, 0.1, 1e-300, 1e-12, 1e9, 1e21, 1e300, 1.5, 2 ** 53, 99_999, 3, 12, 40]
const ODD_TEXTS = [
  '',
  ' ',
  '1',
  'b1',
  'none',
  'M6',
  'M8x1',
  'mm',
  'in',
  'N·m',
  '__proto__',
  'constructor',
  'toString',
  '變速機',
  '\u001b[2J',
  'a'.repeat(500),
  '💥',
  '../..',
  'true',
]
const ODD_VALUES: unknown[] = [
  null,
  true,
  false,
  [],
  {},
  [[]],
  { value: 3 },
  { atLeast: 3 },
  { nominal: 20 },
  { value: 1, unit: 'in' },
  { atLeast: 5, atMost: 1 },
]
const FIELDS = [
  'id',
  'thread',
  'grip',
  'length',
  'asFound',
  'holes',
  'kinds',
  'faces',
  'count',
  'unit',
  'value',
  'atLeast',
  'atMost',
  'nominal',
  'gripp',
  '__proto__',
  'constructor',
  'tip',
  'threadDepth',
  'mouth',
  'turns',
  'bottomDepth',
  'washer',
  'gasket',
  'minimumEngagement',
  'torque',
  'ending',
]

type Place = { parent: Record<string, unknown> | unknown[]; step: string | number }

function places(value: unknown, found: Place[] = []): Place[] {
  if (typeof value !== 'object' || value === null) return found
  for (const step of Array.isArray(value) ? value.keys() : Object.keys(value)) {
    const parent = value as Record<string, unknown>
    found.push({ parent, step })
    places(parent[step as string], found)
  }
  return found
}

function oddValue(random: Random): unknown {
  const roll = random()
  if (roll < 0.4) return pick(random, ODD_NUMBERS)
  if (roll < 0.55) return Number((random() * 60).toFixed(1))
  return roll < 0.75 ? pick(random, ODD_TEXTS) : structuredCopy(pick(random, ODD_VALUES))
}

function structuredCopy(value: unknown): unknown {
  return JSON.parse(JSON.stringify(value))
}

/** Changes a value in one place: taken out, put twice, renamed, swapped with another, or given something odd. */
function hurtStructure(value: unknown, random: Random): void {
  const all = places(value)
  if (all.length === 0) return
  const { parent, step } = pick(random, all)
  const other = pick(random, all)
  const here = parent as Record<string | number, unknown>
  const roll = random()
  if (roll < 0.15) {
    if (Array.isArray(parent)) parent.splice(step as number, 1)
    else delete here[step]
  } else if (roll < 0.3) {
    if (Array.isArray(parent)) parent.splice(step as number, 0, structuredCopy(parent[step as number] ?? null))
    else put(here, pick(random, FIELDS), structuredCopy(here[step] ?? null))
  } else if (roll < 0.42 && !Array.isArray(parent)) {
    const kept = here[step]
    delete here[step]
    put(here, random() < 0.5 ? pick(random, FIELDS) : `${String(step)}x`, kept)
  } else if (roll < 0.6) {
    const copy = structuredCopy((other.parent as Record<string | number, unknown>)[other.step] ?? null)
    put(here, step, copy)
  } else if (roll < 0.7 && typeof here[step] === 'number') {
    here[step] = (here[step] as number) * pick(random, [-1, 0.1, 10, 25.4, 1.01])
  } else put(here, step, oddValue(random))
}

/** Fields without which no file is read. */
const NEEDED = [
  'gripbook',
  'faces',
  'holes',
  'id',
  'thread',
  'hole',
  'kind',
  'quantity',
  'less',
  'more',
  'value',
  'thickness',
  'share',
  'sequence',
  'form',
  'outline',
  'name',
]

/** Changes a value in one place so that the file is likely to be read still: another figure, a field left out, a value from a like place. */
function misread(value: unknown, random: Random): void {
  const all = places(value)
  const { parent, step } = pick(random, all)
  const here = parent as Record<string | number, unknown>
  const alike = all.filter((place) => place.step === step && typeof step === 'string')
  if (typeof here[step] === 'number')
    here[step] = Number(((here[step] as number) * pick(random, [0, 0.1, 0.5, 0.9, 1.01, 1.5, 10, 25.4])).toFixed(3))
  else if (random() < 0.5 && alike.length > 1) {
    const other = pick(random, alike)
    put(here, step, structuredCopy((other.parent as Record<string | number, unknown>)[other.step]))
  } else if (typeof step === 'string' && !NEEDED.includes(step)) delete here[step]
}

/** Sets a field, also one that is named like something built in. */
function put(into: Record<string | number, unknown>, name: string | number, value: unknown): void {
  Object.defineProperty(into, name, { value, enumerable: true, configurable: true, writable: true })
}

/** Damages the text itself: cut short, signs changed, a piece put twice, nested deep, or not text of this kind at all. */
function hurtText(text: string, random: Random): string {
  const at = Math.floor(random() * text.length)
  const to = Math.min(text.length, at + Math.floor(random() * 40))
  const roll = random()
  if (roll < 0.25) return text.slice(0, at)
  if (roll < 0.45)
    return (
      text.slice(0, at) +
      pick(random, ['"', '{', '}', '[', ']', ',', ':', '\\', '\u0000', '9', '-', 'e', ' ', 'NaN', '1e999']) +
      text.slice(to)
    )
  if (roll < 0.6) return text.slice(0, to) + text.slice(at)
  if (roll < 0.7) return text.slice(0, at) + '['.repeat(Math.floor(random() * 5000)) + text.slice(at)
  if (roll < 0.8) return text.slice(0, at) + 'x'.repeat(Math.floor(random() * 20_000)) + text.slice(at)
  if (roll < 0.9) return `\uFEFF${text.slice(at)}`
  return Array.from({ length: Math.floor(random() * 200) }, () => String.fromCharCode(Math.floor(random() * 300))).join(
    '',
  )
}

/** A damaged copy of a valid file's text. */
export function mutated(text: string, random: Random): string {
  const value: unknown = JSON.parse(text)
  const times = 1 + Math.floor(random() * 3)
  if (random() < 0.15) {
    for (let i = 0; i < times + 2; i++) misread(value, random)
    return JSON.stringify(value)
  }
  for (let i = 0; i < times; i++) hurtStructure(value, random)
  const damaged = JSON.stringify(value, null, random() < 0.5 ? 2 : 0)
  return random() < 0.2 ? hurtText(damaged, random) : damaged
}
