/** The process that is killed: `gripbook serve` itself, as a shop runs it, spoken to over HTTP. */
import { spawn, spawnSync } from 'node:child_process'
import { Agent, request } from 'node:http'
import { fileURLToPath } from 'node:url'
import type { Spot } from './places.ts'

const ROOT = fileURLToPath(new URL('../..', import.meta.url))
const PATIENCE = 30_000

export type Answer = { status: number; headers: Record<string, string | string[] | undefined>; bytes: Buffer }
export type Ask = {
  method: 'GET' | 'POST' | 'PATCH'
  path: string
  cookie?: string
  /** Sent as JSON; a Buffer as it is. */
  body?: object | Buffer
  headers?: Record<string, string>
}

export type Served = {
  pid: number
  /** Ends when it serves; fails when the process ended first. The code is there while the shop has no owner. */
  open: Promise<{ ownerCode: string | null }>
  /** Fails with `Unserved` when there is no answer, or one that says to send again. */
  ask(ask: Ask): Promise<Answer>
  /** When the process has ended. */
  gone: Promise<void>
  /** Asks it to stop in good order. */
  stop(): Promise<void>
  kill(): void
}

/** There was no answer, or one that says that the database is away: nothing is said about what was asked. */
export class Unserved extends Error {}

/** The process runs built code: brings it up to date. */
export function build(): void {
  const compiler = ['node_modules/typescript/bin/tsc', '-b', 'packages/cli']
  const { status, stdout } = spawnSync(process.execPath, compiler, { cwd: ROOT, encoding: 'utf8' })
  if (status !== 0) throw new Error(`The build failed, so there is nothing to kill:\n${stdout}`)
}

export function startServed({ dataFolder, url }: Spot): Served {
  const env = { ...process.env, GRIPBOOK_DATABASE_URL: url ?? '' }
  const args = ['packages/cli/bin/gripbook.js', 'serve', '--data', dataFolder, '--port', '0', '--log', 'error']
  const child = spawn(process.execPath, args, { cwd: ROOT, env, stdio: ['ignore', 'pipe', 'pipe'] })
  const agent = new Agent({ keepAlive: true, maxSockets: 16 })
  let said = ''
  let port = 0
  let isGone = false
  const gone = new Promise<void>((done) => {
    child.once('close', () => {
      isGone = true
      agent.destroy()
      done()
    })
  })
  const open = new Promise<{ ownerCode: string | null }>((done, failed) => {
    const hear = (text: string) => {
      said += text
      const found = /serves at http:\/\/localhost:(\d+)[\s\S]*\n\n$/.exec(said)
      if (port !== 0 || found === null) return
      port = Number(found[1])
      done({ ownerCode: /with the code {2}(\S+)/.exec(said)?.[1] ?? null })
    }
    child.stdout.setEncoding('utf8').on('data', hear)
    child.stderr.setEncoding('utf8').on('data', hear)
    void gone.then(() => failed(new Error(`the process ended. ${said}`)))
  })
  // Told to whoever waits for it; a process that is killed while it opens is no surprise.
  open.catch(() => {})
  return {
    pid: child.pid ?? 0,
    open,
    gone,
    async ask(asked) {
      if (isGone) throw new Unserved('the process ended')
      const answer = await answerOf(asked, port, agent)
      if (answer.status >= 500) throw new Error(`${asked.method} ${asked.path} failed: ${said.slice(-2_000)}`)
      return answer
    },
    async stop() {
      child.kill('SIGTERM')
      await gone
    },
    kill: () => child.kill('SIGKILL'),
  }
}

function answerOf({ method, path, cookie, body, headers = {} }: Ask, port: number, agent: Agent): Promise<Answer> {
  const bytes = body === undefined ? undefined : Buffer.isBuffer(body) ? body : Buffer.from(JSON.stringify(body))
  const type = Buffer.isBuffer(body) ? 'application/octet-stream' : 'application/json'
  const given = {
    ...(bytes === undefined ? {} : { 'content-type': type, 'content-length': String(bytes.length) }),
    ...(cookie === undefined ? {} : { cookie }),
    ...headers,
  }
  return new Promise((done, failed) => {
    const lost = (error: Error) => failed(new Unserved(error.message))
    const sent = request(
      { host: '127.0.0.1', port, method, path, agent, headers: given, timeout: PATIENCE },
      (answer) => {
        const pieces: Buffer[] = []
        answer.on('data', (piece: Buffer) => pieces.push(piece))
        answer.on('error', lost)
        answer.on('close', () => {
          if (!answer.complete) return lost(new Error('the answer was cut off'))
          const status = answer.statusCode ?? 0
          if (status === 503) return lost(new Error('it says to send again'))
          done({ status, headers: answer.headers, bytes: Buffer.concat(pieces) })
        })
      },
    )
    sent.on('timeout', () => sent.destroy(new Error('no answer in time')))
    sent.on('error', lost)
    sent.end(bytes)
  })
}

/** The body of an answer that must be right; anything else ends the trial. */
export function rightBody<T>({ status, bytes }: Answer, what: string): T {
  if (status >= 300) throw new Error(`${what} was refused: ${status} ${bytes.toString().slice(0, 500)}`)
  return JSON.parse(bytes.toString()) as T
}
