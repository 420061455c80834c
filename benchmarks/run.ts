/** Runs one benchmark by name, or all: each prints a table of what it measured on this machine and holds nothing against it. */
import { spawnSync } from 'node:child_process'

type Question = (print: (line: string) => void) => Promise<void>

const QUESTIONS: Record<string, () => Promise<Question>> = {
  'placement-speed': async () => (await import('./placement-speed.ts')).placementSpeed,
  'measuring-order': async () => (await import('./measuring-order.ts')).measuringOrder,
  'record-load': async () => (await import('./record-load.ts')).recordLoad,
  'shop-load': async () => (await import('./shop-load.ts')).shopLoad,
  'page-load': async () => (await import('./page-load.ts')).pageLoad,
  'page-verdict': async () => (await import('./page-verdict.ts')).pageVerdict,
  'page-photograph': async () => (await import('./page-photograph.ts')).pagePhotograph,
  'tightening-condense': async () => (await import('./tightening-condense.ts')).tighteningCondense,
  'tightening-orders': async () => (await import('./tightening-orders.ts')).tighteningOrders,
  'tightening-spread': async () => (await import('./tightening-spread.ts')).tighteningSpread,
}

async function main(names: string[]): Promise<void> {
  const unknown = names.filter((name) => !(name in QUESTIONS))
  if (unknown.length > 0) {
    process.stderr.write(`no benchmark called ${unknown.join(', ')}; there are ${Object.keys(QUESTIONS).join(', ')}\n`)
    process.exitCode = 2
    return
  }
  const [name, ...more] = names.length > 0 ? names : Object.keys(QUESTIONS)
  if (more.length > 0) {
    for (const one of [name!, ...more]) alone(one)
    return
  }
  process.stdout.write(`## ${name}\n\n`)
  const question = await QUESTIONS[name!]!()
  await question((line) => process.stdout.write(`${line}\n`))
  process.stdout.write('\n')
}

/** In a process of its own: what one loads can slow the sums of another (once any room for numbers was given away, V8 asks at every access whether it is still there). */
function alone(name: string): void {
  const { status } = spawnSync(process.execPath, [...process.execArgv, process.argv[1]!, name], { stdio: 'inherit' })
  if (status !== 0) process.exitCode = 1
}

await main(process.argv.slice(2))
