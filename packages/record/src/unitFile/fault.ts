import type { Fault, FaultPath } from '@gripbook/engine'

/** What an id can name. */
export type Named = 'face' | 'hole' | 'kind' | 'line' | 'tool' | 'part' | 'job'

/** What the schema expected to find at a place. */
export type Expected = 'text' | 'a number' | 'true or false' | 'true' | 'a list' | 'an object' | 'a pair of numbers'

/**
 * A fault in a unit file, as data. The engine's own faults (threads, quantities) are among them; the words stand in faultWords.ts.
 * `near` is a name that the user may have meant.
 */
export type FileFault =
  | Fault
  | ({ path: FaultPath } & (
      | { code: 'too-big'; limit: number }
      | { code: 'not-utf8' }
      | { code: 'not-json'; line: number; column: number; found: string; expected: string }
      | { code: 'too-deep'; limit: number }
      | { code: 'too-many-values'; limit: number }
      | { code: 'number-out-of-range'; found: string }
      | { code: 'repeated-field'; name: string }
      | { code: 'unknown-field'; name: string; near?: string }
      | { code: 'missing-field'; name: string }
      | { code: 'wrong-type'; found: string; expected: Expected }
      | { code: 'unknown-word'; found: string; expected: readonly string[]; near?: string }
      | { code: 'wrong-format'; found: string }
      | { code: 'not-a-quantity'; found: string }
      | { code: 'quantity-mixed'; fields: readonly string[] }
      | { code: 'quantity-empty' }
      | { code: 'not-above-zero'; found: number }
      | { code: 'too-small'; found: number; limit: number }
      | { code: 'too-large'; found: number; limit: number }
      | { code: 'not-whole'; found: number }
      | { code: 'text-empty' }
      | { code: 'text-too-long'; limit: number }
      | { code: 'text-unprintable' }
      | { code: 'too-few'; least: number }
      | { code: 'too-many'; limit: number }
      | { code: 'trial-figures'; given: readonly string[] }
      | { code: 'reserved-name'; name: string }
      | { code: 'repeated-name'; what: Named; name: string; first: FaultPath }
      | { code: 'no-such-name'; what: Named; name: string; near?: string }
      | { code: 'rank-of-itself'; name: string }
      | { code: 'line-without-length' }
      | { code: 'face-inside-itself'; name: string }
    ))

export type ReadFile<T> = { ok: true; value: T } | { ok: false; faults: [FileFault, ...FileFault[]] }
