/** A general-purpose mixed-integer solver, handed in: the engine loads nothing itself. */

/** Takes a model in LP format (all names without spaces) and gives the best solution, or says that there is none. */
export type MixedIntegerSolver = (lpText: string) => {
  status: 'optimal' | 'infeasible'
  values: Record<string, number>
}

export type Tools = {
  /** Loads the solver when it is wanted, which is seldom: only where much stays coupled. */
  solver?: () => Promise<MixedIntegerSolver>
  /** Set `aborted` to stop; what is asked then throws `Stopped`. */
  stop?: { readonly aborted: boolean }
  /** Nodes after which the own search hands a question over to the solver. */
  patience?: number
}

export class Stopped extends Error {
  override name = 'Stopped'
}
