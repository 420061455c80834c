/** Asks the engine's worker, one question at a time; a newer question takes the place of the one that waits, and of one that takes long. */
import type { PlacementAnswer, Unit } from '@gripbook/engine'
import type { Answered, Asked } from './asked.ts'

/** A question that is older than this when a newer one comes is given up together with its worker. */
const PATIENCE = 400

export type EngineAnswer = { ok: true; answer: PlacementAnswer } | { ok: false; why: string }

export type Engine = {
  /** Null when a newer question came before the answer, or it was stopped. */
  ask(unit: Unit): Promise<EngineAnswer | null>
  stop(): void
  close(): void
}

type Question = { unit: Unit; number: number; done: (answer: EngineAnswer | null) => void; since: number }

/** What is needed of a worker; a test hands in its own. */
export type EngineWorker = Pick<Worker, 'postMessage' | 'terminate'> & {
  onmessage: ((event: MessageEvent<Answered>) => void) | null
  onerror: ((event: ErrorEvent) => void) | null
}

const newWorker = (): EngineWorker => new Worker(new URL('./engine.worker.ts', import.meta.url), { type: 'module' })

export function startEngine(make: () => EngineWorker = newWorker): Engine {
  let worker: EngineWorker | null = null
  let counted = 0
  let under: Question | null = null
  let waits: Question | null = null

  function begin(question: Question): void {
    if (worker === null) {
      worker = make()
      worker.onmessage = ({ data }) => {
        const { number, ...answer } = data
        if (under?.number === number) finish(answer)
      }
      worker.onerror = (event) => {
        drop()
        finish({ ok: false, why: event.message || 'the engine’s worker did not start' })
      }
    }
    question.since = performance.now()
    under = question
    const asked: Asked = { number: question.number, unit: question.unit }
    worker.postMessage(asked)
  }

  function finish(answer: EngineAnswer | null): void {
    const done = under?.done
    under = null
    done?.(answer)
    const next = waits
    waits = null
    if (next) begin(next)
  }

  function drop(): void {
    worker?.terminate()
    worker = null
  }

  return {
    ask: (unit) =>
      new Promise((done) => {
        const question: Question = { unit, number: ++counted, done, since: 0 }
        if (under === null) return begin(question)
        waits?.done(null)
        waits = question
        if (performance.now() - under.since > PATIENCE) {
          drop()
          finish(null)
        }
      }),
    stop() {
      waits?.done(null)
      waits = null
      if (under === null) return
      drop()
      finish(null)
    },
    close() {
      waits = null
      under = null
      drop()
    },
  }
}
