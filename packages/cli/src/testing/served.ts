/** The command as processes of their own, and a shop that one of them serves. */
import { type ChildProcess, spawn } from 'node:child_process'
import { createHash, randomUUID } from 'node:crypto'
import { fileURLToPath } from 'node:url'
import { type Knowledge, knowledgeOf, learn, nextEntry, noteWritten } from '@gripbook/record'

const ROOT = fileURLToPath(new URL('../../../..', import.meta.url))

const sha256 = (text: string): string => createHash('sha256').update(text).digest('hex')

export function start(args: string[]): ChildProcess {
  const from = ['--conditions=development', '--import', 'tsx', 'packages/cli/src/testing/runMain.ts']
  const env = { ...process.env, GRIPBOOK_DATABASE_URL: '', GRIPBOOK_PHOTOGRAPHS_URL: '' }
  return spawn(process.execPath, [...from, ...args], { cwd: ROOT, env, stdio: ['ignore', 'pipe', 'pipe'] })
}

export type Ended = { status: number | null; out: string; err: string }

/** Until the process has ended; `killed`: with SIGKILL, after so many milliseconds. */
export function run(args: string[], killed?: number): Promise<Ended> {
  return new Promise((done) => {
    const child = start(args)
    const said = { out: '', err: '' }
    child.stdout!.setEncoding('utf8').on('data', (text) => {
      said.out += text
    })
    child.stderr!.setEncoding('utf8').on('data', (text) => {
      said.err += text
    })
    const timer = killed === undefined ? undefined : setTimeout(() => child.kill('SIGKILL'), killed)
    child.once('close', (status) => {
      clearTimeout(timer)
      done({ status, ...said })
    })
  })
}

export type ServedShop = { said: string; url: string; code: string | undefined; stop(): Promise<number | null> }

/** `gripbook serve`, until it says that it serves. */
export async function serve(args: string[]): Promise<ServedShop> {
  const child = start(['serve', '--port', '0', '--log', 'warn', ...args])
  let said = ''
  child.stderr!.setEncoding('utf8').on('data', (text) => {
    said += text
  })
  const ended = new Promise<number | null>((done) => child.once('close', done))
  await new Promise<void>((done, failed) => {
    child.stdout!.setEncoding('utf8').on('data', (text: string) => {
      said += text
      if (/serves at[\s\S]*\n\n$/.test(said)) done()
    })
    void ended.then((status) => failed(new Error(`ended with ${status}: ${said}`)))
  })
  return {
    said,
    url: /serves at (\S+)/.exec(said)![1]!,
    code: /with the code {2}(\S+)/.exec(said)?.[1],
    stop() {
      child.kill('SIGTERM')
      return ended
    },
  }
}

export type PairedDevice = { cookie: string; send(count: number): Promise<number> }

/** A device that is paired with the code and enters notes about one unit. */
export async function pairedDevice({ url }: ServedShop, code: string, unit: string): Promise<PairedDevice> {
  const device = randomUUID()
  const post = (path: string, body: object, headers: Record<string, string> = {}) =>
    fetch(`${url}${path}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', ...headers },
      body: JSON.stringify(body),
    })
  const paired = await post('/api/pairing', {
    code,
    name: 'Owner',
    device: { id: device, secret: sha256(device), name: 'phone' },
  })
  if (paired.status !== 201) throw new Error(await paired.text())
  const cookie = paired.headers.get('set-cookie')!.split(';')[0]!
  const { person } = (await paired.json()) as { person: { id: string } }
  let knowledge: Knowledge = knowledgeOf(unit, device, [])
  return {
    cookie,
    async send(count) {
      const entries = Array.from({ length: count }, (_, i) => {
        const given = {
          id: randomUUID(),
          at: new Date(Date.parse('2026-03-01T09:00:00.000Z') + i * 1_000).toISOString(),
          who: person.id,
        }
        const event = nextEntry(
          knowledge,
          { ...given, ...noteWritten({ text: `note ${i} ${'x'.repeat(200)}` }) },
          sha256,
        )
        knowledge = learn(knowledge, event)
        return event
      })
      return (await post('/api/entries', { entries }, { cookie })).status
    },
  }
}
