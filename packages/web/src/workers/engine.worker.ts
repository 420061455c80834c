/** The engine on a thread of its own: the page is never blocked by a sum. */
import { type MixedIntegerSolver, place, type Unit } from '@gripbook/engine'
import type { Answered, Asked } from './asked.ts'

let solver: Promise<MixedIntegerSolver> | undefined

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  void answer(data)
})

async function answer({ number, unit }: Asked): Promise<void> {
  const say = (answered: Answered) => postMessage(answered)
  try {
    say({ number, ok: true, answer: await place(unit as Unit, { solver: loadSolver }) })
  } catch (error) {
    say({ number, ok: false, why: error instanceof Error ? error.message : String(error) })
  }
}

/** A megabyte that most faces never need: fetched when a face does. */
function loadSolver(): Promise<MixedIntegerSolver> {
  solver ??= import('./solver.ts').then((module) => module.startSolver())
  return solver
}
