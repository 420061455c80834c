import { expect, test } from 'vitest'
import { loadSolver } from './highs.ts'

test('the solver finds the best whole numbers, says when there are none, and throws for anything else', async () => {
  const solve = await loadSolver()
  const model = (rows: string) =>
    `Maximize\n obj: x + 2 y\nSubject To\n${rows}\nBounds\n x <= 9\n y <= 9\nGenerals\n x y\nEnd\n`
  const { status, values } = solve(model(' a: 2 x + 3 y <= 12.5'))
  expect(status).toBe('optimal')
  expect((values.x ?? 0) + 2 * (values.y ?? 0)).toBeCloseTo(8, 9)
  expect(solve(model(' a: x + y >= 30'))).toEqual({ status: 'infeasible', values: {} })
  expect(() => solve('Maximize\n obj: x\nSubject To\n a: x >= 1\nEnd\n')).toThrow('Unbounded')
})
