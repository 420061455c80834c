/**
 * `npm run hunt [-- --seed N --runs N]`: damaged unit files with seeds that no test has seen. Stops at the first run that ends as none may, prints
 * its seed and its file, and ends with 1. What it finds becomes a test.
 */
import { parseArgs } from 'node:util'
import { damagedRun } from './hunt/damagedRun.ts'

const { values } = parseArgs({ options: { seed: { type: 'string' }, runs: { type: 'string', default: '50000' } } })
const first = Number(values.seed ?? Date.now() % 2 ** 31)
const runs =
  values.seed !== undefined && process.argv.every((arg) => !arg.startsWith('--runs')) ? 1 : Number(values.runs)
process.stdout.write(`seed ${first}, ${runs} runs\n`)

let slowest = { seed: first, milliseconds: 0 }
const ends = new Map<number, number>()
for (let seed = first; seed < first + runs; seed++) {
  const run = await damagedRun(seed)
  ends.set(run.status, (ends.get(run.status) ?? 0) + 1)
  if (run.milliseconds > slowest.milliseconds) slowest = run
  if (run.fault !== '') {
    process.stdout.write(`\nseed ${seed}: ${run.fault}\n${run.text}\n`)
    process.exitCode = 1
    break
  }
}
const told = [...ends].sort(([a], [b]) => a - b).map(([status, count]) => `${count} ended with ${status}`)
process.stdout.write(`${told.join(', ')}; slowest ${slowest.milliseconds.toFixed(0)} ms, seed ${slowest.seed}\n`)
