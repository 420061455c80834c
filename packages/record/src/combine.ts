/**
 * What the unit shows of a field of the unit file while its entries contradict each other: never one of them as if it held, and never anything that
 * would exclude what one of them allows. An answer computed from it may be wider than it will be once the clash is settled, not wrong.
 */
import { type Dimension, intervalOf, type Quantity, type Washer } from '@gripbook/engine'
import type { Json } from './events/json.ts'
import { LIMITS } from './unitFile/limits.ts'

export type Owner = 'unit' | 'face' | 'hole' | 'kind'

const LENGTHS: Record<Owner, ReadonlySet<string>> = {
  unit: new Set(),
  face: new Set(['gasket', 'minimumEngagement']),
  hole: new Set(['grip', 'bracket', 'gasket', 'mouth', 'threadDepth', 'bottomDepth', 'behind', 'minimumEngagement']),
  kind: new Set(['length', 'threadLength', 'tip', 'washer']),
}
/** Absent means none of it, in the unit file. */
const ABSENT_IS_0 = new Set(['bracket', 'mouth', 'washer'])

/** The value to show, or undefined to leave the field out. A null among the values: made unknown. */
export function combined(owner: Owner, field: string, values: readonly Json[]): Json | undefined {
  if (field === 'thread') return allCandidates(values as (string | string[])[])
  if (field === 'torque') return hull(values as Quantity[], 'torque')
  if (!LENGTHS[owner].has(field)) return undefined
  const given = values.map((value) => (value === null && ABSENT_IS_0.has(field) ? 0 : value))
  return hull(given.map((value) => (field === 'washer' ? thicknessOf(value as Washer) : value)) as Quantity[], 'length')
}

function hull(quantities: readonly (Quantity | null)[], dimension: Dimension): Json | undefined {
  let lo = Number.POSITIVE_INFINITY
  let hi = 0
  for (const quantity of quantities) {
    const ends = intervalOf(quantity ?? undefined, dimension)
    lo = Math.min(lo, ends.lo)
    hi = Math.max(hi, ends.hi)
  }
  if (hi <= LIMITS.length) return { atLeast: lo, atMost: hi }
  return lo > 0 ? { atLeast: lo } : undefined
}

function allCandidates(threads: readonly (string | string[] | null)[]): Json | undefined {
  const each = [...new Set(threads.flatMap((thread) => thread ?? []))]
  // a list that the unit file would refuse is left out: the hole is then told as one without a thread
  return each.length === 0 || each.length > LIMITS.words ? undefined : each
}

function thicknessOf(washer: Washer): Quantity {
  return typeof washer === 'object' && 'thickness' in washer ? washer.thickness : washer
}
