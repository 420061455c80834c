import type { Place } from './shapes.ts'

/** What the pictures need of a unit file. */
export type Unit = { readonly faces: readonly { readonly id: string; readonly holes: readonly Hole[] }[] }

type Hole = { readonly id: string; readonly at: Place; readonly grip?: number | { readonly value: number } }

export type Seat = { readonly id: string; readonly at: Place; readonly grip: number }

/** A seat without a grip in the file is taken to lie in the middle of the others. */
export function seatsOf(unit: Unit, face: string): Seat[] {
  const holes = unit.faces.find(({ id }) => id === face)?.holes ?? []
  return holes.map(({ id, at, grip }) => ({ id, at, grip: typeof grip === 'number' ? grip : (grip?.value ?? 23) }))
}
