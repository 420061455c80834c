import { expect, test } from 'vitest'
import { oneAtATime } from './telling.ts'

/** A reading that ends when it is told to. */
function slowly() {
  const ends: ((value: number) => void)[] = []
  const read = () => new Promise<number>((done) => ends.push(done))
  const end = async (value: number) => {
    ends.shift()!(value)
    await new Promise((done) => setTimeout(done))
  }
  return { read, end, open: () => ends.length }
}

test('however often it is called while it reads, it reads once more', async () => {
  const { read, end, open } = slowly()
  const told: number[] = []
  const { tell, stop } = oneAtATime(read, (value) => told.push(value))
  for (let i = 0; i < 5; i++) tell()
  expect(open()).toBe(1)
  await end(1)
  expect(open()).toBe(1)
  await end(2)
  expect([told, open()]).toEqual([[1, 2], 0])
  tell()
  stop()
  await end(3)
  expect(told).toEqual([1, 2])
})

test('what cannot be read is told, and the next time is tried again', async () => {
  const answers = [Promise.reject(new Error('full')), Promise.resolve(7)]
  const told: unknown[] = []
  const { tell } = oneAtATime(
    () => answers.shift()!,
    (value) => told.push(value),
    (error) => told.push((error as Error).message),
  )
  tell()
  await new Promise((done) => setTimeout(done))
  tell()
  await new Promise((done) => setTimeout(done))
  expect(told).toEqual(['full', 7])
})
