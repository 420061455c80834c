import { expect, test } from 'vitest'
import { again, overtaken } from './again.ts'

const failing = (code: string, times: number) => {
  let tried = 0
  const work = async () => {
    if (++tried <= times) throw Object.assign(new Error(code), { code })
    return tried
  }
  return { work, tries: () => tried }
}

test('what lost against another transaction is done again', async () => {
  for (const code of ['40001', '40P01', '23505']) expect(await again(failing(code, 3).work)).toBe(4)
  let first = true
  const once = async () => {
    if (!first) return 'kept'
    first = false
    throw overtaken()
  }
  expect(await again(once)).toBe('kept')
})

test('anything else is told at once, and not for ever what keeps losing', async () => {
  const broken = failing('22P02', 1)
  await expect(again(broken.work)).rejects.toThrow('22P02')
  expect(broken.tries()).toBe(1)
  const losing = failing('40001', 1_000)
  await expect(again(losing.work)).rejects.toThrow('40001')
  expect(losing.tries()).toBe(20)
})
