/**
 * A fault is something a person can put right, kept as data: where it stands in what they gave us and what was found there.
 * The words are elsewhere (`faultWords.ts` beside whoever shows them), one sentence per code.
 */
export type FaultPath = readonly (string | number)[]

export type Fault = { path: FaultPath } & (
  | { code: 'not-a-thread'; found: string }
  | { code: 'not-a-length'; found: string }
  | { code: 'not-a-torque'; found: string }
  | { code: 'unknown-unit'; found: string; expected: readonly string[] }
  | { code: 'wrong-dimension'; found: string; expected: string }
  | { code: 'negative'; found: number }
  | { code: 'ends-crossed'; atLeast: number; atMost: number }
  | { code: 'two-figures-disagree'; value: number; unit: string; also: number; alsoUnit: string; off: number }
  | { code: 'tightening-needs'; missing: 'cover' | 'bed' | 'place' | 'two bolts' }
  | { code: 'bed-not-above-zero' }
  /** The line from this corner to the next crosses or touches the line that starts at corner `other` of the same outline, near `near` (mm). */
  | { code: 'outline-crosses-itself'; other: number; near: [number, number] }
  | { code: 'outline-without-area' }
  /** An opening or hollow that leaves the cover, crosses its outline or another opening. */
  | { code: 'opening-leaves-cover'; near: [number, number] }
  | { code: 'openings-cross'; other: number; near: [number, number] }
  | { code: 'bolt-outside-cover'; at: [number, number] }
  | { code: 'bolt-in-opening'; at: [number, number]; opening: number }
  | { code: 'bolts-at-one-place'; other: string; apart: number; least: number }
  | { code: 'line-leaves-cover'; near: [number, number] }
  | { code: 'nothing-to-lie-on' }
  | { code: 'cover-too-soft' }
  | { code: 'cover-too-stiff' }
)

export type Read<T> = { ok: true; value: T } | { ok: false; faults: [Fault, ...Fault[]] }
