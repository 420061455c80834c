import type { LengthUnit, TorqueUnit, UnitName } from './quantity.ts'

/** Millimetres in one of the unit. The inch is 25.4 mm by definition (international yard and pound agreement, 1959). */
export const MILLIMETRES_IN: Record<LengthUnit, number> = { mm: 1, in: 25.4 }

const POUND_FORCE = 0.45359237 * 9.80665 // N, by definition of the pound and of standard gravity
const FOOT = 0.3048 // m, by definition

/** Newton metres in one of the unit, exact to definition (1 lbf·ft = 1.3558179483314004 N·m). */
export const NEWTON_METRES_IN: Record<TorqueUnit, number> = {
  N·m: 1,
  Nm: 1,
  lbf·ft: POUND_FORCE * FOOT,
  'ft-lb': POUND_FORCE * FOOT,
  lbf·in: (POUND_FORCE * FOOT) / 12,
  kgf·m: 9.80665,
}

export const LENGTH_UNITS = Object.keys(MILLIMETRES_IN) as LengthUnit[]
export const TORQUE_UNITS = Object.keys(NEWTON_METRES_IN) as TorqueUnit[]

export type Dimension = 'length' | 'torque'

export function unitsOf(dimension: Dimension): readonly UnitName[] {
  return dimension === 'length' ? LENGTH_UNITS : TORQUE_UNITS
}

/** Size of one of the unit in the dimension's own unit (mm or N·m), or undefined when the unit measures something else. */
export function sizeOf(unit: UnitName, dimension: Dimension): number | undefined {
  return dimension === 'length' ? MILLIMETRES_IN[unit as LengthUnit] : NEWTON_METRES_IN[unit as TorqueUnit]
}
