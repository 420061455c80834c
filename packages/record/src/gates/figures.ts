/** Figures with a limit: end play, coil resistance, flatness. */
import { sizeOf, type UnitName } from '@gripbook/engine'
import type { FoldedUnit } from '../unit.ts'
import { own } from './own.ts'
import type { Open } from './stop.ts'

type Limit = { least?: number; most?: number; unit: string }
type Figure = { value: number; unit: string }

/** The names of all figures with a limit. */
export function limited(things: FoldedUnit['things']): string[] {
  return Object.keys(things.limit)
}

/** What is open of a figure, or undefined: waived, or its last reading since teardown as it was shown is inside the limit. */
export function openFigure(things: FoldedUnit['things'], reading: string): Open | undefined {
  const { waived, during, after } = own(things.reading, reading) ?? {}
  const limit = own(things.limit, reading)?.limit?.value as Limit | undefined
  if (waived !== undefined || limit === undefined) return undefined
  const figure = (after ?? during)?.value as Figure | undefined
  if (figure === undefined) return { why: { code: 'figure-not-taken', reading } }
  const lies = heldAgainst(figure, limit)
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

/** Taken since teardown, or waived. */
export function isRead(things: FoldedUnit['things'], reading: string): boolean {
  const { waived, during, after } = own(things.reading, reading) ?? {}
  return (waived ?? during ?? after) !== undefined
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
