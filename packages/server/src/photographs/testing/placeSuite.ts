/** What every place of photographs must do: `for (const { title, run } of placeSuite(open)) test(title, run)`. `open` gives an empty one each time. */
import { expect } from 'vitest'
import { sha256 } from '../../sha256.ts'
import type { Place } from '../place.ts'

type Check = (place: Place) => Promise<void>

export function placeSuite(open: () => Promise<Place>): { title: string; run: () => Promise<void> }[] {
  return Object.entries(CASES).map(([title, check]) => ({ title, run: async () => check(await open()) }))
}

export const nameOf = (n: number): string => `${sha256(String(n))}.jpg`

export async function namesIn(place: Place): Promise<string[]> {
  const names = []
  for await (const name of place.list()) names.push(name)
  return names.sort()
}

const EVERY_BYTE = Buffer.from(Array.from({ length: 256 * 3 }, (_, i) => i % 256))

const CASES: Record<string, Check> = {
  async 'what was put is got, byte for byte'(place) {
    await place.put(nameOf(1), EVERY_BYTE)
    expect(await place.get(nameOf(1))).toEqual(EVERY_BYTE)
    expect(await place.has(nameOf(1))).toBe(true)
  },
  async 'three million bytes are got as they were put'(place) {
    const large = Buffer.alloc(3_000_000, EVERY_BYTE)
    await place.put(nameOf(1), large)
    expect((await place.get(nameOf(1)))?.equals(large)).toBe(true)
  },
  async 'what was never put is not there, and taking it away does no harm'(place) {
    expect(await place.get(nameOf(1))).toBeNull()
    expect(await place.has(nameOf(1))).toBe(false)
    await place.remove(nameOf(1))
    expect(await namesIn(place)).toEqual([])
  },
  async 'what is put again replaces what was there'(place) {
    await place.put(nameOf(1), Buffer.from('longer than the next'))
    await place.put(nameOf(1), Buffer.from('next'))
    expect(String(await place.get(nameOf(1)))).toBe('next')
    expect(await namesIn(place)).toEqual([nameOf(1)])
  },
  async 'what was taken away is gone, its neighbours stay'(place) {
    for (const n of [1, 2]) await place.put(nameOf(n), Buffer.from(`${n}`))
    await place.remove(nameOf(1))
    expect(await place.get(nameOf(1))).toBeNull()
    expect(await namesIn(place)).toEqual([nameOf(2)])
  },
  async 'all names are listed once'(place) {
    const names = Array.from({ length: 25 }, (_, i) => nameOf(i))
    for (const name of names) await place.put(name, Buffer.from(name))
    expect(await namesIn(place)).toEqual(names.sort())
  },
  async 'eight that put the same name at once leave one of their files whole'(place) {
    const files = Array.from({ length: 8 }, (_, i) => Buffer.alloc(100_000, i))
    await Promise.all(files.map((file) => place.put(nameOf(1), file)))
    const found = await place.get(nameOf(1))
    expect(files.some((file) => found?.equals(file))).toBe(true)
  },
  async 'a name that leads elsewhere is a bug that stops'(place) {
    for (const name of ['../../passwords', 'ab/cd', '..', '', '.hidden', 'AB12.jpg', 'ab\0cd', 'ab%2f..', 'ab\\cd']) {
      await expect(async () => place.put(name, Buffer.from('x'))).rejects.toThrow('a name in the place of photographs')
      await expect(async () => place.get(name)).rejects.toThrow('a name in the place of photographs')
      await expect(async () => place.remove(name)).rejects.toThrow('a name in the place of photographs')
    }
  },
}
