/**
 * The whole trial: `npm run kill` kills 300 times with the embedded database and 100 times with Debian's PostgreSQL. Arguments choose:
 * `npm run kill -- server 20 7` is one place, how often, and the seed.
 */
import type { Kind } from './places.ts'
import { killTrial } from './trial.ts'

const [kind, kills, seed] = process.argv.slice(2)
const trials: [Kind, number][] =
  kind === 'embedded' || kind === 'server'
    ? [[kind, Number(kills ?? 100)]]
    : [
        ['embedded', 300],
        ['server', 100],
      ]
const say = (line: string) => process.stdout.write(`${line}\n`)

for (const [place, times] of trials) {
  const chosen = Number(seed ?? Math.floor(Math.random() * 2 ** 31))
  say(`${place}: ${times} kills, seed ${chosen}`)
  const from = performance.now()
  const outcome = await killTrial(place, times, chosen, say)
  say(`${place}: nothing lost, nothing twice, every chain whole. ${JSON.stringify(outcome)}`)
  say(`${((performance.now() - from) / 1_000).toFixed(0)} s`)
}
