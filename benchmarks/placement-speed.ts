/**
 * How long the whole answer for a face takes, beside the same questions (is there a complete placement, may each kind stand in each hole,
 * what are the fewest changes) put one by one to a mixed-integer solver in the same run.
 */
import { place } from '../packages/engine/src/placement/place.ts'
import { generateUnit } from '../packages/engine/src/placement/testing/generateUnit.ts'
import { loadSolver } from '../packages/engine/src/placement/testing/highs.ts'
import { mixedInteger } from '../packages/engine/src/placement/testing/mixedInteger.ts'
import { random } from '../packages/engine/src/placement/testing/random.ts'
import { median, short, table } from './table.ts'

const SIZES = [
  { holes: 12, kinds: 4 },
  { holes: 40, kinds: 6 },
  { holes: 120, kinds: 8 },
]
const UNITS = 5
const REPEATS = 7
/** Of a face of 120 holes so many pairs are asked, drawn by seed; their time is scaled up to all pairs. */
const SAMPLE = 24

const timed = async (work: () => unknown): Promise<number> => {
  const start = performance.now()
  await work()
  return performance.now() - start
}

export async function placementSpeed(print: (line: string) => void): Promise<void> {
  const solve = await loadSolver()
  const tools = { solver: async () => solve }
  for (const coupled of [false, true]) {
    const rows: (string | number)[][] = []
    const medians: { holes: number; own: number }[] = []
    for (const { holes, kinds } of SIZES) {
      const own: number[] = []
      const theirs: number[] = []
      let asked = 0
      for (let seed = 1; seed <= UNITS; seed += 1) {
        const { unit } = generateUnit(seed, { holes, kinds, coupled, stated: true, unread: 0.1 })
        const face = unit.faces[0]!
        await place(unit, tools)
        const times: number[] = []
        for (let repeat = 0; repeat < REPEATS; repeat += 1) times.push(await timed(() => place(unit, tools)))
        own.push(median(times))

        const model = mixedInteger(face, solve)
        const whole = await timed(() => {
          model.feasible()
          model.fewestChanges()
        })
        const pairs = face.holes.flatMap((hole) => face.kinds!.map((kind) => [hole.id, kind.id] as const))
        const put = holes >= 120 ? random(seed).shuffled(pairs).slice(0, SAMPLE) : pairs
        const each = await timed(() => {
          for (const [hole, kind] of put) model.may(hole, kind)
        })
        theirs.push(whole + (each * pairs.length) / put.length)
        asked = 2 + pairs.length
      }
      medians.push({ holes, own: median(own) })
      rows.push([
        `${holes} holes, ${kinds} kinds`,
        short(median(own)),
        `${short(Math.min(...own))} to ${short(Math.max(...own))}`,
        `${short(median(theirs))}${holes >= 120 ? ' (scaled up)' : ''}`,
        asked,
        `${short(median(theirs) / median(own))} times`,
      ])
    }
    print(coupled ? 'With rank lines and roughly known lengths:' : 'Nothing coupled beyond one length per kind:')
    print('')
    print(table(['face', 'whole answer, ms', 'range over units, ms', 'solver, ms', 'questions', 'ratio'], rows))
    const first = medians[0]!
    const last = medians.at(-1)!
    const exponent = Math.log(last.own / first.own) / Math.log(last.holes / first.holes)
    print('')
    print(
      `Time of the whole answer grows as the number of holes to the power ${exponent.toFixed(2)} (from ${first.holes} to ${last.holes} holes).`,
    )
    print('')
  }
  print(
    `Median over ${UNITS} units, each the median of ${REPEATS} runs after one to warm up. Whole answer: pairs, may-sets, changes, likelihoods, next reading, words. ` +
      `Solver: one model of the whole face, one question at a time. At 120 holes ${SAMPLE} of the pairs were asked and their time scaled up to all.`,
  )
}
