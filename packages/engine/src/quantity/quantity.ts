/**
 * A quantity as it was entered: value, tolerance and unit are kept, never converted in place.
 * `also` is the same figure in a second unit, as many manuals print it; the two are checked against each other.
 */
export type LengthUnit = 'mm' | 'in'
export type TorqueUnit = 'N·m' | 'Nm' | 'lbf·ft' | 'ft-lb' | 'lbf·in' | 'kgf·m'
export type UnitName = LengthUnit | TorqueUnit

export type Figure = { value: number; plusMinus?: number; unit?: UnitName }
export type Quantity =
  | number
  | (Figure & { also?: Figure })
  | { atLeast?: number; atMost?: number; unit?: UnitName }
  | { nominal: number; unit?: UnitName }
