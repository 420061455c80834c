import type { FaultPath } from '@gripbook/engine'
import { unitsOf } from '@gripbook/engine'
import type { Expected, FileFault } from './fault.ts'
import { type Shapes, shapesOf } from './fields.ts'
import { localFault } from './localFaults.ts'
import { nearestName } from './nearest.ts'
import { at } from './path.ts'
import { quoted } from './quoted.ts'

/** What is used of a schema and of what it finds wrong; the library's own types are wider than the walk below needs. */
type Checked = {
  safeParse: (value: unknown) => { success: boolean; error?: { issues: readonly Issue[] } }
  _zod: { def: object }
}
type Issue = {
  code: string
  path: PropertyKey[]
  keys?: string[]
  values?: readonly (string | boolean)[]
  expected?: string
  minimum?: number
  maximum?: number
  inclusive?: boolean
  params?: { code: string }
}
type Def = {
  innerType?: Checked
  element?: Checked
  valueType?: Checked
  items?: Checked[]
  shape?: Record<string, Checked>
}

/**
 * Everything in a value that a schema finds wrong, in our own faults. Where the schema allows several shapes, the one that the user was
 * writing is told apart first, and the faults speak of that one.
 */
export function schemaFaults(schema: unknown, value: unknown, path: FaultPath = []): FileFault[] {
  const result = (schema as Checked).safeParse(value)
  if (result.success) return []
  const faults: FileFault[] = []
  const told = new Set<string>()
  for (const issue of result.error?.issues ?? []) {
    const here = issue.path as (string | number)[]
    const union = unionOnTheWay(schema as Checked, here)
    if (union) {
      const there = here.slice(0, union.depth)
      const key = JSON.stringify(there)
      if (told.has(key)) continue
      told.add(key)
      faults.push(...faultsOfShapes(union.shapes, at(value, there), [...path, ...there]))
    } else faults.push(...faultsOf(issue, at(value, here), [...path, ...here], schema as Checked, here))
  }
  return faults
}

function faultsOfShapes(shapes: Shapes, value: unknown, path: FaultPath): FileFault[] {
  const chosen = shapes.choose(value)
  if (chosen) return schemaFaults(chosen, value, path)
  if (value === undefined) return [{ code: 'missing-field', path, name: String(path.at(-1) ?? '') }]
  if (shapes.what === 'trial' && typeof value === 'object' && value !== null && !Array.isArray(value)) {
    return [
      {
        code: 'trial-figures',
        path,
        given: ['turns', 'stickOut', 'proud'].filter((name) => Object.hasOwn(value, name)),
      },
    ]
  }
  if (shapes.what === 'quantity' || shapes.what === 'washer') {
    if (typeof value === 'object' && value !== null && !Array.isArray(value)) {
      return [
        {
          code: 'quantity-mixed',
          path,
          fields: ['value', 'nominal', 'atLeast', 'atMost'].filter((name) => Object.hasOwn(value, name)),
        },
      ]
    }
    return [{ code: 'not-a-quantity', path, found: sayValue(value) }]
  }
  return [
    { code: 'wrong-type', path, found: sayValue(value), expected: shapes.what === 'trial' ? 'an object' : 'text' },
  ]
}

/** The first place on an issue's path where the schema allows several shapes. */
function unionOnTheWay(
  schema: Checked,
  path: readonly (string | number)[],
): { shapes: Shapes; depth: number } | undefined {
  let here: Checked | undefined = schema
  for (let depth = 0; here; depth++) {
    here = unwrapped(here)
    const shapes = shapesOf.get(here)
    if (shapes) return { shapes, depth }
    const step = path[depth]
    if (step === undefined) return undefined
    here = inside(here, step)
  }
  return undefined
}

function unwrapped(schema: Checked): Checked {
  let here = schema
  for (let inner = (here._zod.def as Def).innerType; inner; inner = (here._zod.def as Def).innerType) here = inner
  return here
}

function inside(schema: Checked, step: string | number): Checked | undefined {
  const def = schema._zod.def as Def
  if (typeof step === 'number') return def.items?.[step] ?? def.element
  return def.shape ? (Object.hasOwn(def.shape, step) ? def.shape[step] : undefined) : def.valueType
}

function faultsOf(
  issue: Issue,
  value: unknown,
  path: FaultPath,
  schema: Checked,
  inSchema: readonly (string | number)[],
): FileFault[] {
  switch (issue.code) {
    case 'unrecognized_keys': {
      const known = fieldsAt(schema, inSchema)
      return (issue.keys ?? []).map((name) => {
        const near = nearestName(name, known)
        return { code: 'unknown-field', path: [...path, name], name, ...(near === undefined ? {} : { near }) }
      })
    }
    case 'invalid_type':
      return [wrongType(issue, value, path)]
    case 'invalid_value':
      return [wrongWord(issue.values ?? [], value, path)]
    case 'too_small':
      return [tooSmall(issue, value, path)]
    case 'too_big':
      return [tooBig(issue, value, path)]
    case 'custom':
      return [localFault(issue.params?.code ?? '', value, path)]
    default:
      return [{ code: 'wrong-type', path, found: sayValue(value), expected: 'an object' }]
  }
}

/** The names of the fields that the schema knows at a place. */
function fieldsAt(schema: Checked, path: readonly (string | number)[]): string[] {
  let here: Checked | undefined = unwrapped(schema)
  for (const step of path) {
    here = here && inside(here, step)
    here = here && unwrapped(here)
  }
  return Object.keys((here?._zod.def as Def | undefined)?.shape ?? {})
}

const EXPECTED: Record<string, Expected> = {
  string: 'text',
  number: 'a number',
  boolean: 'true or false',
  array: 'a list',
  tuple: 'a pair of numbers',
  object: 'an object',
  record: 'an object',
}

function wrongType(issue: Issue, value: unknown, path: FaultPath): FileFault {
  if (issue.expected === 'int' && typeof value === 'number') return { code: 'not-whole', path, found: value }
  if (value === undefined) return { code: 'missing-field', path, name: String(path.at(-1) ?? '') }
  if (value === Number.POSITIVE_INFINITY || value === Number.NEGATIVE_INFINITY) {
    return { code: 'number-out-of-range', path, found: value > 0 ? 'a number' : 'a negative number' }
  }
  return {
    code: 'wrong-type',
    path,
    found: sayValue(value),
    expected: EXPECTED[issue.expected ?? ''] ?? 'a number',
  }
}

function wrongWord(values: readonly (string | boolean)[], value: unknown, path: FaultPath): FileFault {
  if (value === undefined) return { code: 'missing-field', path, name: String(path.at(-1) ?? '') }
  if (values.includes(true)) return { code: 'wrong-type', path, found: sayValue(value), expected: 'true' }
  const expected = values as readonly string[]
  if (typeof value !== 'string') return { code: 'wrong-type', path, found: sayValue(value), expected: 'text' }
  const found = value.slice(0, 60)
  if (expected.includes('unit/1')) return { code: 'wrong-format', path, found }
  const dimension = (['length', 'torque'] as const).find((one) =>
    (unitsOf(one) as readonly string[]).includes(expected[0]!),
  )
  if (dimension) {
    const known = [...unitsOf('length'), ...unitsOf('torque')] as string[]
    return known.includes(value)
      ? { code: 'wrong-dimension', path, found, expected: dimension }
      : { code: 'unknown-unit', path, found, expected }
  }
  const near = nearestName(found, expected)
  return { code: 'unknown-word', path, found, expected, ...(near === undefined ? {} : { near }) }
}

function tooSmall(issue: Issue, value: unknown, path: FaultPath): FileFault {
  const least = issue.minimum ?? 0
  if (typeof value === 'number') {
    if (issue.inclusive !== true) return { code: 'not-above-zero', path, found: value }
    return least === 0
      ? { code: 'negative', path, found: value }
      : { code: 'too-small', path, found: value, limit: least }
  }
  if (typeof value === 'string') return { code: 'text-empty', path }
  if (least === 2) return { code: 'wrong-type', path, found: sayValue(value), expected: 'a pair of numbers' }
  return { code: 'too-few', path, least }
}

function tooBig(issue: Issue, value: unknown, path: FaultPath): FileFault {
  const limit = issue.maximum ?? 0
  if (typeof value === 'number') return { code: 'too-large', path, found: value, limit }
  if (typeof value === 'string') return { code: 'text-too-long', path, limit }
  if (limit === 2) return { code: 'wrong-type', path, found: sayValue(value), expected: 'a pair of numbers' }
  return { code: 'too-many', path, limit }
}

/** A value in a few words, for a fault that shows what was found. */
function sayValue(value: unknown): string {
  if (value === null) return 'null'
  if (Array.isArray(value)) return `a list of ${value.length}`
  if (typeof value === 'object') return 'an object'
  return typeof value === 'string' ? quoted(value) : String(value)
}
