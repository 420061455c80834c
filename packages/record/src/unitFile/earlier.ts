import type { Unit } from '@gripbook/engine'

/**
 * The unit file as a Gripbook would have written it that could not yet say in it what work there is: jobs, parts that came out and tools stood in entries alone. For comparing with what
 * such a one has left.
 */
export function withoutWork({ jobs: _jobs, parts: _parts, tools: _tools, ...unit }: Unit): Unit {
  return unit
}
