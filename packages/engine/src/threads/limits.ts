import { type LimitBasis, metricTolerances } from './metricTolerances.ts'
import { profileOf } from './profile.ts'
import type { Thread } from './thread.ts'

/** Limits of size of a bolt's thread in mm. `minorMin` is the root that a worn tool may leave (rounded root, metric only by table). */
export type BoltLimits = {
  majorMax: number
  majorMin: number
  pitchMax: number
  pitchMin: number
  minorMax: number
  minorMin: number
  basis: LimitBasis
}

/** Limits of size of a hole's thread in mm. A hole's major diameter has no upper limit in the standards. */
export type HoleLimits = {
  majorMin: number
  pitchMin: number
  pitchMax: number
  minorMin: number
  minorMax: number
  basis: LimitBasis
}

/** mm rounded to so many places of an inch, as the standard prints its limits (a hole's minor diameter to three, the rest to four). */
const inchPlaces = (mm: number, places: number): number =>
  (Math.round((mm / 25.4) * 10 ** places) / 10 ** places) * 25.4

const micrometre = (mm: number): number => Math.round(mm * 1000) / 1000

/**
 * Limits in mm of a bolt's thread in the usual class: 6g for metric, 2A for unified threads.
 * @source ISO 965-1 tables (see metricTolerances.ts); ASME B1.1 formulas: Td2 = 0.0015·D^(1/3) + 0.0015·√Le + 0.015·P^(2/3) with Le = D,
 * allowance 0.3·Td2, Td = 0.06·P^(2/3), all in inches (formulas from memory)
 */
export function boltLimits(thread: Thread): BoltLimits {
  const { pitchDiameter, minorDiameter } = profileOf(thread)
  if (thread.profile === 'metric') {
    const t = metricTolerances(thread)
    const majorMax = micrometre(thread.diameter - t.allowance)
    const pitchMax = micrometre(micrometre(pitchDiameter) - t.allowance)
    const pitchMin = micrometre(pitchMax - t.boltPitch)
    return {
      majorMax,
      majorMin: micrometre(majorMax - t.boltMajor),
      pitchMax,
      pitchMin,
      minorMax: micrometre(micrometre(minorDiameter) - t.allowance),
      // root radius 0.125·P at its least: the root lies 0.616·P under the least pitch diameter
      minorMin: micrometre(pitchMin - 0.616 * thread.pitch),
      basis: t.basis,
    }
  }
  const { pitch, boltPitch, allowance } = unified(thread)
  const majorMax = inchPlaces(thread.diameter - allowance, 4)
  const pitchMax = inchPlaces(pitchDiameter - allowance, 4)
  const pitchMin = inchPlaces(pitchMax - boltPitch, 4)
  return {
    majorMax,
    majorMin: inchPlaces(majorMax - 25.4 * 0.06 * pitch ** (2 / 3), 4),
    pitchMax,
    pitchMin,
    minorMax: inchPlaces(minorDiameter - allowance, 4),
    minorMin: inchPlaces(pitchMin - 0.616 * thread.pitch, 4),
    basis: 'formula',
  }
}

/**
 * Limits in mm of a hole's thread in the usual class: 6H for metric, 2B for unified threads.
 * @source ISO 965-1 tables (see metricTolerances.ts); ASME B1.1 formulas: TD2 = 1.3·Td2; TD1 = 0.25·P − 0.4·P² from 1/4 in up, below that
 * 0.05·P^(2/3) + 0.03·P/D − 0.002, held between 0.25·P − 0.4·P² and 0.394·P (formulas from memory)
 */
export function holeLimits(thread: Thread): HoleLimits {
  const { pitchDiameter, minorDiameter } = profileOf(thread)
  if (thread.profile === 'metric') {
    const t = metricTolerances(thread)
    const pitchMin = micrometre(pitchDiameter)
    const minorMin = micrometre(minorDiameter)
    return {
      majorMin: thread.diameter,
      pitchMin,
      pitchMax: micrometre(pitchMin + t.holePitch),
      minorMin,
      minorMax: micrometre(minorMin + t.holeMinor),
      basis: t.basis,
    }
  }
  const { diameter, pitch, boltPitch } = unified(thread)
  const large = 0.25 * pitch - 0.4 * pitch ** 2
  const small = Math.min(0.394 * pitch, Math.max(large, 0.05 * pitch ** (2 / 3) + (0.03 * pitch) / diameter - 0.002))
  return {
    majorMin: thread.diameter,
    pitchMin: inchPlaces(pitchDiameter, 4),
    pitchMax: inchPlaces(pitchDiameter + 1.3 * boltPitch, 4),
    minorMin: inchPlaces(minorDiameter, 3),
    minorMax: inchPlaces(minorDiameter + 25.4 * (diameter < 0.25 ? small : large), 3),
    basis: 'formula',
  }
}

/** Diameter and pitch in inches (the formulas' own unit); tolerance and allowance of the bolt's pitch diameter in mm. */
function unified(thread: Thread): { diameter: number; pitch: number; boltPitch: number; allowance: number } {
  const diameter = thread.diameter / 25.4
  const pitch = thread.pitch / 25.4
  const boltPitch = 25.4 * (0.0015 * Math.cbrt(diameter) + 0.0015 * Math.sqrt(diameter) + 0.015 * pitch ** (2 / 3))
  return { diameter, pitch, boltPitch, allowance: 0.3 * boltPitch }
}
