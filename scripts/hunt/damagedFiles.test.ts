import { expect, test } from 'vitest'
import { damagedRun } from './damagedRun.ts'

const RUNS = 20_000

test('no damaged file ends otherwise than answered or refused with words', async () => {
  const counts = new Map<number, number>()
  for (let seed = 0; seed < RUNS; seed++) {
    const { status, fault } = await damagedRun(seed)
    expect(fault, `seed ${seed}`).toBe('')
    counts.set(status, (counts.get(status) ?? 0) + 1)
  }
  // each way out was taken often enough for this to say something
  for (const status of [0, 1, 2]) expect(counts.get(status) ?? 0).toBeGreaterThan(RUNS / 100)
})

test('a doubt that leaves lines which contradict each other is answered like any other', async () => {
  expect((await damagedRun(2191)).fault).toBe('')
})
