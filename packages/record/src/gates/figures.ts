/** Figures with a limit: end play, coil resistance, flatness. */
import { sizeOf, type UnitName } from '@gripbook/engine'
import type { FoldedUnit } from '../unit.ts'
import { own } from './own.ts'
import { lastReading } from './reopened.ts'
import type { Done } from './standing.ts'
import type { Open } from './stop.ts'

type Limit = { least?: number; most?: number; unit: string }
type Figure = { value: number; unit: string }

/** The names of all figures with a limit. */
export function limited(things: FoldedUnit['things']): string[] {
  return Object.keys(things.limit)
}

/** What is open of a figure, or undefined: waived, or its last reading since teardown as it was shown is inside the limit. */
export function openFigure(standing: readonly Done[], things: FoldedUnit['things'], reading: string): Open | undefined {
  const waived = own(things.reading, reading)?.waived
  const limit = own(things.limit, reading)?.limit?.value as Limit | undefined
  if (waived !== undefined || limit === undefined) return undefined
  const last = lastReading(standing, things, reading)
  if (last === undefined) return { why: { code: 'figure-not-taken', reading } }
  if (last.before !== undefined) return { why: { code: 'figure-before-opening', reading, face: last.before.face } }
  const lies = heldAgainst(last.value as Figure, limit)
  return lies === 'inside'
    ? undefined
    : { why: { code: lies === 'outside' ? 'figure-outside' : 'figure-in-other-unit', reading } }
}

/** Where a figure lies as it was shown, whatever its unit where the two go together. */
export function heldAgainst(figure: Figure, limit: Limit): 'inside' | 'outside' | 'other unit' {
  const size = sizeIn(figure.unit, limit.unit)
  if (size === undefined) return 'other unit'
  const value = figure.value * size
  const { least = Number.NEGATIVE_INFINITY, most = Number.POSITIVE_INFINITY } = limit
  return value < least || value > most ? 'outside' : 'inside'
}

/** What is open of a figure that must be there, whatever it is: taken since teardown, or waived. */
export function openReading(
  standing: readonly Done[],
  things: FoldedUnit['things'],
  reading: string,
): Open | undefined {
  if (own(things.reading, reading)?.waived !== undefined) return undefined
  return lastReading(standing, things, reading) === undefined
    ? { why: { code: 'figure-not-taken', reading } }
    : openFigure(standing, things, reading)
}

/** By what a figure is multiplied to be in the other unit; undefined where that is not known. */
export function sizeIn(from: string, to: string): number | undefined {
  if (from === to) return 1
  for (const dimension of ['length', 'torque'] as const) {
    const a = sizeOf(from as UnitName, dimension)
    const b = sizeOf(to as UnitName, dimension)
    if (a !== undefined && b !== undefined) return a / b
  }
  return undefined
}
