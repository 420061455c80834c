import { describe, expect, test } from 'vitest'
import { type AssignmentTask, assignablePairs, cheapestAssignment, moveItem } from './assignment.ts'
import { seededRandom } from './random.ts'

const NO = Number.POSITIVE_INFINITY

function task(rows: number[][], capacity: number[]): AssignmentTask {
  return { items: rows.length, bins: capacity.length, cost: Float64Array.from(rows.flat()), capacity }
}

/** Every complete assignment, with its cost. */
function all({ items, bins, cost, capacity }: AssignmentTask): { bin: number[]; cost: number }[] {
  const found: { bin: number[]; cost: number }[] = []
  const go = (bin: number[], sum: number) => {
    const item = bin.length
    if (item === items) {
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

/** Small tasks of whole costs, some pairs forbidden, some bins without end. Many have no answer, many have one that looks greedy and is not. */
function drawn(seed: number): AssignmentTask {
  const next = seededRandom(seed)
  const whole = (least: number, most: number) => least + Math.floor(next() * (most - least + 1))
  const items = whole(2, 5)
  const bins = whole(2, 4)
  const forbidden = next() * 0.6
  const rows = Array.from({ length: items }, () =>
    Array.from({ length: bins }, () => (next() < forbidden ? NO : whole(-3, 9))),
  )
  return task(
    rows,
    Array.from({ length: bins }, () => (next() < 0.15 ? NO : whole(0, 3))),
  )
}

const seeds = Array.from({ length: 600 }, (_, seed) => seed + 1)

describe('cheapestAssignment', () => {
  test('two items that want the one place: the one that loses less goes elsewhere', () => {
    expect(
      cheapestAssignment(
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
      cheapestAssignment(
        task(
          [
            [1, 9],
            [1, 3],
          ],
          [1, 1],
        ),
      ),
    ).toEqual({ bin: Int32Array.from([0, 1]), cost: 4 })
  })

  test('a chain of moves makes room', () => {
    // The third item can go in the first bin alone, whose item must go on, and so must the next.
    const rows = [
      [0, 1, NO],
      [NO, 0, 1],
      [0, NO, NO],
    ]
    expect(cheapestAssignment(task(rows, [1, 1, 1]))).toEqual({ bin: Int32Array.from([1, 2, 0]), cost: 2 })
  })

  test('a bin without end takes everything', () => {
    expect(
      cheapestAssignment(
        task(
          [
            [1, 0],
            [1, 0],
            [1, 0],
          ],
          [3, NO],
        ),
      )?.bin,
    ).toEqual(Int32Array.from([1, 1, 1]))
  })

  test('no items at all cost nothing', () => {
    expect(cheapestAssignment(task([], [1, 1]))).toEqual({ bin: new Int32Array(0), cost: 0 })
  })

  test('there is none where an item goes nowhere or there is too little room', () => {
    expect(cheapestAssignment(task([[NO, NO]], [1, 1]))).toBeNull()
    expect(cheapestAssignment(task([[0, NO]], [0, 1]))).toBeNull()
    expect(
      cheapestAssignment(
        task(
          [
            [0, NO],
            [0, NO],
          ],
          [1, 1],
        ),
      ),
    ).toBeNull()
    expect(
      cheapestAssignment(
        task(
          [
            [0, 0],
            [0, 0],
            [0, 0],
          ],
          [1, 1],
        ),
      ),
    ).toBeNull()
  })

  test('on 600 small tasks it is the cheapest of all assignments', () => {
    let none = 0
    for (const seed of seeds) {
      const one = drawn(seed)
      const every = all(one)
      const found = cheapestAssignment(one)
      if (every.length === 0) {
        none++
        expect(found, `seed ${seed}`).toBeNull()
        continue
      }
      expect(found?.cost, `seed ${seed}`).toBe(Math.min(...every.map(({ cost }) => cost)))
      expect(every, `seed ${seed}`).toContainEqual({ bin: [...found!.bin], cost: found!.cost })
    }
    expect(none).toBeGreaterThan(100)
    expect(none).toBeLessThan(500)
  })
})

describe('assignablePairs', () => {
  test('a place that another item must have is not open', () => {
    const one = task(
      [
        [0, 0],
        [0, NO],
      ],
      [1, 1],
    )
    expect([...assignablePairs(one, Int32Array.from([1, 0]))]).toEqual([0, 1, 1, 0])
  })

  test('two items may exchange, three may go round', () => {
    const ring = task(
      [
        [0, 0, NO],
        [NO, 0, 0],
        [0, NO, 0],
      ],
      [1, 1, 1],
    )
    expect([...assignablePairs(ring, Int32Array.from([0, 1, 2]))]).toEqual([1, 1, 0, 0, 1, 1, 1, 0, 1])
  })

  test('room at the end of a chain opens all of it', () => {
    const chain = task(
      [
        [0, 0, NO],
        [NO, 0, 0],
      ],
      [1, 1, 1],
    )
    expect([...assignablePairs(chain, Int32Array.from([0, 1]))]).toEqual([1, 1, 0, 0, 1, 1])
    expect([...assignablePairs(chain, Int32Array.from([0, 2]))]).toEqual([1, 1, 0, 0, 1, 1])
  })

  test('on 600 small tasks, whichever assignment it starts from, it is every pair of any assignment', () => {
    for (const seed of seeds) {
      const one = drawn(seed)
      const every = all(one)
      const stand = new Array(one.items * one.bins).fill(0)
      for (const { bin } of every)
        bin.forEach((b, item) => {
          stand[item * one.bins + b] = 1
        })
      for (const { bin } of [every[0], every[every.length - 1]].filter((start) => start !== undefined))
        expect([...assignablePairs(one, Int32Array.from(bin))], `seed ${seed}`).toEqual(stand)
    }
  })
})

describe('moveItem', () => {
  test('an item that is there already stays', () => {
    const bin = Int32Array.from([0, 1])
    expect(
      moveItem(
        task(
          [
            [0, 0],
            [0, 0],
          ],
          [1, 1],
        ),
        bin,
        0,
        0,
        0,
      ),
    ).toBe(true)
    expect([...bin]).toEqual([0, 1])
  })

  test('two items exchange, unless the other is fixed', () => {
    const one = task(
      [
        [0, 0],
        [0, 0],
      ],
      [1, 1],
    )
    const bin = Int32Array.from([0, 1])
    expect(moveItem(one, bin, 1, 0, 1)).toBe(false)
    expect([...bin]).toEqual([0, 1])
    expect(moveItem(one, bin, 1, 0, 0)).toBe(true)
    expect([...bin]).toEqual([1, 0])
  })

  test('a shorter chain is taken before a longer one', () => {
    // To the first bin: its item can go straight to the last, which has room, or drive on the second's.
    const one = task(
      [
        [0, 0, 0],
        [0, 0, 0],
        [0, 0, 0],
      ],
      [1, 1, 2],
    )
    const bin = Int32Array.from([0, 1, 2])
    expect(moveItem(one, bin, 2, 0, 0)).toBe(true)
    expect([...bin]).toEqual([2, 1, 0])
  })

  test('on 600 small tasks it moves just when some assignment has the item there and the fixed ones where they were', () => {
    const seen = { moved: 0, not: 0 }
    for (const seed of seeds) {
      const one = drawn(seed)
      const every = all(one)
      if (every.length === 0) continue
      const start = every[seed % every.length]!.bin
      for (let item = 0; item < one.items; item++)
        for (let to = 0; to < one.bins; to++)
          for (let fixed = 0; fixed <= item; fixed++) {
            if (one.cost[item * one.bins + to] === NO || one.capacity[to] === 0) continue
            const possible = every.some(
              ({ bin }) => bin[item] === to && bin.every((b, i) => i >= fixed || b === start[i]),
            )
            const bin = Int32Array.from(start)
            const moved = moveItem(one, bin, item, to, fixed)
            const where = `seed ${seed}, item ${item} to ${to}, ${fixed} fixed`
            expect(moved, where).toBe(possible)
            seen[moved ? 'moved' : 'not']++
            if (!moved) expect([...bin], where).toEqual(start)
            else {
              expect(bin[item], where).toBe(to)
              expect([...bin].slice(0, fixed), where).toEqual(start.slice(0, fixed))
              expect(
                every.some((other) => other.bin.join() === bin.join()),
                where,
              ).toBe(true)
            }
          }
    }
    expect(Math.min(seen.moved, seen.not)).toBeGreaterThan(300)
  })
})
