/** The process that is killed, as the trial holds it. */
import { fork, spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import type { Answer, Order } from './talk.ts'

type Unnumbered = Order extends infer O ? (O extends Order ? Omit<O, 'no'> : never) : never

export type Worker = {
  pid: number
  /** Ends when the database is open; fails when the process ended first. */
  open: Promise<void>
  /** Fails when the process ended, or when it says that it could not. */
  ask(order: Unnumbered): Promise<Answer>
  /** When the process has ended and everything that it had said has been heard. */
  gone: Promise<void>
  kill(): void
}

/** The process is there and says that it could not do what it was asked. */
export class Unserved extends Error {}

/** The process runs built code: brings it up to date. */
export function build(): void {
  const root = fileURLToPath(new URL('../..', import.meta.url))
  const compiler = ['node_modules/typescript/bin/tsc', '-b', 'packages/server']
  const { status, stdout } = spawnSync(process.execPath, compiler, { cwd: root, encoding: 'utf8' })
  if (status !== 0) throw new Error(`The build failed, so there is nothing to kill:\n${stdout}`)
}

export function startWorker(kind: 'embedded' | 'server', where: string): Worker {
  const child = fork(fileURLToPath(new URL('appender.mjs', import.meta.url)), [kind, where], {
    execArgv: [],
    stdio: ['ignore', 'inherit', 'pipe', 'ipc'],
  })
  const waiting = new Map<number, { done: (answer: Answer) => void; failed: (error: Error) => void }>()
  let said = ''
  let ended = false
  let last = 0
  child.stderr?.setEncoding('utf8').on('data', (text) => {
    said += text
  })
  child.on('message', (answer: Answer) => {
    const asked = waiting.get(answer.to)
    waiting.delete(answer.to)
    if (answer.failed === undefined) asked?.done(answer)
    else asked?.failed(new Unserved(answer.failed))
  })
  const gone = new Promise<void>((done) => {
    child.once('close', () => {
      ended = true
      for (const { failed } of waiting.values()) failed(new Error(`the process ended. ${said}`))
      done()
    })
  })
  const answerTo = (no: number) =>
    new Promise<Answer>((done, failed) => {
      if (ended) failed(new Error('the process ended'))
      else waiting.set(no, { done, failed })
    })
  const open = answerTo(0).then(() => {})
  // Told to whoever waits for it; a process that is killed while it opens is no surprise.
  open.catch(() => {})
  return {
    pid: child.pid!,
    open,
    gone,
    ask(order) {
      const no = ++last
      const answer = answerTo(no)
      if (!ended) child.send({ ...order, no } as Order, () => {})
      return answer
    },
    kill: () => child.kill('SIGKILL'),
  }
}
