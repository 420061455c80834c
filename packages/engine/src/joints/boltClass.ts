import { stressArea } from '../threads/stressArea.ts'
import type { Thread } from '../threads/thread.ts'

/** What a bolt of a class holds at least, all in MPa, for one size of thread. */
export type BoltClass = {
  /** "8.8", "A2-70", "grade 5". */
  name: string
  /** Minimum tensile strength. */
  tensile: number
  /** Minimum yield: lower yield, 0.2 % or 0.0048·d proof strength as the class has it. */
  yield: number
  /** Stress under proof load. A stainless class has none; its yield stands here. */
  proof: number
  source: string
  /** Set when nobody read a mark: why this class was taken. */
  assumed?: string
}

type Strength = readonly [tensile: number, yieldPoint: number, proof: number]

const ISO = 'ISO 898-1:2013, minimum values'
/**
 * @source ISO 898-1:2013, mechanical properties, minimum tensile strength, minimum yield, stress under proof load, MPa (supplier's copy of the table)
 */
const CARBON: Readonly<Record<string, Strength>> = {
  '4.6': [400, 240, 225],
  '4.8': [420, 340, 310],
  '5.6': [500, 300, 280],
  '5.8': [520, 420, 380],
  '6.8': [600, 480, 440],
  '8.8': [800, 640, 580],
  '9.8': [900, 720, 650],
  '10.9': [1040, 940, 830],
  '12.9': [1220, 1100, 970],
}
/** 8.8 above M16: the larger size has the higher minimum. */
const LARGE_88: Strength = [830, 660, 600]

/** @source ISO 3506-1, A1 to A5, tensile strength and 0.2 % proof strength, MPa (yields also in VDI 2230:2003; tensile from memory) */
const STAINLESS: Readonly<Record<string, Strength>> = { 50: [500, 210, 210], 70: [700, 450, 450], 80: [800, 600, 600] }

const KSI = 6.894757
/** @source SAE J429, proof, yield and tensile in ksi by size: up to and above the diameter in inches (course tables after Shigley) */
const SAE: Readonly<Record<string, { upTo: number; small: Strength; large: Strength }>> = {
  2: { upTo: 0.75, small: [74, 57, 55], large: [60, 36, 33] },
  5: { upTo: 1, small: [120, 92, 85], large: [105, 81, 74] },
  8: { upTo: 1.5, small: [150, 130, 120], large: [150, 130, 120] },
}

const NO_MARK = ['', 'none', 'no mark', 'unmarked', 'unknown']

/** Classes that can be written, for a message or a list to choose from. */
export const BOLT_CLASSES: readonly string[] = [
  ...Object.keys(CARBON).sort((a, b) => Number(a) - Number(b)),
  'A2-50',
  'A2-70',
  'A2-80',
  'A4-50',
  'A4-70',
  'A4-80',
  'grade 2',
  'grade 5',
  'grade 8',
]

/**
 * The class of a bolt from its head mark, for the size of its thread: "8.8", "10.9", "A2-70", "A4-80", "grade 5", "SAE 8", "no mark". No mark, or
 * none read, is taken as the weakest usual class (4.6 for metric, grade 2 for unified threads) and says so in `assumed`.
 * Undefined when the text is no class, or no class of this size (9.8 ends at M16).
 */
export function boltClass(mark: string | undefined, thread: Thread): BoltClass | undefined {
  const text = (mark ?? '').trim().toLowerCase()
  if (NO_MARK.includes(text)) return weakest(thread, mark)
  const stainless = /^a([1-5])[- ]?(50|70|80)$/.exec(text)
  if (stainless) {
    const [tensile, yieldPoint, proof] = STAINLESS[stainless[2] as string] as Strength
    const name = `A${stainless[1]}-${stainless[2]}`
    return { name, tensile, yield: yieldPoint, proof, source: 'ISO 3506-1 (from memory), yield also in VDI 2230:2003' }
  }
  const grade = /^(?:sae|grade|gr|sae grade|sae j429 grade)[. ]*([258])$/.exec(text)
  if (grade) return saeGrade(grade[1] as string, thread)
  if (text === '9.8' && thread.diameter > 16) return undefined
  const strength =
    text === '8.8' && thread.diameter > 16 ? LARGE_88 : Object.hasOwn(CARBON, text) ? CARBON[text] : undefined
  if (!strength) return undefined
  const [tensile, yieldPoint, proof] = strength
  return { name: text, tensile, yield: yieldPoint, proof, source: ISO }
}

function weakest(thread: Thread, mark: string | undefined): BoltClass {
  const name = thread.profile === 'metric' ? '4.6' : 'grade 2'
  const why = mark === undefined ? 'no class given' : 'no head mark'
  return { ...(boltClass(name, thread) as BoltClass), assumed: `${why}: counted as ${name}, the weakest usual class` }
}

function saeGrade(grade: string, thread: Thread): BoltClass {
  const { upTo, small, large } = SAE[grade] as (typeof SAE)[string]
  const [tensile, yieldPoint, proof] = thread.diameter / 25.4 <= upTo + 1e-9 ? small : large
  return {
    name: `grade ${grade}`,
    tensile: tensile * KSI,
    yield: yieldPoint * KSI,
    proof: proof * KSI,
    source: 'SAE J429, minimum values',
  }
}

/** Stress area in mm² as the standard prints it, to three digits: its loads are computed from that. */
export function printedStressArea(thread: Thread): number {
  return Number(stressArea(thread).toPrecision(3))
}

/** Proof load in N: printed stress area times stress under proof load. @source ISO 898-1, proof loads */
export function proofLoad(thread: Thread, { proof }: BoltClass): number {
  return printedStressArea(thread) * proof
}

/** Minimum ultimate tensile load in N: printed stress area times minimum tensile strength. @source ISO 898-1, minimum ultimate tensile loads */
export function ultimateLoad(thread: Thread, { tensile }: BoltClass): number {
  return printedStressArea(thread) * tensile
}
