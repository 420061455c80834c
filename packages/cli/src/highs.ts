import type { MixedIntegerSolver } from '@gripbook/engine'
import highsModule from 'highs'

// The package's types describe its CommonJS build, where the loader is `default`; the ES build that Node takes exports the loader itself.
const loadHighs = highsModule as unknown as typeof highsModule.default

/**
 * The general-purpose solver for what stays coupled, loaded when it is first wanted. No gap is allowed between what it finds and the best
 * there is. Throws when it comes back with anything but a best solution or the proof that there is none.
 */
export async function loadSolver(): Promise<MixedIntegerSolver> {
  const highs = await loadHighs()
  return (lpText) => {
    const answer = highs.solve(lpText, {
      output_flag: false,
      mip_rel_gap: 0,
      mip_abs_gap: 0,
      primal_feasibility_tolerance: 1e-9,
      mip_feasibility_tolerance: 1e-9,
    })
    if (answer.Status === 'Infeasible') return { status: 'infeasible', values: {} }
    if (answer.Status !== 'Optimal') throw new Error(`the solver came back with: ${answer.Status}`)
    const values: Record<string, number> = {}
    for (const [name, column] of Object.entries(answer.Columns)) if ('Primal' in column) values[name] = column.Primal
    return { status: 'optimal', values }
  }
}
