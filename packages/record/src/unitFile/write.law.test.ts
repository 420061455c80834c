import fc from 'fast-check'
import { expect, test } from 'vitest'
import { readUnitFile } from './read.ts'
import { mutated } from './testing/mutate.ts'
import { seeded } from './testing/random.ts'
import { EXAMPLE, FULL } from './testing/units.ts'
import { writeUnitFile } from './write.ts'

test('what is written reads back as the same unit', () => {
  expect(readUnitFile(writeUnitFile(FULL))).toEqual({ ok: true, value: FULL })
})

test('any readable file is written once, and then stays as it is', () => {
  let readable = 0
  fc.assert(
    fc.property(fc.integer(), fc.constantFrom(EXAMPLE, JSON.stringify(FULL)), (seed, file) => {
      const read = readUnitFile(mutated(file, seeded(seed)))
      if (!read.ok) return
      readable++
      const text = writeUnitFile(read.value)
      expect(readUnitFile(text)).toEqual({ ok: true, value: read.value })
      const again = readUnitFile(text)
      if (again.ok) expect(writeUnitFile(again.value)).toBe(text)
    }),
    { seed: 7, numRuns: 1500 },
  )
  expect(readable).toBeGreaterThan(50)
})

test('fields are written in the order of the documentation, however the unit holds them', () => {
  const turned = {
    faces: [{ holes: [{ thread: 'M6', grip: { plusMinus: 0.1, value: 31.9 }, id: '1' }], id: 'pan' }],
    gripbook: 'unit/1' as const,
  }
  expect(writeUnitFile(turned)).toBe(`{
  "gripbook": "unit/1",
  "faces": [
    {
      "id": "pan",
      "holes": [
        {"id": "1", "thread": "M6", "grip": {"value": 31.9, "plusMinus": 0.1}}
      ]
    }
  ]
}
`)
})

test('what is no unit is not written', () => {
  expect(() => writeUnitFile({ gripbook: 'unit/1', faces: [] })).toThrow('not a unit')
})
