import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { type Practice, practice } from '../demo/pictures/practice.ts'
import type { Unit } from '../demo/pictures/unit.ts'

const read = (path: string) => JSON.parse(readFileSync(new URL(path, import.meta.url), 'utf8'))
const unit: Unit = read('../demo/yard-loader.json')
const written: Practice = read('../demo/practice.json')
const file = (name: string) => fileURLToPath(new URL(`../packages/web/public/demo/${name}`, import.meta.url))
const sized = [...Object.values(written.pictures), ...written.parts, ...written.signs]

test('what the script would write again is what is written', () => {
  expect(written).toEqual(practice(unit))
})

test.each(sized)(
  '$file is as wide and high as stated and small enough for a phone',
  async ({ file: name, width, height }) => {
    const meta = await sharp(file(name)).metadata()
    expect([meta.width, meta.height]).toEqual([width, height])
    expect(readFileSync(file(name)).length).toBeLessThanOrEqual(width > 800 ? 200_000 : 60_000)
  },
)

test('every part and sign belongs to a face, and a named hole to that face', () => {
  for (const item of [...written.parts, ...written.signs]) {
    const face = unit.faces.find(({ id }) => id === item.face)
    expect(face).toBeDefined()
    if ('hole' in item) expect(face?.holes.map(({ id }) => id)).toContain(item.hole)
  }
})

describe.each(unit.faces)('the picture of $id', ({ id, holes }) => {
  const picture = written.pictures[id]!

  test('has a mark for each hole, inside the picture, and no other', () => {
    expect(Object.keys(picture.marks).sort()).toEqual(holes.map((hole) => hole.id).sort())
    for (const [x, y] of Object.values(picture.marks)) {
      expect(x > 0 && x < picture.width && y > 0 && y < picture.height).toBe(true)
    }
  })

  test('keeps its one scale between any two marks', () => {
    const [first, ...others] = holes
    const [fx, fy] = picture.marks[first!.id]!
    for (const { id: hole, at } of others) {
      const [x, y] = picture.marks[hole]!
      const pixels = Math.hypot(x - fx, y - fy)
      const millimetres = Math.hypot(at[0] - first!.at[0], at[1] - first!.at[1])
      expect(Math.abs(pixels - millimetres * picture.pixelsPerMillimetre)).toBeLessThan(0.2)
    }
  })

  test('is dark at each mark and brighter round it', async () => {
    const { data, info } = await sharp(file(picture.file)).greyscale().raw().toBuffer({ resolveWithObject: true })
    const mean = ([mx, my]: readonly number[], from: number, to: number) => {
      let sum = 0
      let count = 0
      const reach = Math.ceil(to)
      for (let y = Math.round(my!) - reach; y <= my! + reach; y++) {
        for (let x = Math.round(mx!) - reach; x <= mx! + reach; x++) {
          const r = Math.hypot(x + 0.5 - mx!, y + 0.5 - my!)
          if (r < from || r > to) continue
          sum += data[(y * info.width + x) * info.channels]!
          count++
        }
      }
      return sum / count
    }
    for (const { id: hole } of holes) {
      const at = picture.marks[hole]!
      const middle = mean(at, 0, 1.2 * picture.pixelsPerMillimetre)
      const round = mean(at, 4.6 * picture.pixelsPerMillimetre, 7 * picture.pixelsPerMillimetre)
      expect({ hole, darker: round - middle > 50 }).toEqual({ hole, darker: true })
    }
  })
})
