import { describe, expect, test } from 'vitest'
import { thread } from '../joints/testing/check.ts'
import {
  boltLimits,
  clearanceDiameter,
  clearanceHole,
  coarsePitch,
  headsFor,
  holeLimits,
  profileOf,
  socketsFor,
  standardLengths,
  standardThreadLength,
  stressArea,
  stressDiameter,
} from './index.ts'

describe('profile', () => {
  test('sizes of M8 by ISO 68-1', () => {
    const p = profileOf(thread('M8'))
    expect(p.triangle).toBeCloseTo(1.082532, 6)
    expect(p.pitchDiameter).toBeCloseTo(7.188101, 6)
    expect(p.rootDiameter).toBeCloseTo(6.466414, 6)
    expect(p.minorDiameter).toBeCloseTo(6.646835, 6)
    expect(p.boltThreadDepth).toBeCloseTo(0.766794, 6)
    expect(p.overlap).toBeCloseTo(0.676583, 6)
    // the depths say the same as the diameters
    expect(p.minorDiameter).toBeCloseTo(8 - 2 * p.overlap, 5)
    expect(p.rootDiameter).toBeCloseTo(8 - 2 * p.boltThreadDepth, 5)
  })

  test('the stress area is that of the mean of pitch and root diameter', () => {
    const m8 = thread('M8')
    const { pitchDiameter, rootDiameter } = profileOf(m8)
    expect(stressDiameter(m8)).toBeCloseTo((pitchDiameter + rootDiameter) / 2, 9)
    expect(stressArea(m8)).toBeCloseTo((Math.PI / 4) * ((pitchDiameter + rootDiameter) / 2) ** 2, 9)
  })

  test('a thread with no section left is a bug', () => {
    expect(() => stressArea({ profile: 'metric', diameter: 1, pitch: 2, name: 'x' })).toThrow('no section left')
  })
})

describe('limits', () => {
  test('a row of the table is exact and says so', () => {
    expect(boltLimits(thread('M10x1'))).toEqual({
      majorMax: 9.974,
      majorMin: 9.794,
      pitchMax: 9.324,
      pitchMin: 9.212,
      minorMax: 8.891,
      minorMin: 8.596,
      basis: 'table',
    })
    expect(holeLimits(thread('M10x1'))).toEqual({
      majorMin: 10,
      pitchMin: 9.35,
      pitchMax: 9.5,
      minorMin: 8.917,
      minorMax: 9.153,
      basis: 'table',
    })
  })

  test('a row that is not known comes from the formula, says so, and lies near the table of its neighbour', () => {
    const bolt = boltLimits(thread('M2'))
    const hole = holeLimits(thread('M2'))
    expect(bolt.basis).toBe('formula')
    expect(hole.basis).toBe('formula')
    // ISO 965-1 prints for M2: es 19, Td 95, Td2 67, TD2 90, TD1 119 µm (from memory)
    expect(bolt.majorMax).toBeCloseTo(2 - 0.019, 2)
    expect((bolt.majorMax - bolt.majorMin) * 1000).toBeCloseTo(92.7, 0)
    expect((bolt.pitchMax - bolt.pitchMin) * 1000).toBeCloseTo(67, 0)
    expect((hole.pitchMax - hole.pitchMin) * 1000).toBeCloseTo(88.4, -0.5)
    expect((hole.minorMax - hole.minorMin) * 1000).toBeCloseTo(111, 0)
  })

  test.each(['M4', 'M6', 'M8', 'M10', 'M12', 'M16', 'M20', 'M24', 'M8x1', 'M10x1.25', 'M12x1.5', 'M8x0.75'])(
    'the formula gives %s about as the table has it',
    (name) => {
      const exact = thread(name)
      // a pitch a hair off has no row, so the formula answers
      const off = { ...exact, pitch: exact.pitch + 1e-9 }
      expect(boltLimits(exact).basis).toBe('table')
      expect(boltLimits(off).basis).toBe('formula')
      const [a, b] = [boltLimits(exact), boltLimits(off)]
      const [c, d] = [holeLimits(exact), holeLimits(off)]
      for (const key of ['majorMax', 'majorMin', 'pitchMax', 'pitchMin', 'minorMax', 'minorMin'] as const)
        expect(Math.abs(a[key] - b[key])).toBeLessThan(0.013)
      for (const key of ['pitchMin', 'pitchMax', 'minorMin', 'minorMax'] as const)
        expect(Math.abs(c[key] - d[key])).toBeLessThan(0.013)
    },
  )

  test('above all steps the formula takes the diameter itself', () => {
    const big = { profile: 'metric', diameter: 100, pitch: 6, name: 'x' } as const
    const { pitchMax, pitchMin } = boltLimits(big)
    expect((pitchMax - pitchMin) * 1000).toBeCloseTo(90 * 6 ** 0.4 * 100 ** 0.1, 0)
  })

  test('2A of 1/4-20 in inches as ASME B1.1 has it', () => {
    const bolt = boltLimits(thread('1/4-20'))
    const inches = Object.fromEntries(
      Object.entries(bolt).map(([k, v]) => [k, typeof v === 'number' ? (v / 25.4).toFixed(4) : v]),
    )
    expect(inches).toMatchObject({
      majorMax: '0.2489',
      majorMin: '0.2408',
      pitchMax: '0.2164',
      pitchMin: '0.2127',
      basis: 'formula',
    })
    expect(bolt.minorMax).toBeLessThan(profileOf(thread('1/4-20')).minorDiameter)
    expect(bolt.minorMin).toBeLessThan(bolt.minorMax)
  })

  test('2B of a size below 1/4 in keeps its minor tolerance between its two bounds', () => {
    for (const name of ['#10-24', '#10-32', '#8-32', '#6-32', '#4-40', '#12-24', '#0-80']) {
      const hole = holeLimits(thread(name))
      const pitch = thread(name).pitch / 25.4
      const minor = (hole.minorMax - hole.minorMin) / 25.4
      expect(minor).toBeGreaterThanOrEqual(0.25 * pitch - 0.4 * pitch ** 2 - 0.0011)
      expect(minor).toBeLessThanOrEqual(0.394 * pitch + 0.0011)
      expect(hole.majorMin).toBeCloseTo(thread(name).diameter, 9)
    }
    // #10-24: .145 to .156 in ASME B1.1 (from memory)
    expect(holeLimits(thread('#10-24')).minorMin / 25.4).toBeCloseTo(0.145, 3)
    expect(holeLimits(thread('#10-24')).minorMax / 25.4).toBeCloseTo(0.156, 2)
  })

  test('every bolt fits every hole: the tightest of both still has room', () => {
    for (const name of ['M3', 'M6', 'M8', 'M8x1', 'M12', 'M24', '#10-24', '1/4-20', '1/2-20']) {
      const [bolt, hole] = [boltLimits(thread(name)), holeLimits(thread(name))]
      expect(bolt.pitchMax).toBeLessThan(hole.pitchMin)
      expect(bolt.minorMax).toBeLessThan(hole.minorMin)
      expect(bolt.majorMax).toBeLessThan(hole.majorMin)
    }
  })
})

describe('lengths', () => {
  test('of M6 run from 8 to 120 mm', () => {
    const list = standardLengths(thread('M6'))
    expect(list[0]).toBe(8)
    expect(list.at(-1)).toBe(120)
    expect(list).toContain(45)
    expect(list).not.toContain(75)
  })

  test('of inch bolts are inches', () => {
    const list = standardLengths(thread('1/4-20'))
    expect(list[0]).toBeCloseTo(0.375 * 25.4, 9)
    expect(list.at(-1)).toBeCloseTo(5 * 25.4, 9)
  })

  test.each([
    ['M6', 40, 18],
    ['M6', 125, 18],
    ['M6', 126, 24],
    ['M6', 200, 24],
    ['M6', 201, 37],
    ['M6', 16, 16],
    ['M8', 100, 22],
    ['1/4-20', 76.2, 19.05],
    ['1/4-20', 152.4, 19.05],
    ['1/4-20', 177.8, 25.4],
    ['1/4-20', 12.7, 12.7],
  ])('%s of %d mm has %d mm of thread', (name, length, thread_) => {
    expect(standardThreadLength(thread(name), length)).toBeCloseTo(thread_, 9)
  })
})

describe('holes and heads', () => {
  test('a clearance hole is by table, and 1.1 d where there is no row', () => {
    expect(clearanceHole(thread('M8'))).toEqual({ fine: 8.4, medium: 9, coarse: 10 })
    expect(clearanceHole(thread('1/4-20'))).toBeUndefined()
    expect(clearanceHole(thread('M26x1.5'))).toBeUndefined()
    expect(clearanceDiameter(thread('M8'))).toBe(9)
    expect(clearanceDiameter(thread('M26x1.5'))).toBeCloseTo(28.6, 9)
  })

  test('a 10 mm socket fits M6 and M8, and the smaller thread comes first', () => {
    expect(socketsFor(10).map(({ thread: name, standard }) => `${name} ${standard}`)).toEqual([
      'M6 ISO 4014/4017',
      'M6 EN 1665',
      'M8 JIS B 1189 / ISO 4162 small series',
    ])
    expect(socketsFor(10.1)).toHaveLength(3)
    expect(socketsFor(10.2)).toHaveLength(0)
    expect(socketsFor(9.9)).toHaveLength(3)
  })

  test('heads go by the diameter: fine threads have the coarse one’s, inch threads their own', () => {
    expect(headsFor(thread('M8x1'))).toEqual(headsFor(thread('M8')))
    expect(headsFor(thread('M6')).map(({ standard }) => standard)).toEqual([
      'ISO 4014/4017',
      'ISO 4762',
      'EN 1665',
      'JIS B 1189 / ISO 4162 small series',
    ])
    expect(headsFor(thread('1/4-20')).map(({ acrossFlats }) => acrossFlats?.toFixed(4))).toEqual(['11.1125'])
    expect(headsFor(thread('1/4-20'))[0]?.bearing).toBeCloseTo(10.00125, 6)
    expect(headsFor(thread('M26x1.5'))).toEqual([])
  })

  test('the coarse pitch of a diameter, or none', () => {
    expect(coarsePitch(8)).toBe(1.25)
    expect(coarsePitch(26)).toBeUndefined()
    expect(coarsePitch(8.1)).toBeUndefined()
  })
})
