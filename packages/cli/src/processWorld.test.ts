import { afterEach, expect, test, vi } from 'vitest'
import { processWorld } from './processWorld.ts'

afterEach(() => {
  vi.useRealTimers()
})

test('today is the day by the clock on the wall', () => {
  const world = processWorld(process)
  vi.useFakeTimers()
  vi.setSystemTime(new Date(2026, 2, 1, 0, 5))
  expect(world.today()).toBe('2026-03-01')
  vi.setSystemTime(new Date(2026, 10, 30, 23, 55))
  expect(world.today()).toBe('2026-11-30')
})
