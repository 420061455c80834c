import type { Interval } from '../quantity/interval.ts'
import type { Material } from '../unit.ts'

/** What a hole is cut in, or what a head sits on. Stresses in MPa, ratios in bolt diameters. */
export type ParentMaterial = {
  name: string
  /** Shear strength: decides when the hole's thread strips. */
  shear: Interval
  /** Pressure under the head that the seat stands. */
  seatPressure: Interval
  /** Usual engagement of a full-strength bolt in diameters, and the spread that sources show. */
  usualEngagement: number
  /** Young's modulus in MPa: decides how far parts give under a bolt. */
  young: Interval
  engagementSpread: Interval
  /** Where each of the figures comes from. */
  sources: { shear: string; seat: string; engagement: string; young: string }
}

const MATERIALS: readonly (ParentMaterial & { also: readonly string[] })[] = [
  {
    name: 'cast aluminium',
    also: ['aluminium', 'aluminum', 'cast aluminum', 'die-cast aluminium', 'die cast aluminium', 'alloy'],
    shear: { lo: 130, hi: 200 },
    seatPressure: { lo: 220, hi: 290 },
    usualEngagement: 1.5,
    engagementSpread: { lo: 1.3, hi: 2.2 },
    young: { lo: 70_000, hi: 75_000 },
    sources: {
      shear: 'NADCA die-casting alloys 170 to 200, 130 for a softer 310-type casting',
      seat: 'VDI 2230:2003, G-AlSi9Cu3 sand 220, die-cast 290',
      engagement: '1.5 d: US Army, tapped hole in softer metal, other books 1.3 to 2.2 d',
      young: 'A380 71 000 (NADCA), a little to either side',
    },
  },
  {
    name: 'wrought aluminium',
    also: ['wrought aluminum', 'billet aluminium', 'billet aluminum'],
    shear: { lo: 155, hi: 230 },
    seatPressure: { lo: 230, hi: 410 },
    usualEngagement: 1.5,
    engagementSpread: { lo: 1.3, hi: 2.5 },
    young: { lo: 69_000, hi: 73_000 },
    sources: {
      shear: '0.65 of a tensile strength of 240 to 350 MPa (common practice, no source)',
      seat: 'VDI 2230:2003, AlMg4.5Mn 230 to AlZnMgCu1.5 410',
      engagement: '1.5 d: US Army, tapped hole in softer metal',
      young: 'Shigley 9e table 8-8, aluminium 71 000; 6000 to 7000 series (from memory)',
    },
  },
  {
    name: 'grey iron',
    also: ['gray iron', 'cast iron', 'iron'],
    shear: { lo: 200, hi: 350 },
    seatPressure: { lo: 600, hi: 900 },
    usualEngagement: 1.25,
    engagementSpread: { lo: 1, hi: 1.5 },
    young: { lo: 100_000, hi: 110_000 },
    sources: {
      shear: '0.8 to 1.4 of a tensile strength of 250 MPa',
      seat: 'VDI 2230:1986 GG15 600, VDI 2230:2003 GJL-250 900',
      engagement: '1.25 d: VDI-type table for GJL-250, other books 1.0 to 1.5 d',
      young: 'Shigley 9e, 100 000 in table 8-8 (from memory), 16 Mpsi in example 8-5',
    },
  },
  {
    name: 'ductile iron',
    also: ['nodular iron'],
    shear: { lo: 360, hi: 540 },
    seatPressure: { lo: 480, hi: 1000 },
    usualEngagement: 1,
    engagementSpread: { lo: 0.9, hi: 1.5 },
    young: { lo: 165_000, hi: 175_000 },
    sources: {
      shear: '0.9 of a tensile strength of 400 to 600 MPa',
      seat: 'VDI 2230:1986 GGG35 480, VDI 2230:2003 GJS-600 1000 (unverified there)',
      engagement: '1.0 d: common practice, no source',
      young: 'EN 1563 (from memory)',
    },
  },
  {
    name: 'steel',
    also: ['mild steel', 'carbon steel'],
    shear: { lo: 220, hi: 480 },
    seatPressure: { lo: 490, hi: 760 },
    usualEngagement: 1,
    engagementSpread: { lo: 0.8, hi: 1.4 },
    young: { lo: 200_000, hi: 210_000 },
    sources: {
      shear: '0.6 of a tensile strength of 360 to 800 MPa (common practice, no source)',
      seat: 'VDI 2230:2003, S235 490 to S355 760 (the 1986 edition has 260 for the former)',
      engagement: '1.0 d: US Army, tapped hole in the same metal',
      young: 'Shigley 9e, 30 Mpsi in example 8-5; VDI 2230 205 000 (from memory)',
    },
  },
  {
    name: 'magnesium',
    also: ['cast magnesium'],
    shear: { lo: 90, hi: 140 },
    seatPressure: { lo: 140, hi: 280 },
    usualEngagement: 2,
    engagementSpread: { lo: 1.5, hi: 2.5 },
    young: { lo: 43_000, hi: 47_000 },
    sources: {
      shear: 'cast AZ91 (from memory)',
      seat: 'VDI 2230:1986 sand-cast MgAl9 140, VDI 2230:2003 MgAl9Zn1 280 (unverified there)',
      engagement: '2.0 d: studs in aluminium or magnesium under shock',
      young: 'AZ91 45 000 (from memory)',
    },
  },
]

/** Names that can be written. */
export const MATERIAL_NAMES: readonly string[] = MATERIALS.map(({ name }) => name)

/**
 * The parent material of a name, with the user's own better values in place of the ranges. Undefined for a name that is not known, unless the user
 * gives the shear strength: then the rest is that of cast aluminium, the softest common case, and `sources` says so.
 */
export function parentMaterial(material: Material | undefined): ParentMaterial | undefined {
  if (material === undefined) return undefined
  const given = typeof material === 'string' ? { name: material } : material
  const wanted = given.name.trim().toLowerCase()
  const known = MATERIALS.find(({ name, also }) => name === wanted || also.includes(wanted))
  const { shearStrength, limitPressure } = given
  if (!known && shearStrength === undefined) return undefined
  const { also: _, ...base } = known ?? (MATERIALS[0] as (typeof MATERIALS)[number])
  return {
    ...base,
    name: known ? base.name : given.name,
    shear: shearStrength === undefined ? base.shear : { lo: shearStrength, hi: shearStrength },
    seatPressure: limitPressure === undefined ? base.seatPressure : { lo: limitPressure, hi: limitPressure },
    sources: {
      shear: shearStrength === undefined ? base.sources.shear : ENTERED,
      seat: limitPressure === undefined ? asFor(base.sources.seat, known) : ENTERED,
      engagement: asFor(base.sources.engagement, known),
      young: asFor(base.sources.young, known),
    },
  }
}

const ENTERED = 'entered by the user'

function asFor(source: string, known: unknown): string {
  return known ? source : `as for cast aluminium: ${source}`
}

/** The widest shear range over all materials, for a hole whose material nobody has named. */
export const ANY_SHEAR: Interval = {
  lo: Math.min(...MATERIALS.map(({ shear }) => shear.lo)),
  hi: Math.max(...MATERIALS.map(({ shear }) => shear.hi)),
}

/** Usual engagement in diameters where the material is not known: that of a tapped hole in softer metal (US Army). */
export const UNKNOWN_ENGAGEMENT = 1.5
