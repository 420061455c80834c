import highsModule from 'highs'

export type SolverAnswer = { status: 'optimal' | 'infeasible'; values: Record<string, number> }

// The package's types describe its CommonJS build, where the loader is `default`; the ES build that Node takes exports the loader itself.
const loadHighs = highsModule as unknown as typeof highsModule.default

/**
 * HiGHS as the engine's solver type wants it: model text in, values out. Tolerances are as tight as HiGHS takes them.
 */
export async function loadSolver(): Promise<(text: string) => SolverAnswer> {
  const highs = await loadHighs()
  return (text) => {
    const answer = highs.solve(text, {
      output_flag: false,
      mip_rel_gap: 0,
      mip_abs_gap: 1e-6,
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
