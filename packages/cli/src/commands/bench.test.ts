import { describe, expect, test } from 'vitest'
import { testWorld } from '../testing/testWorld.ts'
import { jointCommand } from './joint.ts'

/** On the first of June 2026. */
function run(...args: string[]) {
  const world = testWorld({}, { today: '2026-06-01' })
  const status = jointCommand.run(args, world.out, world.err, world)
  return { status, ...world.said, words: world.said.out.replace(/\s+/g, ' ') }
}

const json = (...args: string[]) => JSON.parse(run(...args, '--json').out)

const M6 = ['--thread', 'M6', '--class', '8.8', '--torque', '10']
const M8 = ['--thread', 'M8', '--class', '8.8', '--torque', '20']
const WRENCH = [...M6, '--wrench', '4 to 20 N·m']

describe('the wrench', () => {
  test('in its range and calibrated within the year is fit', () => {
    const { status, out } = run(...WRENCH, '--calibrated', '2026-03-01')
    expect(status).toBe(0)
    expect(out).toContain('\nWRENCH FIT\n  4 to 20 N·m, ±6 %, calibrated 2026-03-01, due 2027-03-01.\n')
    expect(json(...WRENCH, '--calibrated', '2026-03-01').wrench).toEqual({
      range: { lo: 4, hi: 20 },
      setTo: { lo: 10, hi: 10 },
      fit: true,
      findings: [],
      deviation: 0.06,
      calibrated: '2026-03-01',
      due: '2027-03-01',
      today: '2026-06-01',
    })
  })

  test.each([
    [['--calibrated', '2025-05-31'], 'Out of calibration: today is 2026-06-01.'],
    [['--calibrated', '2026-06-02'], 'Calibrated after today, 2026-06-01'],
    [[], 'No calibration date'],
    [['--calibrated', '2026-01-01', '--calibrated-for', '3'], 'due 2026-04-01. Out of calibration'],
    [['--calibrated', '2026-01-01', '--drag', '12'], 'Above its range: it is to be set to 22 N·m.'],
  ])('with %j it is not fit, and the torque alone does not make it right', (more, found) => {
    const { status, words } = run(...WRENCH, ...more)
    expect(status).toBe(1)
    expect(words).toContain('IN THE USUAL BAND')
    expect(words).toContain('WRENCH NOT FIT')
    expect(words).toContain(found)
  })

  test('both ends of a stated range must be within its range', () => {
    const calibrated = ['--calibrated', '2026-03-01', '--thread', 'M6', '--class', '8.8', '--wrench']
    expect(run(...calibrated, '9.5-20', '--torque', '9 to 11').words).toContain('Below its range')
    expect(run(...calibrated, '2-10.5', '--torque', '9 to 11').words).toContain('Above its range')
    expect(run(...calibrated, '9-11', '--torque', '9 to 11').status).toBe(0)
  })

  test('what is set counts, not what the bolt gets: 23 N·m behind 60/300 is set to 19.2', () => {
    const { status, words } = run(
      ...['--thread', 'M8', '--class', '8.8', '--torque', '23', '--extension', '60/300'],
      ...['--wrench', '4-20', '--calibrated', '2026-03-01'],
    )
    expect(words).toContain('Set the wrench to 19.2 N·m')
    expect(words).toContain('WRENCH FIT')
    expect(status).toBe(0)
  })

  test('the lowest fifth is said and still fit', () => {
    const { status, words } = run(...M6, '--wrench', '5-60', '--calibrated', '2026-03-01')
    expect(status).toBe(0)
    expect(words).toContain('Set to 10 N·m it is in its lowest fifth, where it is not checked')
  })

  test('what its certificate states is reckoned with everywhere', () => {
    const args = [...WRENCH, '--calibrated', '2026-03-01', '--deviation', '±2.5 %']
    const answer = json(...args)
    expect(answer.torque.deviation).toBe(0.025)
    expect(answer.wrench.deviation).toBe(0.025)
    // least clamp load goes with 1 − deviation: 0.975/0.94 of that by the class
    expect(answer.clamp.lo / json(...WRENCH, '--calibrated', '2026-03-01').clamp.lo).toBeCloseTo(0.975 / 0.94, 9)
    expect(run(...args).words).toContain('wrench ±2.5 %')
  })
})

describe('a swivel', () => {
  test('at 20° lets the torque swing 6 % over, as published for the single universal joint', () => {
    const { swivel } = json(...M8, '--swivel', '20')
    expect(swivel.atBolt.lo).toBeCloseTo(20 * 0.9397, 2)
    expect(swivel.atBolt.hi).toBeCloseTo(20 * 1.064, 1)
    expect(swivel.verdicts.most[0].verdict).toBe('in the usual band')
    const { status, words } = run(...M8, '--swivel', '20°')
    expect(status).toBe(0)
    expect(words).toContain('SWIVEL AT 20° The torque at the bolt swings from 18.8 to 21.3 N·m in each turn')
  })

  test('that takes the torque out of the usual band is wrong: 10 N·m at 30° reaches 11.5, usual ends at 11.2', () => {
    const { status, words } = run(...M6, '--swivel', '30')
    expect(status).toBe(1)
    expect(words).toContain('SWIVEL AT 30° LEAVES THE USUAL BAND')
    expect(words).toContain('At 11.5 N·m high: usual for M6 8.8 is 5.4 to 11.2 N·m')
    expect(words).not.toContain('At 8.7 N·m')
  })
})

describe('an angle', () => {
  const joint = ['--thread', 'M10', '--class', '10.9', '--material', 'cast aluminium', '--seat', 'steel']
  const angle = [...joint, '--clamped', '30', '--angle']

  test('gives the clamp load worked by hand for M10 through 30 mm of steel into aluminium', () => {
    const answer = json(...angle, '20')
    // bolt: 57.99 mm² × 195 000/35 mm; with 30 mm of shank 210 000/(30/78.54 + 5/57.99)
    expect(answer.angle.stiffness.bolt.lo / 1000).toBeCloseTo(323.1, 0)
    expect(answer.angle.stiffness.bolt.hi / 1000).toBeCloseTo(448.5, 0)
    // frusta under a head of 14.63 over a hole of 11: 3 067 900, 1 865 330 and 7 228 900 N/mm in series
    expect(answer.angle.stiffness.parts.lo / 1000).toBeCloseTo(999.6, 0)
    // 20/360 of 1.5 mm over 1/323 100 + 1/999 610
    expect(answer.angle.added.lo).toBeCloseTo(20_348, -2)
    expect(answer.angle.total).toEqual(answer.angle.added)
    expect(answer.angle.yields).toBe('no')
    expect(answer.verdicts).toBeUndefined()
    const { status, words } = run(...angle, '20')
    expect(status).toBe(0)
    expect(words).toContain('M10, no torque stated ANGLE 20° Adds 20.3 to 27.1 kN of clamp load from snug on, while')
    expect(words).toContain('The 10.9 bolt yields from 54.5 kN in plain tension.')
  })

  test('comes on top of the torque before it, which may then be low', () => {
    const torque = ['--torque', '20']
    expect(run(...joint, ...torque).status).toBe(1)
    const { status, words } = run(...angle, '20', ...torque)
    expect(status).toBe(0)
    expect(words).toContain('Before an angle a low torque is usual.')
    const answer = json(...angle, '20', ...torque)
    expect(answer.angle.total.lo).toBeCloseTo(answer.angle.added.lo + answer.clamp.lo, 6)
    expect(answer.angle.total.hi).toBeCloseTo(answer.angle.added.hi + answer.clamp.hi, 6)
    expect(run(...angle, '20', '--torque', '90').status).toBe(1)
  })

  test('past the yield of the bolt is wrong, and said with what to expect', () => {
    const { status, words } = run(...angle, '90')
    expect(status).toBe(1)
    expect(words).toContain('ANGLE 90° YIELDS THE BOLT From snug on it would add 91.6 to 121.8 kN')
    expect(words).toContain('yields from 54.5 kN in plain tension and takes little more: expect about that')
    expect(words).toContain('used once')
  })

  test('that may yield the bolt is said and not wrong', () => {
    const { status, words } = run(...angle, '45')
    expect(status).toBe(0)
    expect(words).toContain('ANGLE 45° MAY YIELD THE BOLT')
  })

  test('an angle in a range, a known shank and an unmarked bolt', () => {
    const range = json(...angle, '18 to 22°').angle
    expect(range.degrees).toEqual({ lo: 18, hi: 22 })
    const known = json(...angle, '20', '--shank', '10').angle
    expect(known.added.lo).toBeGreaterThan(json(...angle, '20').angle.added.lo)
    expect(known.added.hi).toBeLessThan(json(...angle, '20').angle.added.hi)
    const { words } = run(
      '--thread',
      'M10',
      '--material',
      'steel',
      '--clamped',
      '30',
      '--angle',
      '5-6',
      '--engagement',
      '8',
    )
    expect(words).toContain('ANGLE 5 to 6°')
    expect(words).toContain('No class given: counted as 4.6, the weakest usual class. Read the head mark.')
  })
})

describe('turns', () => {
  const turns = ['--thread', 'M8', '--stick-out', '14.5', '--mouth', '1']

  test('until the head seats: (14.5 − 1 − 2.5)/1.25 to (14.5 − 1)/1.25, the tip 1 to 2 pitches', () => {
    const { status, out } = run(...turns)
    expect(status).toBe(0)
    expect(out).toContain('M8, no torque stated\n\n8.8 to 10.8 TURNS TO SEAT\n')
    expect(json(...turns)).toEqual({
      gripbook: 'joint/1',
      thread: 'M8',
      turns: { pitch: 1.25, expected: { lo: expect.closeTo(8.8, 9), hi: expect.closeTo(10.8, 9) } },
    })
    expect(json(...turns, '--tip', '1').turns.expected.lo).toBeCloseTo(10, 9)
    expect(json('--thread', 'M8', '--stick-out', '12.5').turns.expected.hi).toBeCloseTo(10, 9)
  })

  test('stand beside a torque as well', () => {
    const { status, words } = run(...M8, '--stick-out', '14.5')
    expect(status).toBe(0)
    expect(words).toContain('IN THE USUAL BAND')
    expect(words).toContain('TURNS TO SEAT')
  })

  test('the bottom: far enough, in doubt, or met before the head seats', () => {
    expect(run(...turns, '--bottom', '20')).toMatchObject({
      status: 0,
      words: expect.stringContaining('The tip meets the bottom after 13.2 to 15.2 turns.'),
    })
    expect(run(...turns, '--bottom', '14 to 15')).toMatchObject({
      status: 0,
      words: expect.stringContaining('that may be before the head seats, measure again'),
    })
    expect(run(...turns, '--bottom', '12')).toMatchObject({
      status: 1,
      words: expect.stringContaining('TOO LONG FOR THIS HOLE'),
    })
    expect(json(...turns, '--bottom', '12').turns.bottomsFirst).toBe('sure')
  })

  test.each([
    ['6.5', 'hard stop', [], 'STOPPED EARLY: BOTTOMED'],
    ['6.5', 'hard stop', ['--bottom', '20'], 'STOPPED EARLY: SOMETHING CAUGHT IN THE JOINT'],
    ['2', 'Tight all the way', [], 'STOPPED EARLY: CROSS-THREADED'],
    ['8', 'springy', [], 'STOPPED EARLY: SOMETHING CAUGHT IN THE JOINT'],
    ['6', 'head on its seat', [], 'TURNS MISCOUNTED OR READING WRONG'],
  ])('%s turns to a %s: %j', (counted, rest, more, head) => {
    const { status, out } = run(...turns, '--turns', counted, '--rest', rest, ...more)
    expect(status).toBe(1)
    expect(out).toContain(`\n${head}\n`)
    expect(out).toContain(`Came to rest after ${counted} turns`)
  })

  test('a head on its seat after the expected turns is right', () => {
    const args = [...turns, '--turns', '9,5', '--rest', 'head on its seat']
    expect(run(...args)).toMatchObject({ status: 0, out: expect.stringContaining('\nSEATED\n') })
    expect(json(...args).turns).toMatchObject({ counted: 9.5, rest: 'head on its seat', causes: [{ cause: 'seated' }] })
  })
})

describe('a used bolt', () => {
  const used = (asNew: string, now: string) => ['--thread', 'M8', '--new-length', asNew, '--length-now', now]

  test('longer than a new one can be is stretched: 45.95 is 0.45 over 45 ± 0.5, IT15 of ISO 286-1', () => {
    const { status, out } = run(...used('nominal 45 mm', '46 ± 0.05'))
    expect(status).toBe(1)
    expect(out).toContain('STRETCHED, NOT TO BE USED AGAIN\n  At least 0.45 mm longer than a new one can be.')
    expect(json(...used('45 ± 0.05', '45.3 ± 0.05')).reuse).toMatchObject({
      verdict: 'stretched',
      stretch: { lo: expect.closeTo(0.2, 9), hi: expect.closeTo(0.4, 9) },
    })
  })

  test('within it nothing is shown', () => {
    expect(run(...used('at most 45.5', '45.3'))).toMatchObject({
      status: 0,
      words: expect.stringContaining('NOT SHOWN TO BE STRETCHED Not longer than a new one can be'),
    })
  })
})

describe('a socket', () => {
  test('of 10 mm fits M6 and the small flange of M8, and needs no thread', () => {
    const { status, words } = run('--socket', '10 mm')
    expect(status).toBe(0)
    expect(words).toContain('SOCKET 10 mm Fits M6 (hexagon, ISO 4014/4017), M6 (hex flange, EN 1665), M8 (hex flange')
    expect(json('--socket', '10').thread).toBeUndefined()
  })

  test('is held against the thread asked about, fine threads too', () => {
    expect(json('--thread', 'M8', '--socket', '10').socket.fitsThread).toBe(true)
    expect(json('--thread', 'M8x1', '--socket', '13').socket.fitsThread).toBe(true)
    expect(run('--thread', 'M6', '--socket', '13').words).toContain('None of them is of the thread asked about')
    expect(run('--thread', '5/16-18 UNC', '--socket', '1/2 in').words).toContain('Fits 5/16-18 UNC')
    const none = run('--thread', 'M8', '--socket', '20').words
    expect(none).toContain('Fits no standard head that Gripbook knows.')
    expect(none).not.toContain('None of them')
  })
})

test('all at once keeps to 80 columns and to 40, with its findings before the figures', () => {
  const args = [
    ...['--thread', 'M8', '--class', '8.8', '--torque', '20', '--material', 'cast aluminium', '--swivel', '45'],
    ...['--wrench', '30-60', '--calibrated', '2024-01-01', '--angle', '90', '--clamped', '20', '--stick-out', '14'],
    ...['--bottom', '12', '--turns', '4', '--rest', 'hard stop', '--new-length', '30', '--length-now', '31'],
    ...['--socket', '10'],
  ]
  for (const columns of [80, 40]) {
    const world = testWorld({}, { columns })
    expect(jointCommand.run(args, world.out, world.err, world)).toBe(1)
    const lines = world.said.out.split('\n')
    // the table of shares keeps its columns on a narrow screen
    for (const line of lines.filter((one) => !/ of .* (MPa|kN)$/.test(one) && !one.startsWith('How much')))
      expect(line.length).toBeLessThanOrEqual(columns)
    expect(lines.findIndex((line) => line.startsWith('SOCKET'))).toBeLessThan(
      lines.findIndex((line) => line.startsWith('Usual for')),
    )
    expect(world.said.out).not.toMatch(/undefined|NaN|Infinity/)
  }
})

test('what is not asked is not in the answer', () => {
  const answer = json(...M6)
  for (const field of ['wrench', 'swivel', 'angle', 'turns', 'reuse', 'socket'])
    expect(answer).not.toHaveProperty(field)
})

describe('what cannot be used is refused with the option, what was found and what to write', () => {
  const turns = ['--thread', 'M8', '--stick-out', '14.5']
  const angle = ['--thread', 'M8', '--material', 'steel', '--clamped', '30', '--angle']
  const bolt = ['--thread', 'M8', '--new-length', '45', '--length-now']

  test.each<[string[], string]>([
    [[...M6, '--wrench', 'big'], '--wrench: "big" is not understood. Write the range'],
    [[...M6, '--wrench', '20'], '--wrench: "20" must have both ends'],
    [[...M6, '--wrench', 'at least 4'], '--wrench: "at least 4" must have both ends'],
    [[...WRENCH, '--calibrated', 'last year'], '--calibrated: "last year" is no day of the calendar. Write the day'],
    [[...WRENCH, '--calibrated', '2026-02-30'], '--calibrated: "2026-02-30" is no day'],
    [[...WRENCH, '--deviation', 'good'], '--deviation: "good" is not understood'],
    [[...WRENCH, '--deviation', '40'], '--deviation: "40" must be above 0 and at most 25 %'],
    [[...WRENCH, '--deviation', '0.04'], '--deviation: "0.04" is too small for a wrench'],
    [[...WRENCH, '--calibrated-for', '6'], '--calibrated is missing, --calibrated-for needs it'],
    [[...WRENCH, '--calibrated', '2026-01-01', '--calibrated-for', 'ever'], '--calibrated-for: "ever" is not'],
    [[...WRENCH, '--calibrated', '2026-01-01', '--calibrated-for', '99'], '--calibrated-for: "99" must be 1 to 60'],
    [[...M6, '--calibrated', '2026-01-01'], '--wrench is missing, --calibrated needs it. Write the range'],
    [[...turns, '--wrench', '4-20'], '--torque is missing, --wrench needs it. Write a torque'],
    [['--thread', 'M6', '--wrench', '4-20'], '--torque is missing. Write a torque'],
    [[...M6, '--swivel', 'steep'], '--swivel: "steep" is not understood. Write the angle'],
    [[...M6, '--swivel', '20-30'], '--swivel: "20-30" is not understood'],
    [[...M6, '--swivel', '61'], '--swivel: "61" must be 0 to 60 degrees'],
    [[...angle, 'half'], '--angle: "half" is not understood'],
    [[...angle, '0'], '--angle: "0" must be 1 to 720 degrees'],
    [[...angle, '95-85'], '--angle: "95-85" has its ends crossed'],
    [[...angle, '90', '--shank', '31'], '--shank: "31" is longer than what is clamped'],
    [['--thread', 'M8', '--angle', '90'], '--clamped is missing, --angle needs it'],
    [['--thread', 'M8', '--angle', '90', '--clamped', '30'], '--material is missing, --angle needs it'],
    [['--thread', 'M8', '--clamped', '30'], '--angle is missing, --clamped needs it'],
    [['--thread', 'M8', '--stick-out', '0'], '--stick-out: "0" must be above 0'],
    [['--thread', 'M8', '--stick-out', 'at least 5'], '--stick-out: "at least 5" must be known and at most 500 mm'],
    [['--thread', 'M8', '--stick-out', '5 N·m'], '--stick-out: "5 N·m" is in N·m, which measures something else'],
    [[...turns, '--mouth', '3', '--bottom', '3'], '--bottom: "3" is not deeper than the mouth'],
    [[...turns, '--turns', '6'], '--rest is missing, --turns needs it. Write one of: hard stop'],
    [[...turns, '--rest', 'springy'], '--turns is missing, --rest needs it'],
    [[...turns, '--turns', 'six', '--rest', 'springy'], '--turns: "six" is not understood'],
    [[...turns, '--turns', '501', '--rest', 'springy'], '--turns: "501" must be at most 500'],
    [[...turns, '--turns', '6', '--rest', 'soft'], '--rest: "soft" is not understood. Write one of'],
    [['--thread', 'M8', '--turns', '6'], '--stick-out is missing, --turns needs it'],
    [[...bolt, 'long'], '--length-now: "long" is not understood'],
    [['--thread', 'M8', '--new-length', '45'], '--length-now is missing, --new-length needs it'],
    [['--thread', 'M8', '--length-now', '45'], '--new-length is missing, --length-now needs it'],
    [['--thread', 'M8', '--length-now', '45', '--new-length', 'nominal x'], '--new-length: "x" is not understood'],
    [['--socket', '8 to 10'], '--socket: "8 to 10" must be one size'],
    [['--socket', '0'], '--socket: "0" must be above 0'],
    [['--socket', '61'], '--socket: "61" must be known and at most 60 mm'],
    [['--stick-out', '14.5'], '--thread is missing. Write a size'],
  ])('%j', (args, words) => {
    const { status, out, err } = run(...args)
    expect({ status, out }).toEqual({ status: 2, out: '' })
    expect(err.startsWith(words)).toBe(true)
    expect(err.endsWith('.\n')).toBe(true)
  })
})
