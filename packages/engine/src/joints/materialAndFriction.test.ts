import { describe, expect, test } from 'vitest'
import { middleOf } from '../quantity/interval.ts'
import { CONDITIONS, frictionOf, statedFriction } from './friction.ts'
import { bearingRing, HEAD_FORMS } from './head.ts'
import { ANY_SHEAR, MATERIAL_NAMES, parentMaterial } from './parentMaterial.ts'
import { thread } from './testing/check.ts'

describe('parentMaterial', () => {
  test('knows six materials, each with sources and ranges the right way round', () => {
    expect(MATERIAL_NAMES).toEqual([
      'cast aluminium',
      'wrought aluminium',
      'grey iron',
      'ductile iron',
      'steel',
      'magnesium',
    ])
    for (const name of MATERIAL_NAMES) {
      const material = parentMaterial(name)!
      expect(material.name).toBe(name)
      expect(material.shear.lo).toBeLessThan(material.shear.hi)
      expect(material.seatPressure.lo).toBeLessThan(material.seatPressure.hi)
      expect(material.engagementSpread.lo).toBeLessThanOrEqual(material.usualEngagement)
      expect(material.engagementSpread.hi).toBeGreaterThanOrEqual(material.usualEngagement)
      expect(Object.values(material.sources).every((source) => source.length > 10)).toBe(true)
    }
  })

  test.each([
    ['Aluminum', 'cast aluminium'],
    [' die-cast aluminium ', 'cast aluminium'],
    ['billet aluminum', 'wrought aluminium'],
    ['cast iron', 'grey iron'],
    ['gray iron', 'grey iron'],
    ['nodular iron', 'ductile iron'],
    ['mild steel', 'steel'],
    ['cast magnesium', 'magnesium'],
  ])('%s is %s', (text, name) => {
    expect(parentMaterial(text)?.name).toBe(name)
  })

  test('a softer parent wants more thread', () => {
    const ratio = (name: string) => parentMaterial(name)!.usualEngagement
    expect(ratio('steel')).toBe(1)
    expect(ratio('grey iron')).toBe(1.25)
    expect(ratio('cast aluminium')).toBe(1.5)
    expect(ratio('magnesium')).toBe(2)
  })

  test('a better value from the user takes the place of a range and is named as the source', () => {
    const better = parentMaterial({ name: 'cast aluminium', shearStrength: 190 })!
    expect(better.shear).toEqual({ lo: 190, hi: 190 })
    expect(better.seatPressure).toEqual({ lo: 220, hi: 290 })
    expect(better.sources.shear).toBe('entered by the user')
    expect(better.sources.seat).toContain('VDI 2230:2003')
    const seat = parentMaterial({ name: 'steel', limitPressure: 600 })!
    expect(seat.seatPressure).toEqual({ lo: 600, hi: 600 })
    expect(seat.sources.seat).toBe('entered by the user')
    expect(seat.shear).toEqual(parentMaterial('steel')!.shear)
  })

  test('a material that is not known needs its shear strength, and the rest is that of cast aluminium', () => {
    expect(parentMaterial('cheese')).toBeUndefined()
    expect(parentMaterial({ name: 'zinc', limitPressure: 100 })).toBeUndefined()
    expect(parentMaterial(undefined)).toBeUndefined()
    const zinc = parentMaterial({ name: 'zinc', shearStrength: 214 })!
    expect(zinc).toMatchObject({
      name: 'zinc',
      shear: { lo: 214, hi: 214 },
      seatPressure: { lo: 220, hi: 290 },
      usualEngagement: 1.5,
    })
    expect(zinc.sources.seat).toMatch(/^as for cast aluminium: VDI/)
    expect(zinc.sources.engagement).toMatch(/^as for cast aluminium: 1.5 d/)
  })

  test('the widest shear range spans all materials', () => {
    expect(ANY_SHEAR).toEqual({ lo: 90, hi: 540 })
  })
})

describe('friction', () => {
  test('every condition has a range inside what VDI 2230 classes span', () => {
    expect(CONDITIONS).toEqual(['dry', 'oiled', 'thread sealant', 'thread-lock', 'coated', 'unknown'])
    for (const condition of CONDITIONS) {
      const { mu, source } = frictionOf(condition)
      expect(mu.lo).toBeGreaterThanOrEqual(0.04)
      expect(mu.hi).toBeGreaterThan(mu.lo)
      expect(mu.hi).toBeLessThanOrEqual(0.35)
      expect(source).not.toBe('')
    }
    expect(middleOf(frictionOf('oiled').mu)).toBeCloseTo(0.12, 9)
    expect(frictionOf('dry').mu.lo).toBeGreaterThan(frictionOf('oiled').mu.lo)
    expect(frictionOf('unknown').mu).toEqual({ lo: 0.08, hi: 0.2 })
  })

  test('a stated range is taken from 0.02 to 0.6 only', () => {
    expect(statedFriction({ lo: 0.12, hi: 0.12 })).toMatchObject({ condition: 'stated', mu: { lo: 0.12, hi: 0.12 } })
    expect(statedFriction({ lo: 0.02, hi: 0.6 })).toBeDefined()
    expect(statedFriction({ lo: 0.01, hi: 0.1 })).toBeUndefined()
    expect(statedFriction({ lo: 0.1, hi: 0.7 })).toBeUndefined()
    expect(statedFriction({ lo: 0.2, hi: 0.1 })).toBeUndefined()
    expect(statedFriction({ lo: Number.NaN, hi: 0.1 })).toBeUndefined()
  })
})

describe('bearingRing', () => {
  const M6 = thread('M6')
  const M8 = thread('M8')

  test('is the plain hexagon of the main standard where nothing is known', () => {
    const ring = bearingRing(M6)!
    expect(ring).toMatchObject({ outer: 8.88, inner: 6.6, acrossFlats: 10, head: 'hexagon, ISO 4014/4017' })
    expect(ring.friction).toBeCloseTo(7.74, 9)
    expect(ring.area).toBeCloseTo((Math.PI / 4) * (8.88 ** 2 - 6.6 ** 2), 9)
  })

  test.each([
    [{ form: 'flange' }, 15.8],
    [{ form: 'small flange' }, 14.9],
    [{ form: 'hex flange', acrossFlats: 10 }, 14.9],
    [{ form: 'hex flange', acrossFlats: 13 }, 15.8],
    [{ form: 'Socket' }, 12.33],
    [{ form: 'cap screw' }, 12.33],
    [{ form: 'hex' }, 11.63],
    [{ standard: 'en 1665' }, 15.8],
    [{ standard: 'ISO 4162' }, 14.9],
    [{ acrossFlats: 10 }, 14.9],
    [{ acrossFlats: 13.1 }, 11.63],
    [{ acrossFlats: 12 }, 0.89 * 12],
  ])('M8 with %j bears on %d mm', (wanted, outer) => {
    expect(bearingRing(M8, wanted)?.outer).toBeCloseTo(outer, 9)
  })

  test('a size that no standard makes is a plain hexagon, if it covers its hole', () => {
    expect(bearingRing(M8, { acrossFlats: 11 })).toMatchObject({
      outer: 0.89 * 11,
      inner: 9,
      head: expect.stringContaining('no standard'),
    })
    expect(bearingRing(M8, { acrossFlats: 8 })).toBeUndefined()
  })

  test('what is no head is undefined', () => {
    expect(bearingRing(M8, { form: 'wing' })).toBeUndefined()
    expect(bearingRing(M8, { standard: 'EN 9999' })).toBeUndefined()
    expect(bearingRing(thread('M16'), { form: 'small flange' })).toBeUndefined()
  })

  test('a thread without a standard head here is counted as a hexagon of 1.6 d', () => {
    const ring = bearingRing(thread('M26x1.5'))!
    expect(ring.outer).toBeCloseTo(0.89 * 1.6 * 26, 9)
    expect(ring.head).toContain('no standard head')
    expect(ring.acrossFlats).toBeUndefined()
  })

  test('every form that is offered is understood', () => {
    for (const form of HEAD_FORMS) expect(bearingRing(M6, { form })).toBeDefined()
  })
})
