import { describe, expect, test } from 'vitest'
import { LinearSystem } from './linearSystem.ts'
import { seededRandom } from './random.ts'

const INFINITE = Number.POSITIVE_INFINITY

/** A system of variables between `ends`, each with the reason of its place, and of forms that are not bounded yet. */
function system(ends: [number, number][], ...forms: [variable: number, factor: number][][]) {
  const made = new LinearSystem()
  const variables = ends.map(([lo, hi], reason) => made.addVariable(lo, hi, reason))
  return { made, variables, forms: forms.map((terms) => made.addForm(terms)) }
}

describe('one variable', () => {
  test('has a value between its ends, also where they meet', () => {
    expect(system([[2, 5]]).made.check()).toBeNull()
    expect(system([[5, 5]]).made.check()).toBeNull()
    expect(system([[-INFINITE, INFINITE]]).made.check()).toBeNull()
  })

  test('has none between ends that have crossed, and both are named', () => {
    const { made, variables } = system([[2, 5]])
    made.bound(variables[0]!, 6, INFINITE, 7)
    expect(made.check()).toEqual([0, 7])
  })

  test('ends that cross by one reason name it once', () => {
    expect(
      system([
        [0, 1],
        [6, 5],
      ]).made.check(),
    ).toEqual([1])
  })

  test('ends set by nobody are not named', () => {
    const made = new LinearSystem()
    made.addVariable(6, 5, -1)
    expect(made.check()).toEqual([])
  })

  test('a thousandth of the small unit is rounding, more is a clash', () => {
    expect(system([[5.0009, 5]]).made.check()).toBeNull()
    expect(system([[5.0011, 5]]).made.check()).toEqual([0])
  })

  test('the tighter end stays with its reason, whichever comes first', () => {
    const { made, variables } = system([[0, 10]])
    made.bound(variables[0]!, -INFINITE, 8, 1)
    made.bound(variables[0]!, -INFINITE, 9, 2)
    made.bound(variables[0]!, 3, INFINITE, 3)
    made.bound(variables[0]!, 2, INFINITE, 4)
    expect(made.check()).toBeNull()
    made.bound(variables[0]!, 9, INFINITE, 5)
    expect(made.check()).toEqual([1, 5])
    made.bound(variables[0]!, -INFINITE, 2, 6)
    expect(made.check()).toEqual([5, 6])
  })

  test('an equal end keeps the first reason', () => {
    const { made, variables } = system([[3, 5]])
    made.bound(variables[0]!, 3, 5, 9)
    made.bound(variables[0]!, 6, INFINITE, 1)
    expect(made.check()).toEqual([0, 1])
    const other = system([[3, 5]])
    other.made.bound(other.variables[0]!, 3, 5, 9)
    other.made.bound(other.variables[0]!, -INFINITE, 2, 1)
    expect(other.made.check()).toEqual([0, 1])
  })
})

describe('forms', () => {
  test('a sum reaches what its parts reach, and not more', () => {
    const { made, forms } = system(
      [
        [0, 4],
        [0, 3],
      ],
      [
        [0, 1],
        [1, 1],
      ],
    )
    made.bound(forms[0]!, 7, INFINITE, 5)
    expect(made.check()).toBeNull()
    made.bound(forms[0]!, 8, INFINITE, 6)
    expect(made.check()).toEqual([0, 1, 6])
  })

  test('a sum falls as far as its parts fall, and not further', () => {
    const { made, forms } = system(
      [
        [2, 4],
        [1, 3],
      ],
      [
        [0, 1],
        [1, 1],
      ],
    )
    made.bound(forms[0]!, -INFINITE, 3, 5)
    expect(made.check()).toBeNull()
    made.bound(forms[0]!, -INFINITE, 2, 6)
    expect(made.check()).toEqual([0, 1, 6])
  })

  test('a difference names the end that matters of each part', () => {
    const { made, variables, forms } = system(
      [
        [0, 100],
        [0, 100],
      ],
      [
        [0, 1],
        [1, -1],
      ],
    )
    made.bound(variables[0]!, -INFINITE, 10, 2)
    made.bound(variables[1]!, 6, INFINITE, 3)
    made.bound(forms[0]!, 4, INFINITE, 4)
    expect(made.check()).toBeNull()
    made.bound(forms[0]!, 5, INFINITE, 5)
    expect(made.check()).toEqual([2, 3, 5])
  })

  test('factors and terms that stand twice count', () => {
    const { made, forms } = system(
      [[0, 4]],
      [
        [0, 2],
        [0, 1],
      ],
    )
    made.bound(forms[0]!, 12, INFINITE, 5)
    expect(made.check()).toBeNull()
    made.bound(forms[0]!, 13, INFINITE, 6)
    expect(made.check()).toEqual([0, 6])
  })

  test('a form of nothing is 0', () => {
    const { made, forms } = system([[0, 4]], [])
    made.bound(forms[0]!, 0, 0, 5)
    expect(made.check()).toBeNull()
    made.bound(forms[0]!, 1, INFINITE, 6)
    expect(made.check()).toEqual([5, 6])
  })

  test('a form of nothing that must be something names its bound alone', () => {
    const { made, forms } = system([[0, 4]], [])
    made.bound(forms[0]!, 1, INFINITE, 6)
    expect(made.check()).toEqual([6])
    const other = system([[0, 4]], [])
    other.made.bound(other.forms[0]!, -INFINITE, -1, 6)
    expect(other.made.check()).toEqual([6])
  })

  test('a part that has nothing to do with a clash is not named', () => {
    const { made, forms } = system(
      [
        [0, 4],
        [0, 3],
        [0, 9],
      ],
      [
        [0, 1],
        [1, 1],
      ],
      [
        [1, 1],
        [2, 1],
      ],
    )
    made.bound(forms[1]!, 0, 12, 8)
    made.bound(forms[0]!, 8, INFINITE, 6)
    expect(made.check()).toEqual([0, 1, 6])
  })

  test('a ring of differences clashes when it does not close', () => {
    const free: [number, number] = [-INFINITE, INFINITE]
    const { made, forms } = system(
      [free, free, free],
      [
        [1, 1],
        [0, -1],
      ],
      [
        [2, 1],
        [1, -1],
      ],
      [
        [0, 1],
        [2, -1],
      ],
    )
    made.bound(forms[0]!, 3, INFINITE, 10)
    made.bound(forms[1]!, 4, INFINITE, 11)
    made.bound(forms[2]!, -7, INFINITE, 12)
    expect(made.check()).toBeNull()
    made.bound(forms[2]!, -6, INFINITE, 13)
    expect(made.check()).toEqual([10, 11, 13])
  })

  test('bounds go back to what was saved, with their reasons, and the answer with them', () => {
    const { made, variables, forms } = system(
      [
        [0, 4],
        [0, 3],
      ],
      [
        [0, 1],
        [1, 1],
      ],
    )
    made.bound(forms[0]!, 5, INFINITE, 5)
    const saved = made.save()
    expect(made.check()).toBeNull()
    made.bound(variables[0]!, 1, 1, 7)
    made.bound(forms[0]!, -INFINITE, 6, 8)
    expect(made.check()).toEqual([1, 5, 7])
    made.restore(saved)
    expect(made.check()).toBeNull()
    made.bound(forms[0]!, 8, INFINITE, 9)
    expect(made.check()).toEqual([0, 1, 9])
    made.restore(saved)
    made.bound(variables[1]!, -INFINITE, 0, 6)
    expect(made.check()).toEqual([0, 5, 6])
  })

  test('what is saved does not change with what comes after', () => {
    const { made, variables } = system([[0, 4]])
    const saved = made.save()
    made.bound(variables[0]!, 3, 3, 9)
    expect(saved).toEqual([[0], [4], [0], [0]])
  })

  test('nothing is added once it has been checked', () => {
    const { made } = system([[0, 1]])
    made.check()
    expect(() => made.addVariable(0, 1, 1)).toThrow('LinearSystem: variables come before the first check')
    expect(() => made.addForm([[0, 1]])).toThrow('LinearSystem: forms come before the first check')
  })
})

/** Whether `a`-`b` ≤ most can hold for all rows at once: no round trip is shorter than 0 (Bellman's difference constraints). */
function differencesHold(points: number, rows: { a: number; b: number; most: number }[]): boolean {
  const far = Array.from({ length: points }, (_, i) =>
    Array.from({ length: points }, (_, j) => (i === j ? 0 : INFINITE)),
  )
  for (const { a, b, most } of rows) far[a]![b] = Math.min(far[a]![b]!, most)
  for (let m = 0; m < points; m++)
    for (let i = 0; i < points; i++)
      for (let j = 0; j < points; j++) far[i]![j] = Math.min(far[i]![j]!, far[i]![m]! + far[m]![j]!)
  return far.every((row, i) => row[i]! >= 0)
}

test('on 300 random sets of differences it answers as the shortest round trips do, and what it names clashes by itself', () => {
  const seen = { holds: 0, clashes: 0 }
  for (let seed = 1; seed <= 60; seed++) {
    const next = seededRandom(seed)
    const whole = (least: number, most: number) => least + Math.floor(next() * (most - least + 1))
    const made = new LinearSystem()
    const points = whole(3, 7)
    // Point 0 is the origin, the others are variables.
    const ends = Array.from({ length: points - 1 }, () =>
      next() < 0.3 ? [-INFINITE, INFINITE] : [whole(-9, 0), whole(1, 9)],
    )
    ends.forEach(([lo, hi], i) => {
      made.addVariable(lo!, hi!, i)
    })
    const own = ends.flatMap(([lo, hi], i) => [
      { a: i + 1, b: 0, most: hi!, reason: i },
      { a: 0, b: i + 1, most: -lo!, reason: i },
    ])
    const pairs = Array.from({ length: whole(3, 10) }, () => {
      const a = whole(1, points - 1)
      const b = 1 + ((a + whole(0, points - 3)) % (points - 1))
      return {
        a,
        b,
        form: made.addForm([
          [a - 1, 1],
          [b - 1, -1],
        ]),
      }
    })
    const free = made.save()
    for (let round = 0; round < 5; round++) {
      made.restore(free)
      const rows = pairs.flatMap(({ a, b, form }, i) => {
        if (next() < 0.2) return []
        const hi = whole(-4, 8)
        made.bound(form, -INFINITE, hi, 100 + i)
        return [{ a, b, most: hi, reason: 100 + i }]
      })
      const every = [...own, ...rows]
      const clash = made.check()
      const where = `seed ${seed}, round ${round}`
      expect(clash === null, where).toBe(differencesHold(points, every))
      seen[clash ? 'clashes' : 'holds']++
      if (!clash) continue
      expect(clash, where).toEqual([...new Set(clash)].sort((a, b) => a - b))
      expect(
        differencesHold(
          points,
          every.filter(({ reason }) => clash.includes(reason)),
        ),
        where,
      ).toBe(false)
    }
  }
  expect(Math.min(seen.holds, seen.clashes)).toBeGreaterThan(50)
})

test('with factors up to 3 it finds the point that is there, and the clash of a weighted sum of its rows', () => {
  for (let seed = 1; seed <= 150; seed++) {
    const next = seededRandom(seed)
    const whole = (least: number, most: number) => least + Math.floor(next() * (most - least + 1))
    const made = new LinearSystem()
    const point = Array.from({ length: 4 }, () => whole(-9, 9))
    for (const i of point.keys()) made.addVariable(-50, 50, i)
    const rows = Array.from({ length: 5 }, () => point.map((_, i) => [i, whole(-3, 3)] as [number, number]))
    const forms = rows.map((terms) => made.addForm(terms))
    const weights = rows.map(() => whole(0, 3))
    const sum = made.addForm(
      rows.flatMap((terms, r) => terms.map(([i, f]) => [i, weights[r]! * f] as [number, number])),
    )
    let most = 0
    rows.forEach((terms, r) => {
      const value = terms.reduce((total, [i, f]) => total + f * point[i]!, 0)
      const hi = value + whole(0, 1)
      made.bound(forms[r]!, value - whole(0, 1), hi, 100 + r)
      most += weights[r]! * hi
    })
    expect(made.check(), `seed ${seed}`).toBeNull()
    made.bound(sum, most + 1, INFINITE, 200)
    const clash = made.check()
    expect(clash, `seed ${seed}`).toContain(200)
    expect(clash!.every((reason) => reason < 4 || (reason >= 100 && reason < 105) || reason === 200)).toBe(true)
  }
})
