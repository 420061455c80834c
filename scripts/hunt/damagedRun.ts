import { main } from '../../packages/cli/src/main.ts'
import { testWorld } from '../../packages/cli/src/testing/testWorld.ts'
import { mutated } from '../../packages/record/src/unitFile/testing/mutate.ts'
import { pick, seeded } from '../../packages/record/src/unitFile/testing/random.ts'
import { SMALL_UNITS } from './smallUnits.ts'

export type DamagedRun = { seed: number; text: string; status: number; milliseconds: number; fault: string }

/**
 * Runs `gripbook place` on a damaged unit file that the seed settles. `fault` says what is wrong with how it ended, and is empty when it was
 * answered (0 or 1) with an answer, or refused (2) with words and nothing else.
 */
export async function damagedRun(seed: number): Promise<DamagedRun> {
  const random = seeded(seed)
  const text = mutated(pick(random, SMALL_UNITS), random)
  const world = testWorld({ 'unit.json': text }, { columns: 40 + (seed % 60) })
  const asJson = random() < 0.5
  const start = performance.now()
  const status = await main(asJson ? ['place', 'unit.json', '--json'] : ['place', 'unit.json'], world)
  return {
    seed,
    text,
    status,
    milliseconds: performance.now() - start,
    fault: faultOf(text, status, world.said, asJson),
  }
}

function faultOf(text: string, status: number, { out, err }: { out: string; err: string }, asJson: boolean): string {
  const said = /undefined|NaN|\[object|Infinity/.exec(out + err)
  // a file may hold such a word itself
  const odd = said && !text.includes(said[0]) ? said : null
  if (status === 2) return out !== '' || err === '' ? 'refused without words, or with an answer' : oddWords(odd)
  if (status !== 0 && status !== 1) return `status ${status}: ${err.trim()}`
  if (err !== '' || out === '') return 'answered with words of fault, or not at all'
  if (!asJson) return oddWords(odd)
  const answer = JSON.parse(out) as { gripbook: string; faces: { feasible: boolean; changes: { count: number } }[] }
  const wrong = answer.faces.some((face) => !face.feasible || face.changes.count > 0)
  return answer.gripbook === 'placement/1' && Number(wrong) === status ? oddWords(odd) : 'status and answer differ'
}

function oddWords(odd: RegExpExecArray | null): string {
  return odd ? `"${odd[0]}" stands in what is printed` : ''
}
