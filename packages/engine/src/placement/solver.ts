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

/** What is needed of the general-purpose solver library; its own types differ between its builds. */
type SolverLibrary = {
  solve(lpText: string, options: object): { Status: string; Columns: Record<string, object> }
}

/**
 * The mixed-integer solver that a loaded solver library is. No gap is allowed between what it finds and the best there is. The solver
 * throws when the library comes back with anything but a best solution or the proof that there is none.
 */
export function solverOf(library: SolverLibrary): MixedIntegerSolver {
  return (lpText) => {
    const answer = library.solve(lpText, {
      output_flag: false,
      mip_rel_gap: 0,
      mip_abs_gap: 0,
      primal_feasibility_tolerance: 1e-9,
      mip_feasibility_tolerance: 1e-9,
    })
    if (answer.Status === 'Infeasible') return { status: 'infeasible', values: {} }
    if (answer.Status !== 'Optimal') throw new Error(`the solver came back with: ${answer.Status}`)
    const values: Record<string, number> = {}
    for (const [name, column] of Object.entries(answer.Columns))
      if ('Primal' in column && typeof column.Primal === 'number') values[name] = column.Primal
    return { status: 'optimal', values }
  }
}
