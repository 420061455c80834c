import { expect, test } from 'vitest'
import { boltClass } from './boltClass.ts'
import { frictionOf } from './friction.ts'
import { bearingRing } from './head.ts'
import { parentMaterial } from './parentMaterial.ts'
import { assemblyStress } from './preload.ts'
import { stripLoads } from './stripping.ts'
import { thread } from './testing/check.ts'
import { clampFor } from './torque.ts'
import { breakingLoad, clampOf, type JointLoads, stressRange, utilisations } from './utilisation.ts'

const M8 = thread('M8')

const bare = (): JointLoads => ({
  thread: M8,
  strength: boltClass('10.9', M8)!,
  ring: bearingRing(M8)!,
  friction: frictionOf('oiled'),
  torque: { lo: 30, hi: 34 },
  deviation: 0.04,
})

const whole = (): JointLoads => ({
  ...bare(),
  parent: parentMaterial('grey iron')!,
  engagement: { lo: 9, hi: 10 },
  seat: parentMaterial('steel')!,
})

test('the stress is least with high friction and a low wrench, most with low friction and a high wrench', () => {
  const { ring } = bare()
  const at = (m: number, mu: number) => assemblyStress(M8, clampFor(M8, ring.friction, m, mu), mu)
  const range = stressRange(bare())
  expect(range.lo).toBeCloseTo(at(30 * 0.96, 0.16), 9)
  expect(range.middle).toBeCloseTo(at(32, 0.12), 9)
  expect(range.hi).toBeCloseTo(at(34 * 1.04, 0.08), 9)
})

test('with nothing but the bolt known, only the bolt is judged', () => {
  expect(utilisations(bare()).map(({ part }) => part)).toEqual(['bolt to yield', 'bolt to break'])
  const { engagement: _, ...noEngagement } = whole()
  expect(utilisations(noEngagement).map(({ part }) => part)).toEqual([
    'bolt to yield',
    'bolt to break',
    'seat under the head',
  ])
  const { parent: __, ...noParent } = whole()
  expect(utilisations(noParent).map(({ part }) => part)).toEqual([
    'bolt to yield',
    'bolt to break',
    'seat under the head',
  ])
})

test('each part is load over limit, the ends crossed so that the range is a range', () => {
  const loads = whole()
  const clamp = clampOf(loads)
  const stress = stressRange(loads)
  const strip = stripLoads(M8, loads.engagement!, loads.parent!.shear, loads.strength)
  const of = Object.fromEntries(utilisations(loads).map((u) => [u.part, u]))
  expect(of['bolt to yield']).toMatchObject({
    unit: 'MPa',
    limit: { lo: 940, middle: 940, hi: 940 },
    source: expect.stringContaining('minimum yield of 10.9'),
  })
  expect(of['bolt to yield']!.share.hi).toBeCloseTo(stress.hi / 940, 12)
  expect(of['bolt to break']!.share.lo).toBeCloseTo(stress.lo / 1040, 12)
  expect(of['bolt to break']!.source).toContain('minimum tensile strength of 10.9')
  expect(of['thread of the hole']).toMatchObject({
    unit: 'N',
    load: { lo: clamp.lo, middle: clamp.middle, hi: clamp.hi },
  })
  expect(of['thread of the hole']!.share.lo).toBeCloseTo(clamp.lo / strip.hole.hi, 12)
  expect(of['thread of the hole']!.share.middle).toBeCloseTo(clamp.middle / ((strip.hole.lo + strip.hole.hi) / 2), 12)
  expect(of['thread of the hole']!.share.hi).toBeCloseTo(clamp.hi / strip.hole.lo, 12)
  expect(of['thread of the hole']!.source).toContain('shear strength of grey iron')
  expect(of['thread of the bolt']!.share.hi).toBeCloseTo(clamp.hi / strip.bolt.lo, 12)
  expect(of['thread of the bolt']!.source).toContain('0.6 to 0.75')
  expect(of['seat under the head']).toMatchObject({
    unit: 'MPa',
    limit: { lo: 490, middle: 625, hi: 760 },
    source: expect.stringContaining('steel'),
  })
  expect(of['seat under the head']!.load.lo).toBeCloseTo(clamp.lo / loads.ring.area, 9)
  expect(of['seat under the head']!.load.middle).toBeCloseTo(clamp.middle / loads.ring.area, 9)
  expect(of['seat under the head']!.load.hi).toBeCloseTo(clamp.hi / loads.ring.area, 9)
})

test('the breaking load is the stress area times the minimum tensile strength', () => {
  expect(breakingLoad(bare())).toBeCloseTo(36.609 * 1040, -2)
})
