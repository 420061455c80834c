/** Runs one benchmark by name, or all: each prints a table of what it measured on this machine and holds nothing against it. */
import { measuringOrder } from './measuring-order.ts'
import { pageLoad } from './page-load.ts'
import { pagePhotograph } from './page-photograph.ts'
import { pageVerdict } from './page-verdict.ts'
import { placementSpeed } from './placement-speed.ts'
import { recordLoad } from './record-load.ts'
import { shopLoad } from './shop-load.ts'
import { tighteningCondense } from './tightening-condense.ts'
import { tighteningOrders } from './tightening-orders.ts'
import { tighteningSpread } from './tightening-spread.ts'

const QUESTIONS: Record<string, (print: (line: string) => void) => Promise<void>> = {
  'placement-speed': placementSpeed,
  'measuring-order': measuringOrder,
  'record-load': recordLoad,
  'shop-load': shopLoad,
  'page-load': pageLoad,
  'page-verdict': pageVerdict,
  'page-photograph': pagePhotograph,
  'tightening-condense': tighteningCondense,
  'tightening-orders': tighteningOrders,
  'tightening-spread': tighteningSpread,
}

async function main(names: string[]): Promise<void> {
  const unknown = names.filter((name) => !(name in QUESTIONS))
  if (unknown.length > 0) {
    process.stderr.write(`no benchmark called ${unknown.join(', ')}; there are ${Object.keys(QUESTIONS).join(', ')}\n`)
    process.exitCode = 2
    return
  }
  for (const name of names.length > 0 ? names : Object.keys(QUESTIONS)) {
    process.stdout.write(`## ${name}\n\n`)
    await QUESTIONS[name]!((line) => process.stdout.write(`${line}\n`))
    process.stdout.write('\n')
  }
}

await main(process.argv.slice(2))
