/** The engine on a thread of its own: the page is never blocked by a sum. */
import { type MixedIntegerSolver, place, type Unit } from '@gripbook/engine'
import type { Answered, Asked } from './asked.ts'
import type { Told } from './asking.ts'

let solver: Promise<MixedIntegerSolver> | undefined

addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  void answer(data)
})

async function answer(asked: Asked): Promise<void> {
  const { number } = asked
  const say = (answered: Answered<unknown>) => postMessage(answered)
  try {
    say({
      number,
      ok: true,
      answer: await answerOf(asked, (progress, soFar) =>
        say({ number, progress, ...(soFar === undefined ? {} : { soFar }) }),
      ),
    })
  } catch (error) {
    say({ number, ok: false, why: error instanceof Error ? error.message : String(error) })
  }
}

async function answerOf(asked: Asked, told: Told<unknown>): Promise<unknown> {
  if (asked.what === 'placement') return place(asked.unit as Unit, { solver: loadSolver })
  const { answerTightening } = await import('./tightening.ts')
  return answerTightening(asked, told)
}

/** A megabyte that most faces never need: fetched when a face does. */
function loadSolver(): Promise<MixedIntegerSolver> {
  solver ??= import('./solver.ts').then((module) => module.startSolver())
  return solver
}
