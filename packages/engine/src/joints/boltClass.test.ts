import { describe, expect, test } from 'vitest'
import { BOLT_CLASSES, boltClass, printedStressArea, proofLoad, ultimateLoad } from './boltClass.ts'
import { breakingTorque } from './breakingTorque.ts'
import { thread } from './testing/check.ts'

const M6 = thread('M6')

describe('boltClass', () => {
  test('8.8 is stronger above M16', () => {
    expect(boltClass('8.8', thread('M16'))).toMatchObject({ tensile: 800, yield: 640, proof: 580 })
    expect(boltClass('8.8', thread('M18'))).toMatchObject({ tensile: 830, yield: 660, proof: 600 })
    expect(boltClass('10.9', thread('M18'))).toMatchObject({ tensile: 1040, yield: 940, proof: 830 })
  })

  test('9.8 ends at M16', () => {
    expect(boltClass('9.8', thread('M16'))?.name).toBe('9.8')
    expect(boltClass('9.8', thread('M18'))).toBeUndefined()
  })

  test.each([
    ['A2-50', 'A2-50', 500, 210],
    ['a4-70', 'A4-70', 700, 450],
    ['A2 80', 'A2-80', 800, 600],
    ['A470', 'A4-70', 700, 450],
  ])('%s is the stainless class %s', (mark, name, tensile, yieldPoint) => {
    expect(boltClass(mark, M6)).toMatchObject({
      name,
      tensile,
      yield: yieldPoint,
      proof: yieldPoint,
      source: expect.stringContaining('ISO 3506-1'),
    })
  })

  test.each(['grade 5', 'Grade5', 'gr 5', 'gr.5', 'SAE 5', 'sae grade 5', 'SAE J429 grade 5'])(
    '%s is the inch grade 5',
    (mark) => {
      const small = boltClass(mark, thread('1-8'))
      expect(small).toMatchObject({ name: 'grade 5', source: expect.stringContaining('SAE J429') })
      expect(small?.tensile).toBeCloseTo(120 * 6.894757, 6)
      expect(small?.yield).toBeCloseTo(92 * 6.894757, 6)
      expect(boltClass(mark, thread('1 1/8-7'))?.proof).toBeCloseTo(74 * 6.894757, 6)
    },
  )

  test.each([undefined, '', 'none', 'No mark', 'unmarked', 'unknown'])(
    '%s counts as the weakest usual class and says so',
    (mark) => {
      const metric = boltClass(mark, M6)
      expect(metric).toMatchObject({ name: '4.6', tensile: 400, yield: 240 })
      expect(metric?.assumed).toBe(
        `${mark === undefined ? 'no class given' : 'no head mark'}: counted as 4.6, the weakest usual class`,
      )
      expect(boltClass(mark, thread('1/4-20'))).toMatchObject({
        name: 'grade 2',
        assumed: expect.stringContaining('grade 2'),
      })
    },
  )

  test('a class that is read has nothing assumed', () => {
    expect(boltClass('4.6', M6)?.assumed).toBeUndefined()
  })

  test.each(['7.7', 'A6-70', 'A2-60', 'grade 4', 'x8.8', '8.8x', 'grade', 'toString', '50'])(
    '%s is no class',
    (mark) => {
      expect(boltClass(mark, M6)).toBeUndefined()
    },
  )

  test('every class that is offered is understood, weakest carbon class first', () => {
    for (const name of BOLT_CLASSES) expect(boltClass(name, M6)?.name).toBe(name)
    expect(BOLT_CLASSES.slice(0, 9)).toEqual(['4.6', '4.8', '5.6', '5.8', '6.8', '8.8', '9.8', '10.9', '12.9'])
  })
})

test('loads come from the area with three digits', () => {
  const strength = boltClass('8.8', M6)!
  expect(printedStressArea(M6)).toBe(20.1)
  expect(proofLoad(M6, strength)).toBeCloseTo(20.1 * 580, 9)
  expect(ultimateLoad(M6, strength)).toBeCloseTo(20.1 * 800, 9)
})

test('breaking torque is known for 8.8 to 12.9 of metric bolts to M10 only', () => {
  const of = (name: string, mark: string) => breakingTorque(thread(name), boltClass(mark, thread(name))!)
  expect(of('M6', '8.8')).toBeCloseTo(12.8, 1)
  expect(of('M10', '10.9')).toBeGreaterThan(80)
  expect(of('M6', '4.6')).toBeUndefined()
  expect(of('M12', '8.8')).toBeUndefined()
  expect(of('1/4-20', '8.8')).toBeUndefined()
})
