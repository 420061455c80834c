import { describe, expect, test } from 'vitest'
import { reuse } from './reuse.ts'
import { turnsToSeat, whyStopped } from './turns.ts'

const one = (x: number) => ({ lo: x, hi: x })

describe('turnsToSeat', () => {
  test('is stick-out less mouth and lead, in pitches', () => {
    const turns = turnsToSeat({
      pitch: 1.25,
      stickOut: { lo: 14, hi: 15 },
      mouth: { lo: 1, hi: 1.5 },
      tip: { lo: 1, hi: 2.5 },
    })
    expect(turns.lo).toBeCloseTo((14 - 1.5 - 2.5) / 1.25, 9)
    expect(turns.hi).toBeCloseTo((15 - 1) / 1.25, 9)
  })

  test('is never below none', () => {
    expect(turnsToSeat({ pitch: 1, stickOut: one(1), mouth: one(3), tip: one(0) })).toEqual({ lo: 0, hi: 0 })
  })
})

describe('whyStopped', () => {
  const expected = { lo: 10, hi: 12 }
  const first = (...of: Parameters<typeof whyStopped>) => whyStopped(...of)[0]

  test('a head on its seat after the expected turns has seated', () => {
    expect(whyStopped(11, expected, 'head on its seat')).toEqual([
      { cause: 'seated', why: '11 turns, 10.0 to 12.0 expected' },
    ])
    expect(first(9.5, expected, 'head on its seat')?.cause).toBe('seated')
    expect(first(12.5, expected, 'head on its seat')?.cause).toBe('seated')
  })

  test('a head on its seat too early or too late means that a reading is wrong', () => {
    expect(first(9.4, expected, 'head on its seat')).toMatchObject({
      cause: 'turns miscounted or reading wrong',
      why: expect.stringContaining('measure grip and length again'),
    })
    expect(first(12.6, expected, 'head on its seat')).toMatchObject({
      cause: 'turns miscounted or reading wrong',
      why: expect.stringContaining('at most 12.0'),
    })
    expect(whyStopped(12.6, expected, 'head on its seat')).toHaveLength(1)
  })

  test('a hard stop is the bottom, the more so when the turns say it', () => {
    expect(first(7, expected, 'hard stop')).toEqual({
      cause: 'bottomed',
      why: 'too long for this hole, or something lies at its bottom: measure the depth',
    })
    expect(first(7, expected, 'hard stop', { lo: 6.8, hi: 7.2 })).toEqual({
      cause: 'bottomed',
      why: 'the tip meets the bottom after 6.8 to 7.2 turns',
    })
  })

  test('resistance from the first turns is a crossed thread', () => {
    const list = whyStopped(2, expected, 'tight all the way')
    expect(list.map(({ cause }) => cause)).toEqual(['cross-threaded', 'bottomed', 'something caught in the joint'])
    expect(list[0]?.why).toBe('it bound within 3 turns')
    expect(first(3, expected, 'hard stop', { lo: 8, hi: 9 })?.cause).toBe('cross-threaded')
  })

  test('a crossed thread is unlikely once it has run', () => {
    const list = whyStopped(8, expected, 'tight all the way')
    expect(list.find(({ cause }) => cause === 'cross-threaded')?.why).toBe(
      'it ran 8 turns, a crossed thread binds sooner',
    )
    expect(whyStopped(8, expected, 'hard stop').at(-1)?.cause).toBe('cross-threaded')
  })

  test('a springy stop is something caught, said with how far it is from its seat', () => {
    expect(first(8, expected, 'springy')).toEqual({
      cause: 'something caught in the joint',
      why: '1.5 turns or more short of its seat: look for a gap between the faces',
    })
    expect(first(9.8, expected, 'springy')).toEqual({
      cause: 'something caught in the joint',
      why: 'nearly down: look for a gap between the faces, a pinched wire or seal',
    })
  })

  test('a bottom that is elsewhere speaks against bottoming', () => {
    const list = whyStopped(9.6, expected, 'hard stop', { lo: 14, hi: 15 })
    expect(list[0]?.cause).toBe('something caught in the joint')
    expect(list.find(({ cause }) => cause === 'bottomed')?.why).toBe('the bottom is 14.0 to 15.0 turns in, it made 9.6')
  })

  test('a hard stop far from its seat and far from the bottom is not the bottom either', () => {
    const list = whyStopped(6.5, expected, 'hard stop', { lo: 14, hi: 15 })
    expect(list[0]?.cause).toBe('something caught in the joint')
  })

  test('half a turn of counting is forgiven at the bottom, on both sides', () => {
    expect(first(5, expected, 'springy', { lo: 5.5, hi: 6 })?.cause).toBe('bottomed')
    expect(first(6.5, expected, 'springy', { lo: 5.5, hi: 6 })?.cause).toBe('bottomed')
    expect(first(6.6, expected, 'springy', { lo: 5.5, hi: 6 })?.cause).toBe('something caught in the joint')
    expect(first(4.9, expected, 'springy', { lo: 5.5, hi: 6 })?.cause).toBe('something caught in the joint')
  })
})

describe('reuse', () => {
  const asNew = { lo: 44.5, hi: 45.5 }

  test('a torque-to-yield bolt is used once, whatever its length', () => {
    expect(reuse({ torqueToYield: true })).toEqual({
      verdict: 'single use',
      why: 'a torque-to-yield bolt is used once',
    })
    expect(reuse({ torqueToYield: true, measured: one(45), asNew }).stretch).toEqual({ lo: -0.5, hi: 0.5 })
  })

  test('longer than a new one can be is stretched', () => {
    expect(reuse({ measured: { lo: 45.6, hi: 45.8 }, asNew })).toEqual({
      verdict: 'stretched',
      why: 'at least 0.10 mm longer than a new one can be',
      stretch: { lo: expect.closeTo(0.1, 9), hi: expect.closeTo(1.3, 9) },
    })
  })

  test('not longer proves nothing more', () => {
    expect(reuse({ measured: one(45.5), asNew })).toMatchObject({
      verdict: 'not shown to be stretched',
      why: expect.stringContaining('necking'),
    })
    expect(reuse({ torqueToYield: false, measured: one(45), asNew }).verdict).toBe('not shown to be stretched')
  })

  test('without both lengths nothing is known', () => {
    expect(reuse({})).toEqual({ verdict: 'not known', why: 'measure it beside a new one' })
    expect(reuse({ measured: one(45) }).verdict).toBe('not known')
    expect(reuse({ asNew }).verdict).toBe('not known')
  })
})
