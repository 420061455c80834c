import { type FaultPath, must } from '@gripbook/engine'
import type { FileFault } from './fault.ts'
import { disagreement } from './localChecks.ts'

/** The fault behind a check of the schema that is a function (localChecks.ts), by the code that the schema names beside it. */
export function localFault(code: string, value: unknown, path: FaultPath): FileFault {
  switch (code) {
    case 'not-a-thread':
      return { code, path, found: String(value).slice(0, 60) }
    case 'ends-crossed': {
      const ends = value as { atLeast: number; atMost: number }
      return { code, path, atLeast: ends.atLeast, atMost: ends.atMost }
    }
    case 'two-figures-disagree': {
      const fault = disagreement(value as object, path)
      must(fault !== null, 'localFault: the figures agree after all', value)
      return fault
    }
    case 'quantity-empty':
    case 'line-without-length':
      return { code, path }
    default:
      return { code: 'text-unprintable', path }
  }
}
