/** Asks a worker of the engine, one question at a time; a newer question takes the place of the one that waits, and of one that takes long. */
import type { TighteningProgress } from '@gripbook/engine'
import type { Answered, Question } from './asked.ts'

/** Hears how far it is, and what is known of the answer already. */
export type Told<A> = (progress: TighteningProgress, soFar?: A) => void

export type Said<A> = { ok: true; answer: A } | { ok: false; why: string }

export type Asking<Q extends Question, A> = {
  /** Null when a newer question came before the answer, or it was stopped. */
  ask(question: Q, told?: Told<A>): Promise<Said<A> | null>
  /** Ends the worker with what it is at; the next question gets a new one. */
  stop(): void
  close(): void
}

/** What is needed of a worker; a test hands in its own. */
export type EngineWorker<A = unknown> = Pick<Worker, 'postMessage' | 'terminate'> & {
  onmessage: ((event: MessageEvent<Answered<A>>) => void) | null
  onerror: ((event: ErrorEvent) => void) | null
}

export function newWorker<A>(): EngineWorker<A> {
  return new Worker(new URL('./engine.worker.ts', import.meta.url), { type: 'module' })
}

type Waiting<Q, A> = {
  question: Q
  number: number
  done: (said: Said<A> | null) => void
  told: Told<A> | undefined
  since: number
}

/** `patience`: a question that is older than this, in ms, when a newer one comes is given up together with its worker. */
export function startAsking<Q extends Question, A>(make: () => EngineWorker<A>, patience: number): Asking<Q, A> {
  let worker: EngineWorker<A> | null = null
  let counted = 0
  let under: Waiting<Q, A> | null = null
  let waits: Waiting<Q, A> | null = null

  function begin(asked: Waiting<Q, A>): void {
    if (worker === null) {
      worker = make()
      worker.onmessage = ({ data }) => {
        if (under?.number !== data.number) return
        if ('progress' in data) return under.told?.(data.progress, data.soFar)
        const { number: _, ...said } = data
        finish(said)
      }
      worker.onerror = (event) => {
        drop()
        finish({ ok: false, why: event.message || 'the engine’s worker did not start' })
      }
    }
    asked.since = performance.now()
    under = asked
    worker.postMessage({ number: asked.number, ...asked.question })
  }

  function finish(said: Said<A> | null): void {
    const done = under?.done
    under = null
    done?.(said)
    const next = waits
    waits = null
    if (next) begin(next)
  }

  function drop(): void {
    worker?.terminate()
    worker = null
  }

  return {
    ask: (question, told) =>
      new Promise((done) => {
        const asked: Waiting<Q, A> = { question, number: ++counted, done, told, since: 0 }
        if (under === null) return begin(asked)
        waits?.done(null)
        waits = asked
        if (performance.now() - under.since >= patience) {
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
