import { expect, test } from 'vitest'
import { seededRandom } from '../../maths/random.ts'
import { type Random, random } from '../../placement/testing/random.ts'
import { numbered } from './places.ts'
import { type FoundOrder, type OrderSearch, searchOrder } from './search.ts'
import { anyModel } from './testing/twoWayModel.ts'

/** No bound. */
const NONE = Number.POSITIVE_INFINITY
const plans = [[1], [0.5, 1], [0.3, 0.6, 1]]

type Trial = OrderSearch & { found: FoundOrder; startRate: number }

/** A search on any cover: some orders by chance to start from, and by chance how hard every order is. */
function trial(draw: Random, count: number, effort: number, runDown = draw.chance(0.5)): Trial {
  const model = anyModel(draw, count, runDown)
  const shares = draw.pick(plans)
  const weights = numbered(count * count).map(() => draw.next())
  const search: OrderSearch = {
    count,
    starts: numbered(draw.whole(1, 4)).map(() => draw.shuffled(numbered(count))),
    // Far off the linear range a spread can turn round its sign: such an order is as bad as any.
    rate: (sequence) => Math.abs(model.spread(sequence, shares)),
    burden: (sequence) => numbered(count).reduce((sum, i) => sum + weights[count * i + sequence[i]!]!, 0),
    effort,
    random: seededRandom(draw.whole(0, 1e9)),
  }
  const startRate = Math.min(...search.starts.map((start) => search.rate(Int32Array.from(start), NONE)))
  return { ...search, found: searchOrder(search), startRate }
}

/** The best of all orders, by trying on bolt after bolt: nothing shared with the search. */
function bestOfAll({ count, rate }: OrderSearch): number {
  let best = Number.POSITIVE_INFINITY
  const fill = (taken: number[]) => {
    if (taken.length === count) best = Math.min(best, rate(Int32Array.from(taken), NONE))
    else for (const bolt of numbered(count)) if (!taken.includes(bolt)) fill([...taken, bolt])
  }
  fill([])
  return best
}

function expectSound({ found, startRate, rate, count, effort }: Trial) {
  expect(found.sequence.toSorted((a, b) => a - b)).toEqual(numbered(count))
  expect(found.rate).toBe(rate(Int32Array.from(found.sequence), NONE))
  expect(found.rate).toBeLessThanOrEqual(startRate)
  expect(found.truly).toBe(found.rate <= 0.9 * startRate)
  expect(found.tried).toBeLessThanOrEqual(effort!)
}

test.each([
  [3, 40],
  [4, 40],
  [5, 40],
  [6, 40],
  [7, 8],
  [8, 4],
])(
  '[TI6] [TI5] with %i bolts the order found is within 5 percent of the best of all, on %i covers',
  (count, covers) => {
    const draw = random(100 + count)
    for (let cover = 0; cover < covers; cover++) {
      const tried = trial(draw, count, 60_000)
      expectSound(tried)
      expect(tried.found.rate, `cover ${cover}`).toBeLessThanOrEqual(1.05 * bestOfAll(tried))
    }
  },
)

test('[TI5] with up to 24 bolts and little effort no order found is worse than the best it started from', () => {
  const draw = random(7)
  let better = 0
  for (let cover = 0; cover < 40; cover++) {
    const tried = trial(draw, draw.whole(9, 24), draw.pick([5, 60, 800, 3000]), true)
    expectSound(tried)
    if (tried.found.truly) better++
  }
  expect(better).toBeGreaterThan(20)
})

test('a search that may not try all orders of eight bolts comes near to the best of all as well', () => {
  const draw = random(9)
  const off: number[] = []
  for (let cover = 0; cover < 6; cover++) {
    const tried = trial(draw, 8, 12_000)
    expectSound(tried)
    off.push(tried.found.rate / bestOfAll(tried))
  }
  expect(Math.max(...off)).toBeLessThan(1.05)
})
