import { expect, test } from 'vitest'
import { gathering } from './gather.ts'

/** Writes that end when told to. */
function held() {
  const groups: { items: readonly number[]; end: () => void; fail: () => void }[] = []
  const write = (items: readonly number[]) =>
    new Promise<number[]>((done, failed) => {
      groups.push({ items, end: () => done(items.map((item) => item * 10)), fail: () => failed(new Error('lost')) })
    })
  const soon = () => new Promise((done) => setImmediate(done))
  return { groups, write, soon }
}

test('what comes in during a write shares the next one, and each is told its own answer', async () => {
  const { groups, write, soon } = held()
  const call = gathering(write, () => 1, 100)
  const answers = [1, 2, 3].map((item) => call(item))
  expect(groups.map(({ items }) => items)).toEqual([[1]])
  groups[0]!.end()
  await soon()
  expect(groups.map(({ items }) => items)).toEqual([[1], [2, 3]])
  groups[1]!.end()
  expect(await Promise.all(answers)).toEqual([10, 20, 30])
})

test('a write that fails is told to all who shared it, and the next one begins', async () => {
  const { groups, write, soon } = held()
  const call = gathering(write, () => 1, 100)
  const [first, second, third] = [call(1), call(2), call(3)]
  groups[0]!.end()
  await soon()
  groups[1]!.fail()
  await expect(second).rejects.toThrow('lost')
  await expect(third).rejects.toThrow('lost')
  expect(await first).toBe(10)
  const fourth = call(4)
  await soon()
  groups[2]!.end()
  expect(await fourth).toBe(40)
})

test('a group holds no more than allowed, and one that alone is more goes alone', async () => {
  const { groups, write, soon } = held()
  const call = gathering(write, (item) => item, 10)
  const answers = [1, 4, 6, 50, 2, 3].map((item) => call(item))
  for (let i = 0; i < 4; i++) {
    groups[i]!.end()
    await soon()
  }
  expect(groups.map(({ items }) => items)).toEqual([[1], [4, 6], [50], [2, 3]])
  await Promise.all(answers)
})
