import { hasStudEnd, headShape } from '../bolt/headShape.ts'
import type { Palette } from '../look/palette.ts'
import type { Hatches } from './hatch.ts'
import type { SectionInput } from './input.ts'
import type { Measures } from './measures.ts'

/** Drill diameter of a hole's thread in pitches under the nominal one: D1 = d − 1.082532 P. @source ISO 724 */
const DRILL = 1.082532
/** Clearance and mouth in thread diameters: near the medium row of ISO 273. Drawn, never reckoned with. */
const CLEAR = 1.1

/** Levels in mm from the seat, down positive, that the drawing needs beside the measures: where it starts, breaks off and ends. */
export type Levels = {
  /** Underside of the head; where the grip is not known, of the stack as drawn. */
  head: number
  /** Tops of the layers of the stack. */
  gasket: number
  part: number
  bracket: number
  /** Where the stack is broken off because its height is not known. */
  stackBreak: number | null
  /** Where a bolt of unknown length is broken off. */
  boltBreak: number | null
  /** End of the case's material as drawn. */
  caseEnd: number
  /** The case or the passage goes on, unknown how far. */
  endBreak: boolean
  /** Start of the wall behind a through hole, where known. */
  wallBehind: number | null
  end: number
}

export type Sheet = {
  input: SectionInput
  measures: Measures
  levels: Levels
  palette: Palette
  hatch: Hatches
  /** Pixels per mm. */
  pixels: number
  /** The hole's axis and half of the section's width, px. */
  x: number
  half: number
  /** Axis of the bolt: the hole's, or beside it where the threads differ. */
  boltX: number
  /** y in px of a level in mm. */
  y: (mm: number) => number
}

export function drillOf({ thread }: SectionInput): number {
  return thread.diameter - DRILL * thread.pitch
}

export function clearOf(diameter: number): number {
  return CLEAR * diameter
}

/** The lead of a 118° drill under the bottom of a hole of `diameter` mm. */
export function coneOf(diameter: number): number {
  return diameter / 2 / Math.tan((59 * Math.PI) / 180)
}

/** Threads differ: the bolt stands beside the hole. */
export function standsBeside({ bolt, thread }: SectionInput): boolean {
  return bolt !== undefined && (bolt.line === 'thread' || bolt.thread.diameter !== thread.diameter)
}

/** Features that the hole needs and the bolt has not. */
export function missingFeatures({ hole, bolt }: SectionInput): string[] {
  return bolt ? (hole.needs ?? []).filter((need) => !(bolt.kind.features ?? []).includes(need)) : []
}

/** The stud end that is missing is shown as an outline on the head. */
export function lacksStudEnd(input: SectionInput): boolean {
  return (
    input.bolt?.line === 'feature' &&
    hasStudEnd(missingFeatures(input)) &&
    headShape(input.bolt.kind.head, 1).form !== 'nut'
  )
}

export function levelsOf(input: SectionInput, measures: Measures): Levels {
  const d = input.thread.diameter
  const { bracket, grip, gasket, washer, mouth, threadDepth, bottom, through, behind, bolt } = measures
  const thick = (layer: { at: number; known: boolean }) => (layer.known ? layer.at : Math.max(layer.at, 1.5 * d))
  const gasketTop = -thick(gasket)
  const partTop = gasketTop - thick(grip)
  const bracketTop = partTop - thick(bracket)
  const head = bracketTop - thick(washer)
  const unknown = [grip, bracket, gasket, washer].some((layer) => !layer.known)
  const tip = bolt?.stickOut?.at ?? 0
  const inside = standsBeside(input) ? 0 : tip
  const beside = standsBeside(input) && bolt ? head + bolt.length.at : 0
  const solid = mouth.at + threadDepth.at
  const levels = {
    head,
    gasket: gasketTop,
    part: partTop,
    bracket: bracketTop,
    stackBreak: unknown ? (grip.known ? (bracketTop + partTop) / 2 : (partTop + gasketTop) / 2) : null,
    boltBreak: bolt && !bolt.length.known ? Math.max(head + 0.6 * d, head + (gasketTop - head) * 0.6) : null,
    wallBehind: null as number | null,
  }
  const finish = (caseEnd: number, endBreak: boolean, end = caseEnd) => {
    const last = Math.max(end, beside + 0.3 * d)
    return { ...levels, caseEnd: endBreak || !through ? Math.max(caseEnd, last) : caseEnd, endBreak, end: last }
  }
  if (!through) {
    if (bottom.known) return finish(Math.max(bottom.at + coneOf(drillOf(input)), inside) + 0.6 * d, false)
    return finish(Math.max(bottom.lo, solid, inside, 0.8 * d) + 0.9 * d, true)
  }
  if (!threadDepth.known || !mouth.known) return finish(Math.max(solid, inside, 0.8 * d) + 0.9 * d, true)
  if (behind.known) {
    levels.wallBehind = bottom.at + behind.at
    return { ...finish(bottom.at, false, Math.max(bottom.at + behind.at, inside) + 0.7 * d), caseEnd: bottom.at }
  }
  const end = Math.max(bottom.at + 1.2 * d, bottom.at + behind.lo + 0.5 * d, inside + 0.6 * d)
  return { ...finish(bottom.at, false, end), caseEnd: bottom.at, endBreak: true }
}
