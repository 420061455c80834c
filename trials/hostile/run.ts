/** The whole trial: `npm run hostile` sends 20,000 wrong requests. Arguments: how many, and the seed. */
import { hostileTrial } from './trial.ts'

const [count, seed] = process.argv.slice(2)
const chosen = Number(seed ?? Math.floor(Math.random() * 2 ** 20))
process.stdout.write(`seed ${chosen}\n`)
const outcome = await hostileTrial(Number(count ?? 20_000), chosen, (line) => process.stdout.write(`${line}\n`))
process.stdout.write(`never a failure, nothing written. ${JSON.stringify(outcome)}\n`)
