import { type MixedIntegerSolver, solverOf } from '@gripbook/engine'
import highsModule from 'highs'

// The package's types describe its CommonJS build, where the loader is `default`; the ES build that Node takes exports the loader itself.
const loadHighs = highsModule as unknown as typeof highsModule.default

/** The general-purpose solver for what stays coupled, loaded when it is first wanted. */
export async function loadSolver(): Promise<MixedIntegerSolver> {
  return solverOf(await loadHighs())
}
