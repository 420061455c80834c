// Long because every question is put by hand, against all assignments, with and without a solver.
import { describe, expect, test } from 'vitest'
import type { AssignmentTask } from '../maths/assignment.ts'
import { seededRandom } from '../maths/random.ts'
import type { Clash, Coupling, PairNumber } from './coupling.ts'
import { pairsOf, Search } from './search.ts'
import { type MixedIntegerSolver, Stopped } from './solver.ts'

const NO = Number.POSITIVE_INFINITY

function task(rows: number[][], capacity: number[]): AssignmentTask {
  return { items: rows.length, bins: capacity.length, cost: Float64Array.from(rows.flat()), capacity }
}

/** Stands for what ties pairs: these sets of pairs clash, and nothing else. Counts how often it was asked. */
function clashing(sets: Clash[]) {
  const asked: PairNumber[][] = []
  const clash = (pairs: PairNumber[]) => {
    asked.push(pairs)
    return sets.find((set) => set.every((pair) => pairs.includes(pair))) ?? null
  }
  return { coupling: { clash } as unknown as Coupling, asked }
}

type Placed = { bin: number[]; cost: number }

/** Every complete assignment of the task without one of the sets. */
function all({ items, bins, cost, capacity }: AssignmentTask, sets: Clash[]): Placed[] {
  const found: Placed[] = []
  const go = (bin: number[], sum: number) => {
    const item = bin.length
    if (item === items) {
      if (!sets.some((set) => set.every((pair) => bin[Math.floor(pair / bins)] === pair % bins)))
        found.push({ bin, cost: sum })
      return
    }
    for (let b = 0; b < bins; b++) {
      const more = cost[item * bins + b]!
      if (more < NO && bin.filter((other) => other === b).length < capacity[b]!) go([...bin, b], sum + more)
    }
  }
  go([], 0)
  return found
}

/** A solver for models of a few yes-or-no names: reads the text, tries everything. */
const trySolve: MixedIntegerSolver = (text) => {
  const objective = /obj: (.*)\n/.exec(text)![1]!
  const binaries = /Binaries\n (.*)\nEnd/.exec(text)![1]!.split(' ')
  const rows = [...text.matchAll(/ r\d+: (.*) (=|<=) (\d+)\n/g)].map(([, left, sign, right]) => ({
    left: left!.split(' + '),
    sign,
    right: Number(right),
  }))
  const prices = new Map<string, number>()
  for (const [, sign, size, name] of objective.matchAll(/([+-])? ?([\d.e-]+) (x\d+)/g))
    prices.set(name!, (sign === '-' ? -1 : 1) * Number(size))
  let best: Record<string, number> | null = null
  let least = NO
  for (let bits = 0; bits < 2 ** binaries.length; bits++) {
    const values = Object.fromEntries(binaries.map((name, i) => [name, Math.floor(bits / 2 ** i) % 2]))
    const holds = rows.every(({ left, sign, right }) => {
      const sum = left.reduce((total, name) => total + values[name]!, 0)
      return sign === '=' ? sum === right : sum <= right
    })
    const cost = binaries.reduce((total, name) => total + (values[name]! > 0 ? (prices.get(name) ?? 0) : 0), 0)
    if (!holds || cost >= least) continue
    best = values
    least = cost
  }
  return best ? { status: 'optimal', values: best } : { status: 'infeasible', values: {} }
}

/** Two to four holes, three bins; clashes of one to three pairs. */
function drawn(seed: number, mostHoles = 4) {
  const next = seededRandom(seed)
  const whole = (least: number, most: number) => least + Math.floor(next() * (most - least + 1))
  const holes = whole(2, mostHoles)
  const bins = 3
  const rows = Array.from({ length: holes }, () =>
    Array.from({ length: bins }, () => (next() < 0.2 ? NO : whole(-2, 9))),
  )
  const sets = Array.from({ length: whole(1, 6) }, () => {
    const set = Array.from({ length: holes }, (_, h) => h * bins + whole(0, bins - 1))
    return set.filter(() => next() < 0.6).slice(0, 3)
  }).filter((set) => set.length > 0)
  return { make: () => task(rows, [2, 2, 3]), sets }
}

describe('without anything tied', () => {
  test('it is the cheapest assignment', async () => {
    const search = new Search(null, [], {})
    expect(
      await search.cheapest(
        task(
          [
            [1, 3],
            [1, 9],
          ],
          [1, 1],
        ),
      ),
    ).toEqual({ bin: Int32Array.from([1, 0]), cost: 4 })
    expect(
      await search.cheapest(
        task(
          [
            [1, NO],
            [1, NO],
          ],
          [1, 1],
        ),
      ),
    ).toBeNull()
  })

  test('clashes known beforehand that are certain leave nothing', async () => {
    expect(await new Search(null, [[0]], {}).cheapest(task([[1, NO]], [1, 1]))).toBeNull()
    expect(await new Search(null, [[0]], {}).cheapest(task([[1, 5]], [1, 1]))).toMatchObject({ cost: 5 })
  })
})

describe('with sets of pairs that clash', () => {
  test('it takes the next cheapest', async () => {
    // As cheap as can be is both in the first bin, 0. One of them must go: 3 or 4.
    const { coupling } = clashing([[0, 2]])
    const found = await new Search(coupling, [], {}).cheapest(
      task(
        [
          [0, 4],
          [0, 3],
        ],
        [2, 2],
      ),
    )
    expect(found).toEqual({ bin: Int32Array.from([0, 1]), cost: 3 })
  })

  test('a clash that has been found is not asked for again', async () => {
    const { coupling, asked } = clashing([[0, 2]])
    const clashes: Clash[] = []
    const search = new Search(coupling, clashes, {})
    await search.cheapest(
      task(
        [
          [0, 4],
          [0, 3],
        ],
        [2, 2],
      ),
    )
    expect(clashes).toEqual([[0, 2]])
    expect(asked).toEqual([
      [0, 2],
      [0, 3],
    ])
    await search.cheapest(
      task(
        [
          [0, 4],
          [0, 3],
        ],
        [2, 2],
      ),
    )
    expect(asked.filter((pairs) => pairs.join() === '0,2')).toHaveLength(1)
    expect(clashes).toHaveLength(1)
  })

  test('a clash whose other pairs are certain forbids its last one without a question', async () => {
    const { coupling, asked } = clashing([[0, 2]])
    const found = await new Search(coupling, [[0, 2]], {}).cheapest(
      task(
        [
          [0, NO],
          [0, 3],
        ],
        [2, 2],
      ),
    )
    expect(found).toMatchObject({ cost: 3 })
    expect(asked).toEqual([[0, 3]])
  })

  test('what one clash forbids makes another certain', async () => {
    // The first hole must be in bin 0, so the second in bin 1, so the third in bin 0 again.
    const sets = [
      [3, 5],
      [0, 2],
    ]
    const { coupling, asked } = clashing(sets)
    const found = await new Search(coupling, [...sets], {}).cheapest(
      task(
        [
          [0, NO],
          [0, 3],
          [2, 0],
        ],
        [3, 3],
      ),
    )
    expect(found).toEqual({ bin: Int32Array.from([0, 1, 0]), cost: 5 })
    expect(asked).toEqual([[0, 3, 4]])
  })

  test('nothing is left where every way clashes', async () => {
    const sets = [
      [0, 2],
      [0, 3],
      [1, 2],
      [1, 3],
    ]
    const { coupling, asked } = clashing(sets)
    expect(
      await new Search(coupling, [], {}).cheapest(
        task(
          [
            [0, 0],
            [0, 0],
          ],
          [2, 2],
        ),
      ),
    ).toBeNull()
    expect(asked.length).toBeLessThanOrEqual(4)
    const before = asked.length
    expect(
      await new Search(coupling, [...sets], {}).cheapest(
        task(
          [
            [0, 0],
            [0, NO],
          ],
          [2, 2],
        ),
      ),
    ).toBeNull()
    expect(asked).toHaveLength(before)
  })

  test('readings that clash by themselves leave nothing', async () => {
    expect(await new Search(clashing([[]]).coupling, [], {}).cheapest(task([[0, 0]], [2, 2]))).toBeNull()
  })

  test('on 200 small tasks it is the cheapest of all that do not clash, and with "any" one of them', async () => {
    let none = 0
    for (let seed = 1; seed <= 200; seed++) {
      const { make, sets } = drawn(seed)
      const every = all(make(), sets)
      const found = await new Search(clashing(sets).coupling, [], {}).cheapest(make())
      const any = await new Search(clashing(sets).coupling, [], {}).cheapest(make(), true)
      const where = `seed ${seed}`
      if (every.length === 0) {
        none++
        expect([found, any], where).toEqual([null, null])
        continue
      }
      expect(found?.cost, where).toBe(Math.min(...every.map(({ cost }) => cost)))
      expect(every, where).toContainEqual({ bin: [...found!.bin], cost: found!.cost })
      expect(every, where).toContainEqual({ bin: [...any!.bin], cost: any!.cost })
    }
    expect(none).toBeGreaterThan(5)
    expect(none).toBeLessThan(100)
  })
})

describe('stopped', () => {
  test('it throws, and only where there is something to search', async () => {
    const stop = { aborted: true }
    const { coupling } = clashing([[0, 2]])
    await expect(
      new Search(coupling, [], { stop }).cheapest(
        task(
          [
            [0, 4],
            [0, 3],
          ],
          [2, 2],
        ),
      ),
    ).rejects.toThrow(Stopped)
    expect(await new Search(null, [], { stop }).cheapest(task([[0, 4]], [2, 2]))).not.toBeNull()
    expect(
      await new Search(coupling, [], { stop: { aborted: false } }).cheapest(
        task(
          [
            [0, 4],
            [0, 3],
          ],
          [2, 2],
        ),
      ),
    ).not.toBeNull()
  })

  test('it throws while the solver is asked too', async () => {
    const { coupling } = clashing([[0, 2]])
    const stop = { aborted: false }
    const solver = async () => {
      stop.aborted = true
      return trySolve
    }
    const search = new Search(coupling, [], { stop, solver, patience: 0 })
    await expect(
      search.cheapest(
        task(
          [
            [0, 4],
            [0, 3],
          ],
          [2, 2],
        ),
      ),
    ).rejects.toThrow(Stopped)
  })
})

describe('with a solver', () => {
  test('the question is put as counts and clashes, each clash that shows as one row more', async () => {
    const texts: string[] = []
    const solver = async (): Promise<MixedIntegerSolver> => (text) => {
      texts.push(text)
      return trySolve(text)
    }
    const { coupling } = clashing([
      [0, 2],
      [0, 3],
    ])
    const found = await new Search(coupling, [], { solver, patience: 0 }).cheapest(
      task(
        [
          [-1.5, 4],
          [0, 3],
        ],
        [1, 2],
      ),
    )
    expect(found).toEqual({ bin: Int32Array.from([1, 0]), cost: 4 })
    // The first bin holds one, so nothing but [0, 3] and [1, 2] and [1, 3] are left; the first of these clashes.
    expect(texts).toEqual([
      'Minimize\n obj: - 1.5 x0 + 4 x1 + 3 x3\nSubject To\n r0: x0 + x1 = 1\n r1: x2 + x3 = 1\n r2: x0 + x2 <= 1\n r3: x0 + x3 <= 1\nBinaries\n x0 x1 x2 x3\nEnd\n',
    ])
  })

  test('a question without prices and with pairs forbidden', async () => {
    const texts: string[] = []
    const solver = async (): Promise<MixedIntegerSolver> => (text) => {
      texts.push(text)
      return trySolve(text)
    }
    const sets = [
      [1, 3],
      [0, 2],
    ]
    const { coupling } = clashing(sets)
    const rows = [
      [NO, 0, 0],
      [0, 0, NO],
    ]
    const found = await new Search(
      coupling,
      [
        [0, 4],
        [1, 4],
      ],
      { solver, patience: 0 },
    ).cheapest(task(rows, [5, 1, NO]))
    expect(found?.cost).toBe(0)
    expect(texts[0]).toBe(
      'Minimize\n obj: 0 x1\nSubject To\n r0: x1 + x2 = 1\n r1: x3 + x4 = 1\n r2: x1 + x4 <= 1\n r3: x1 + x4 <= 1\n r4: x1 + x3 <= 1\nBinaries\n x1 x2 x3 x4\nEnd\n',
    )
    expect(texts.every((text) => !text.includes('x0'))).toBe(true)
  })

  test('it is loaded once, and not at all where the search is done in time', async () => {
    let loaded = 0
    const solver = async () => {
      loaded++
      return trySolve
    }
    const rows = [
      [0, 4],
      [0, 3],
    ]
    const one = new Search(clashing([[0, 2]]).coupling, [], { solver })
    expect(await one.cheapest(task(rows, [2, 2]))).toMatchObject({ cost: 3 })
    expect(loaded).toBe(0)
    const other = new Search(
      clashing([
        [0, 2],
        [1, 2],
        [0, 3],
      ]).coupling,
      [],
      { solver, patience: 0 },
    )
    expect(await other.cheapest(task(rows, [2, 2]))).toMatchObject({ cost: 7 })
    expect(loaded).toBe(1)
    expect(
      await other.cheapest(
        task(
          [
            [0, 4],
            [0, 3],
          ],
          [2, 2],
        ),
      ),
    ).toMatchObject({ cost: 7 })
    expect(loaded).toBe(1)
  })

  test('after so many nodes as patience says', async () => {
    const nodes = async (patience: number) => {
      let loaded = false
      const solver = async () => {
        loaded = true
        return trySolve
      }
      // Each answer clashes with the next in turn: [0, 0], [0, 1], [1, 0], [1, 1] cost 0, 3, 4, 7.
      const { coupling } = clashing([
        [0, 2],
        [0, 3],
        [1, 2],
      ])
      await new Search(coupling, [], { solver, patience }).cheapest(
        task(
          [
            [0, 4],
            [0, 3],
          ],
          [2, 2],
        ),
      )
      return loaded
    }
    expect(await nodes(0)).toBe(true)
    expect(await nodes(1)).toBe(true)
    expect(await nodes(50)).toBe(false)
  })

  test('an answer of the solver teaches every clash in it', async () => {
    const clashes: Clash[] = []
    const { coupling } = clashing([
      [0, 2],
      [4, 6],
    ])
    const solver = async () => trySolve
    const rows = [
      [0, 1],
      [0, 2],
      [0, 3],
      [0, 4],
    ]
    const found = await new Search(coupling, clashes, { solver, patience: 0 }).cheapest(task(rows, [4, 4]))
    expect(found).toEqual({ bin: Int32Array.from([1, 0, 1, 0]), cost: 4 })
    expect(clashes).toEqual([
      [0, 2],
      [4, 6],
    ])
  })

  test('where it says that there is nothing there is nothing', async () => {
    const sets = [
      [0, 2],
      [0, 3],
      [1, 2],
      [1, 3],
    ]
    const solver = async () => trySolve
    expect(
      await new Search(clashing(sets).coupling, [], { solver, patience: 0 }).cheapest(
        task(
          [
            [0, 1],
            [0, 1],
          ],
          [2, 2],
        ),
      ),
    ).toBeNull()
  })

  test('on 60 small tasks it comes to the same as the search', async () => {
    let asked = 0
    const solver = async (): Promise<MixedIntegerSolver> => (text) => {
      asked++
      return trySolve(text)
    }
    for (let seed = 1; seed <= 60; seed++) {
      const { make, sets } = drawn(seed, 3)
      const every = all(make(), sets)
      const found = await new Search(clashing(sets).coupling, [], { solver, patience: 0 }).cheapest(make())
      const where = `seed ${seed}`
      expect(found?.cost ?? null, where).toBe(every.length > 0 ? Math.min(...every.map(({ cost }) => cost)) : null)
      if (found) expect(every, where).toContainEqual({ bin: [...found.bin], cost: found.cost })
    }
    expect(asked).toBeGreaterThan(10)
  })
})

test('the pairs of a placement are numbered hole by hole', () => {
  expect(pairsOf({ bin: Int32Array.from([2, 0, 1]), cost: 0 }, 3)).toEqual([2, 3, 7])
})
