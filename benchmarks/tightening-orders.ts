/**
 * How many orders of tightening a second are simulated, bolt by bolt and pass by pass, for a cover with 24 bolts and three passes: by the chain of pivots that the
 * search uses, and turn by turn with each equilibrium solved anew, in the same run. An order on one bed counts as one.
 */
import { seededRandom } from '../packages/engine/src/maths/random.ts'
import { must } from '../packages/engine/src/must.ts'
import { type Random, random } from '../packages/engine/src/placement/testing/random.ts'
import { chainOf } from '../packages/engine/src/tightening/clamp/chain.ts'
import { type Bolt, linearCover, tighten, untouched } from '../packages/engine/src/tightening/clamp/tighten.ts'
import { burdenOf, patternsFor, type Rate, searchOrder } from '../packages/engine/src/tightening/orders/index.ts'
import { condense } from '../packages/engine/src/tightening/plate/condense.ts'
import { raterOf } from '../packages/engine/src/tightening/rating.ts'
import { type BigCover, evenCover, oddCover } from './bigCovers.ts'
import { median, short, table } from './table.ts'

/** N/mm³: a thick soft gasket to metal on metal. */
const BEDS = [0.5, 5, 50, 500]
/** From soft to stiff, as one face may say it. */
const RANGE = [5, 50, 500]
const SHARES = [0.3, 0.6, 1]
/** N/mm and N: an M6 that clamps some 30 mm. */
const BOLT = { target: 8_000, compliance: 1 / 200_000, visit: 1 }
/** Calls of the search that are written down and asked again. */
const ASKED = 12_000
const CHANCE = 4_000
const SLOW = 60
const REPEATS = 5

type Sequences = readonly Int32Array[]

export async function tighteningOrders(print: (line: string) => void): Promise<void> {
  const rows: (string | number)[][] = []
  let furthest = 0
  for (const big of [evenCover, oddCover])
    for (const bed of BEDS) {
      const bolts: Bolt[] = big.bolts.map(() => BOLT)
      const { compliance } = condense(big.cover, { stiffness: bed }, big.bolts)
      const none = bolts.map(() => 0)
      const chain = chainOf(compliance, bolts, SHARES, { loads: none, gaps: none })
      const fast = (sequence: Int32Array) => chain.loadsAfter(sequence)
      const slow = (sequence: Int32Array) => {
        const standing = untouched(bolts)
        const passes = SHARES.map((share) => ({ share, visit: 1, sequence: [...sequence] }))
        tighten(passes, bolts, true, linearCover(compliance), standing)
        return standing.loads
      }
      const asked = askedBySearch(big, compliance, bolts)
      const chance = byChance(random(7), bolts.length)
      for (const sequence of [...spread(asked), ...spread(chance)]) {
        const [one, other] = [fast(sequence), slow(sequence)]
        furthest = Math.max(furthest, ...one.map((load, j) => Math.abs(load - other[j]!) / BOLT.target))
      }
      const ofSearch = aSecond(fast, asked)
      const slowly = aSecond(slow, spread(asked))
      rows.push([
        big.name,
        bed,
        whole(ofSearch),
        whole(aSecond(fast, chance)),
        whole(slowly),
        `${short(ofSearch / slowly)} times`,
      ])
    }
  print(
    table(
      ['cover', 'bed, N/mm³', 'as a search asks, a second', 'by chance, a second', 'turn by turn, a second', 'ratio'],
      rows,
    ),
  )
  print('')
  print(
    `24 bolts run down by hand, shares ${SHARES.join(', ')}: 72 turns an order; seconds of the processor's time. Median of ${REPEATS} runs after one to warm up over ${ASKED} sequences that the search asked, in its order, over ${CHANCE} ` +
      `by chance, and over ${SLOW} of the former turn by turn. What an order begins with is not walked again when the one before began alike, which a search often asks and chance does not. Greatest difference of a load between the two ways, as a share of its target: ${furthest.toExponential(1)}.`,
  )
  print('')
  print(
    table(
      ['cover', `a search over ${RANGE.join(', ')} N/mm³, orders a second`, 'each tried on all beds', 'ratio'],
      [evenCover, oddCover].map(overRange),
    ),
  )
}

/** Orders a second of a whole search over the bed's range, where an order that one bed puts above the bound is not tried on the others, and with every order tried on all. */
function overRange({ name, cover, bolts: at }: BigCover): (string | number)[] {
  const bolts: Bolt[] = at.map(() => BOLT)
  const cases = RANGE.map((stiffness) => ({ compliance: condense(cover, { stiffness }, at).compliance, lines: [] }))
  const rate = raterOf(cases, bolts, [], 1, SHARES, true)
  const searched = (bounded: boolean) => {
    const started = process.cpuUsage()
    const found = searchFor(at, bounded ? rate : (sequence) => rate(sequence, Number.POSITIVE_INFINITY))
    const { user, system } = process.cpuUsage(started)
    return { found, aSecond: found.tried / ((user + system) / 1e6) }
  }
  searched(true)
  const [bounded, all] = [searched(true), searched(false)]
  must(
    bounded.found.sequence.join() === all.found.sequence.join(),
    'the bound changed what the search finds',
    bounded.found,
  )
  return [name, whole(bounded.aSecond), whole(all.aSecond), `${short(bounded.aSecond / all.aSecond)} times`]
}

function searchFor(at: BigCover['bolts'], rate: Rate) {
  const places = at.map((one) => ({ at: one }))
  return searchOrder({
    count: at.length,
    starts: patternsFor(places).map(({ sequence }) => sequence),
    rate,
    burden: burdenOf(places),
    effort: ASKED,
    random: seededRandom(11),
  })
}

/** What a whole search asks, in its order: from the patterns to neighbours of better and better orders. */
function askedBySearch({ bolts: at }: BigCover, compliance: number[][], bolts: Bolt[]): Sequences {
  const rate = raterOf([{ compliance, lines: [] }], bolts, [], 1, SHARES, true)
  const asked: Int32Array[] = []
  searchFor(at, (sequence, bound) => {
    asked.push(sequence.slice())
    return rate(sequence, bound)
  })
  return asked
}

function byChance(draw: Random, count: number): Sequences {
  const bolts = Array.from({ length: count }, (_, j) => j)
  return Array.from({ length: CHANCE }, () => Int32Array.from(draw.shuffled(bolts)))
}

/** As many as go the slow way, from all over the list. */
function spread(all: Sequences): Sequences {
  return Array.from({ length: SLOW }, (_, k) => all[Math.floor((k * all.length) / SLOW)]!)
}

/** A second of the processor's time: what else a machine does counts less than by the clock. */
function aSecond(simulate: (sequence: Int32Array) => ArrayLike<number>, sequences: Sequences): number {
  let kept = 0
  const times: number[] = []
  for (let repeat = 0; repeat <= REPEATS; repeat += 1) {
    const started = process.cpuUsage()
    for (const sequence of sequences) kept += simulate(sequence)[0]!
    const { user, system } = process.cpuUsage(started)
    if (repeat > 0) times.push((user + system) / 1000)
  }
  return Number.isFinite(kept) ? (1000 * sequences.length) / median(times) : Number.NaN
}

const whole = (value: number) => String(Math.round(value))
