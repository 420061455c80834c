import type { Thread } from './thread.ts'

/**
 * By pitch, in µm: fundamental deviation g, and the tolerances of grade 6 of the bolt's major and the hole's minor diameter.
 * @source ISO 965-1, tables of fundamental deviations, TD1 and Td (from memory; every row from P 0.7 to 2 confirmed by seen limits)
 */
const BY_PITCH: Readonly<Record<string, readonly [es: number, td: number, tD1: number]>> = {
  0.5: [20, 106, 140],
  0.6: [21, 125, 160],
  0.7: [22, 140, 180],
  0.75: [22, 140, 190],
  0.8: [24, 150, 200],
  1: [26, 180, 236],
  1.25: [28, 212, 265],
  1.5: [32, 236, 300],
  1.75: [34, 265, 335],
  2: [38, 280, 375],
  2.5: [42, 335, 450],
  3: [48, 375, 500],
  3.5: [53, 425, 560],
  4: [60, 475, 600],
}

/**
 * By diameter step and pitch, in µm: tolerances of grade 6 of the bolt's and of the hole's pitch diameter.
 * @source ISO 965-1, tables of Td2 and TD2 (from memory; the rows met by M4 to M16 confirmed by seen limits)
 */
const STEPS: readonly {
  upTo: number
  middle: number
  rows: Readonly<Record<string, readonly [td2: number, tD2: number]>>
}[] = [
  { upTo: 2.8, middle: Math.sqrt(1.4 * 2.8), rows: {} },
  {
    upTo: 5.6,
    middle: Math.sqrt(2.8 * 5.6),
    rows: { 0.5: [75, 100], 0.6: [85, 112], 0.7: [90, 118], 0.75: [90, 118], 0.8: [95, 125] },
  },
  {
    upTo: 11.2,
    middle: Math.sqrt(5.6 * 11.2),
    rows: { 0.75: [100, 132], 1: [112, 150], 1.25: [118, 160], 1.5: [132, 180] },
  },
  {
    upTo: 22.4,
    middle: Math.sqrt(11.2 * 22.4),
    rows: { 1: [118, 160], 1.25: [132, 180], 1.5: [140, 190], 1.75: [150, 200], 2: [160, 212], 2.5: [170, 224] },
  },
  {
    upTo: 45,
    middle: Math.sqrt(22.4 * 45),
    rows: { 1: [125, 170], 1.5: [150, 200], 2: [170, 224], 3: [200, 265], 3.5: [212, 280], 4: [224, 300] },
  },
  { upTo: 90, middle: Math.sqrt(45 * 90), rows: {} },
]

/** Where limits come from: the standard's rounded table, or its formula where the table's row is not known here. */
export type LimitBasis = 'table' | 'formula'

/** Tolerances of 6g and 6H in mm. */
export type MetricTolerances = {
  allowance: number
  boltMajor: number
  boltPitch: number
  holePitch: number
  holeMinor: number
  basis: LimitBasis
}

/**
 * Tolerances of 6g and 6H in mm for a metric thread: the standard's table where its row is known here, else its formulas, which the
 * standard rounds to preferred numbers (worst case met: 172 µm for a table value of 180). `basis` says which.
 * @source ISO 965-1; formulas es = −(15 + 11·P), Td = 180·P^(2/3) − 3.15/√P, TD1 = 230·P^0.7 (P ≥ 1) or 433·P − 190·P^1.22, Td2 = 90·P^0.4·d^0.1,
 * TD2 = 1.32·Td2, in µm with P and the middle d of the step in mm (from memory)
 */
export function metricTolerances({ diameter, pitch }: Thread): MetricTolerances {
  const byPitch = BY_PITCH[pitch]
  const step = STEPS.find(({ upTo }) => diameter <= upTo)
  const byStep = step?.rows[pitch]
  if (byPitch && byStep) {
    const [es, td, tD1] = byPitch
    const [td2, tD2] = byStep
    return {
      allowance: es / 1000,
      boltMajor: td / 1000,
      boltPitch: td2 / 1000,
      holePitch: tD2 / 1000,
      holeMinor: tD1 / 1000,
      basis: 'table',
    }
  }
  const td2 = 90 * pitch ** 0.4 * (step?.middle ?? diameter) ** 0.1
  return {
    allowance: (15 + 11 * pitch) / 1000,
    boltMajor: (180 * pitch ** (2 / 3) - 3.15 / Math.sqrt(pitch)) / 1000,
    boltPitch: td2 / 1000,
    holePitch: (1.32 * td2) / 1000,
    holeMinor: (pitch >= 1 ? 230 * pitch ** 0.7 : 433 * pitch - 190 * pitch ** 1.22) / 1000,
    basis: 'formula',
  }
}
