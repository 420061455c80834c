import { type MixedIntegerSolver, solverOf } from '@gripbook/engine'
import startHighs from 'highs'
import wasm from 'highs/runtime?url'

/** The general-purpose solver for what stays coupled. */
export async function startSolver(): Promise<MixedIntegerSolver> {
  return solverOf(await startHighs({ locateFile: () => wasm }))
}
