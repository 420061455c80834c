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
)

export type Read<T> = { ok: true; value: T } | { ok: false; faults: [Fault, ...Fault[]] }
