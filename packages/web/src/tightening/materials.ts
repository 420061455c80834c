/** What covers are made of and what lies in joints, with the figures that are counted with. */

export const MATERIALS = ['aluminium', 'magnesium', 'steel', 'grey iron'] as const
export type Material = (typeof MATERIALS)[number]

/** Modulus of elasticity in MPa and Poisson's ratio: usual figures of the trade's tables, from memory. */
export const ELASTIC: Readonly<Record<Material, { young: number; poisson: number }>> = {
  aluminium: { young: 70_000, poisson: 0.33 },
  magnesium: { young: 45_000, poisson: 0.35 },
  steel: { young: 205_000, poisson: 0.3 },
  'grey iron': { young: 110_000, poisson: 0.26 },
}

export const BEDS = ['cork-rubber', 'paper', 'fibre sheet', 'metal'] as const
export type BedName = (typeof BEDS)[number]

/**
 * Stiffness per area, N/mm³. Gaskets: secant of the pressure over what it presses together by gasket specifications (ASTM F36 test loads: cork-rubber
 * 15–45 % at 2.8 MPa, 3 mm; cellulose paper 25–45 % at 6.9 MPa, 1 mm; aramid sheet 7–17 % at 34.5 MPa, 0.8 mm). Sealant film or metal on metal:
 * common practice, no source.
 */
export const BED_STIFFNESS: Readonly<Record<BedName, { atLeast: number; atMost: number; thickness?: number }>> = {
  'cork-rubber': { atLeast: 2.1, atMost: 6.2, thickness: 3 },
  paper: { atLeast: 15, atMost: 28, thickness: 1 },
  'fibre sheet': { atLeast: 250, atMost: 620, thickness: 0.8 },
  metal: { atLeast: 1_000, atMost: 10_000 },
}

export const SURFACES = ['fine', 'usual', 'rough'] as const
export type Surface = (typeof SURFACES)[number]

/** Rz in µm: one figure within each class of the guide values for embedment (below 10, 10 to 40, 40 to 160). */
export const ROUGHNESS: Readonly<Record<Surface, number>> = { fine: 6, usual: 25, rough: 80 }

export function materialOf(young: number | undefined, poisson: number | undefined): Material | null {
  return MATERIALS.find((name) => ELASTIC[name].young === young && ELASTIC[name].poisson === poisson) ?? null
}

export function surfaceOf(roughness: number): Surface {
  return roughness < 10 ? 'fine' : roughness < 40 ? 'usual' : 'rough'
}
