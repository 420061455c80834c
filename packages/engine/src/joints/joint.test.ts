import { describe, expect, test } from 'vitest'
import { boltClass } from './boltClass.ts'
import { type Condition, frictionOf, statedFriction } from './friction.ts'
import { bearingRing, type HeadWanted } from './head.ts'
import { type JointWanted, joint } from './joint.ts'
import { parentMaterial } from './parentMaterial.ts'
import { thread } from './testing/check.ts'
import { bookTorque, usualSizes, usualTorque } from './usualTorque.ts'
import { slipperyBelow } from './utilisation.ts'

type Short = { size?: string; mark?: string | undefined; torque?: number; condition?: Condition; head?: HeadWanted }

function wanted({ size = 'M6', mark = '8.8', torque = 10, condition = 'unknown', head = {} }: Short): JointWanted {
  const of = thread(size)
  return {
    thread: of,
    strength: boltClass(mark, of)!,
    ring: bearingRing(of, head)!,
    friction: frictionOf(condition),
    torque: { lo: torque, hi: torque },
  }
}

const inAluminium = (of: JointWanted, ratio = 1.5): JointWanted => ({
  ...of,
  parent: parentMaterial('cast aluminium')!,
  seat: parentMaterial('cast aluminium')!,
  engagement: { lo: ratio * of.thread.diameter, hi: ratio * of.thread.diameter },
})

const said = (of: JointWanted) => joint(of).verdicts.map(({ verdict }) => verdict)

const TWENTY_POUND_FEET = 27.116358966628

describe('20 lbf·ft on M6 8.8', () => {
  const asked = () => joint(wanted({ torque: TWENTY_POUND_FEET }))

  test('would break the bolt over the whole range and is not for this size', () => {
    const answer = asked()
    expect(answer.verdicts.map(({ verdict, where }) => [verdict, where])).toEqual([
      ['would break the bolt', 'over the whole range'],
      ['not for this size', 'over the whole range'],
    ])
    expect(answer.verdicts[0]?.why).toBe('stress 1067 to 2121 MPa against 800 MPa at which 8.8 may break')
  })

  test('says what is usual for M6 and for which size the torque is usual: M8 first', () => {
    const answer = asked()
    const size = answer.verdicts[1]!
    expect(size.usualFor?.map(({ thread: name }) => name)).toEqual(['M8', 'M10'])
    expect(size.why).toContain('usual for M6 8.8 is 5.4 to 11.2 N·m')
    expect(size.why).toContain('it is usual for M8')
    expect(size.why).toContain('no class up to 12.9 carries it on M6')
    expect(answer.usual.book).toMatchObject({ band: { lo: 9, hi: 11 } })
    expect(answer.usual.band.lo).toBeCloseTo(0.7 * answer.targets[0]!.torque, 9)
    expect(answer.usual.band.hi).toBeCloseTo(answer.targets[1]!.torque, 9)
  })

  test('warns that the bolt is spent and that the socket fits M8 too', () => {
    const answer = asked()
    expect(answer.cautions).toContain(
      'An over-tightened bolt can hold today and fail later: a bolt that has had this torque is replaced, not used again.',
    )
    expect(answer.cautions).toContain(
      'The same 10 mm socket also fits M8 (JIS B 1189 / ISO 4162 small series): measure diameter and pitch.',
    )
    expect(answer.class.breakingLoad).toBeCloseTo(20.123 * 800, -1)
    expect(answer.clamp.middle).toBeGreaterThan(answer.class.breakingLoad)
  })

  test('says what was not checked, and with material strips or breaks', () => {
    expect(asked().notChecked).toEqual([
      'thread of the hole: its material is not given',
      'seat under the head: its material is not given',
    ])
    const whole = joint(inAluminium(wanted({ torque: TWENTY_POUND_FEET })))
    expect(whole.notChecked).toEqual([])
    expect(whole.verdicts.map(({ verdict }) => verdict)).toEqual([
      'would break the bolt',
      'would strip the case',
      'not for this size',
    ])
    expect(whole.verdicts[1]).toMatchObject({
      where: 'in part of the range',
      why: expect.stringContaining('the bolt may break from 16.1 kN, whichever is weaker goes first'),
    })
    expect(whole.cautions.some((text) => text.startsWith('The seat under the head would give way'))).toBe(true)
  })

  test('no class to 12.9 carries it', () => {
    for (const mark of ['4.6', '4.8', '5.8', '10.9', '12.9']) {
      const verdicts = joint(wanted({ mark, torque: TWENTY_POUND_FEET })).verdicts
      expect(verdicts.map(({ verdict }) => verdict)).toContain('not for this size')
      expect(verdicts[0]?.verdict).toBe('would break the bolt')
    }
  })

  test('12.9 breaks only where friction is low, and that is said', () => {
    const [first, second] = joint(wanted({ mark: '12.9', torque: TWENTY_POUND_FEET })).verdicts
    expect(first).toMatchObject({ verdict: 'would break the bolt', where: 'in part of the range' })
    expect(first?.why).toMatch(/it breaks where friction is below 0\.17, above that it holds$/)
    expect(second).toMatchObject({ verdict: 'would yield the bolt', where: 'in part of the range' })
  })
})

describe('the usual band', () => {
  test('10 N·m on M6 8.8 is in it, with what slippery threads would do', () => {
    const answer = joint(wanted({}))
    expect(answer.verdicts).toHaveLength(1)
    expect(answer.verdicts[0]).toMatchObject({ verdict: 'in the usual band', where: 'over the whole range' })
    expect(answer.verdicts[0]?.why).toBe(
      'usual for M6 8.8 is 5.4 to 11.2 N·m; under middling friction the bolt is at 80 % of its yield',
    )
    expect(answer.cautions[0]).toBe(
      'With slippery threads (friction below 0.10) and the wrench high it could stretch the bolt past its minimum yield.',
    )
  })

  test('its ends are as stated', () => {
    const { band } = joint(wanted({})).usual
    expect(said(wanted({ torque: band.hi * 1.001 }))).toEqual(['high'])
    expect(said(wanted({ torque: band.hi * 0.999 }))).toEqual(['in the usual band'])
    expect(said(wanted({ torque: band.lo * 1.001 }))).toEqual(['in the usual band'])
    expect(said(wanted({ torque: band.lo * 0.999 }))).toEqual(['low'])
    expect(said(wanted({ torque: band.lo * 0.3334 }))).toEqual(['low'])
    expect(said(wanted({ torque: band.lo * 0.3332 }))).toEqual(['not for this size'])
  })

  test('a stated range that leaves it is in it in part', () => {
    const { band } = joint(wanted({})).usual
    const range = (lo: number, hi: number) => joint({ ...wanted({}), torque: { lo, hi } }).verdicts[0]
    expect(range(band.lo * 0.9, band.lo * 1.5)).toMatchObject({
      verdict: 'in the usual band',
      where: 'in part of the range',
    })
    expect(range(band.hi * 0.8, band.hi * 1.1)).toMatchObject({
      verdict: 'in the usual band',
      where: 'in part of the range',
    })
    expect(range(band.hi * 0.99, band.hi * 1.05)).toMatchObject({ verdict: 'high', where: 'in part of the range' })
    expect(range(band.hi * 1.01, band.hi * 1.05)).toMatchObject({ verdict: 'high', where: 'over the whole range' })
    expect(range(band.lo * 0.8, band.lo * 1.1)).toMatchObject({ verdict: 'low', where: 'in part of the range' })
    expect(range(band.lo * 0.8, band.lo * 0.99)).toMatchObject({ verdict: 'low', where: 'over the whole range' })
  })

  test('20 lbf·ft on an M8 8.8 small flange: usual dry, high when oiled', () => {
    const of = (condition: Condition) =>
      said(wanted({ size: 'M8', torque: 27.1, condition, head: { form: 'small flange' } }))
    expect(of('dry')).toEqual(['in the usual band'])
    expect(of('unknown')).toEqual(['in the usual band'])
    expect(of('oiled')).toEqual(['high'])
    expect(said(wanted({ size: 'M8', mark: '10.9', torque: 27.1, head: { form: 'small flange' } }))).toEqual([
      'in the usual band',
    ])
  })

  test('high says how near to yield, and that the bolt is not used again', () => {
    const answer = joint(wanted({ size: 'M8', torque: 27.1, condition: 'oiled', head: { form: 'small flange' } }))
    expect(answer.verdicts[0]?.why).toMatch(/the bolt is at 93 % of its yield, 90 % is the usual target$/)
    expect(answer.cautions.some((text) => text.startsWith('An over-tightened bolt'))).toBe(true)
    expect(answer.cautions.some((text) => text.startsWith('Friction not stated'))).toBe(false)
  })

  test('a yielding bolt is told with the friction that decides', () => {
    const [first, second] = joint(wanted({ torque: 13 })).verdicts
    expect(first).toMatchObject({ verdict: 'would yield the bolt', where: 'in part of the range' })
    expect(first?.why).toMatch(
      /against 640 MPa at which 8.8 yields; it yields where friction is below 0\.15, above that it holds$/,
    )
    expect(second?.verdict).toBe('high')
    expect(joint(wanted({ torque: 13 })).cautions.some((text) => text.includes('it could break the bolt'))).toBe(true)
  })

  test('a stated single friction yields everywhere or nowhere', () => {
    const at = (mu: number, torque: number) =>
      joint({ ...wanted({ torque }), friction: statedFriction({ lo: mu, hi: mu })!, deviation: 0 }).verdicts
    expect(at(0.12, 12)[0]).toMatchObject({ verdict: 'would yield the bolt', where: 'over the whole range' })
    expect(at(0.12, 12)[0]?.why).not.toContain('where friction is below')
    expect(at(0.2, 12)[0]?.verdict).toBe('in the usual band')
  })

  test('an unmarked bolt counts as the weakest and says so', () => {
    const of = thread('M6')
    const answer = joint({ ...wanted({ torque: 3 }), strength: boltClass(undefined, of)! })
    expect(answer.class).toMatchObject({ name: '4.6', assumed: expect.stringContaining('weakest usual class') })
    expect(answer.cautions[0]).toBe('no class given: counted as 4.6, the weakest usual class. Read the head mark.')
    expect(answer.verdicts[0]?.verdict).toBe('in the usual band')
  })

  test('far too little belongs to a smaller size', () => {
    const [first] = joint(wanted({ size: 'M8', torque: 2.2 })).verdicts
    expect(first).toMatchObject({ verdict: 'not for this size', usualFor: [{ thread: 'M4' }] })
    expect(first?.why).not.toContain('carries')
  })

  test('a torque that no size in the list has as usual says so', () => {
    const [first] = joint(wanted({ torque: 0.05 })).verdicts
    expect(first).toMatchObject({ verdict: 'not for this size', usualFor: [] })
    expect(first?.why).toContain('no size in the list has it as usual')
  })
})

describe('hole and seat', () => {
  test('a short engagement strips the case', () => {
    const answer = joint(inAluminium(wanted({}), 0.5))
    expect(answer.verdicts[0]).toMatchObject({ verdict: 'would strip the case', where: 'in part of the range' })
    expect(answer.verdicts[0]?.why).not.toContain('whichever')
    expect(joint(inAluminium(wanted({}), 0.1)).verdicts[0]).toMatchObject({ where: 'over the whole range' })
    expect(answer.engagement?.needed.hi).toBeGreaterThan(3)
    expect(answer.engagement?.stated).toEqual({ lo: 3, hi: 3 })
  })

  test('the worst corner alone is a caution, not a verdict', () => {
    const answer = joint(inAluminium(wanted({})))
    expect(answer.verdicts[0]?.verdict).toBe('in the usual band')
    expect(answer.cautions).toContain(
      'With the softest material, the loosest threads and slippery friction at once, the thread of the hole could strip.',
    )
    expect(answer.cautions.some((text) => text.startsWith('The seat under the head would give way'))).toBe(true)
    const flange = joint(inAluminium(wanted({ head: { form: 'flange' } }), 2.5))
    expect(flange.cautions.some((text) => text.includes('seat') || text.includes('could strip'))).toBe(false)
    const dry = joint(inAluminium(wanted({ condition: 'dry' })))
    expect(dry.cautions).toContain(
      'The seat under the head may give way at the high end of the clamp load: check for a sunk head.',
    )
  })

  test('a bolt’s own thread is watched', () => {
    const answer = joint({ ...inAluminium(wanted({ mark: '4.6', torque: 4 }), 0.1), parent: parentMaterial('steel')! })
    expect(answer.cautions).toContain('The thread of the bolt would strip: more engagement is needed.')
  })

  test('light alloy near the top of the band gets the Army rule', () => {
    const rule =
      'A hole in light alloy: US Army practice takes 30 % or more off the table torque and asks for two diameters of thread.'
    expect(joint(inAluminium(wanted({ torque: 11 }))).cautions).toContain(rule)
    expect(joint(inAluminium(wanted({ torque: 9 }))).cautions).not.toContain(rule)
    expect(joint({ ...inAluminium(wanted({ torque: 11 })), parent: parentMaterial('magnesium')! }).cautions).toContain(
      rule,
    )
    expect(joint({ ...inAluminium(wanted({ torque: 11 })), parent: parentMaterial('steel')! }).cautions).not.toContain(
      rule,
    )
  })

  test('what is missing is named', () => {
    const parent = parentMaterial('steel')!
    expect(joint({ ...wanted({}), parent }).notChecked).toEqual([
      'thread of the hole: its engagement is not given',
      'seat under the head: its material is not given',
    ])
    expect(joint(wanted({ size: 'M26x1.5', torque: 200 })).notChecked).toContain(
      'head: no standard head is known here for this thread',
    )
    expect(joint(wanted({})).engagement).toBeUndefined()
    expect(joint({ ...wanted({}), parent }).engagement?.stated).toBeUndefined()
  })
})

describe('wrench', () => {
  test('drag is added and an extension counted in', () => {
    const answer = joint({ ...wanted({}), drag: 2, extension: { lever: 300, reach: 100 } })
    expect(answer.torque).toMatchObject({ atBolt: { lo: 10, hi: 10 }, drag: 2, deviation: 0.06 })
    expect(answer.torque.onWrench.lo).toBeCloseTo(9, 9)
    expect(answer.clamp).toEqual(joint(wanted({})).clamp)
  })

  test('heavy drag is a finding', () => {
    const text = 'The drag is a third of the torque or more: find out why it drags before adding it.'
    expect(joint({ ...wanted({}), drag: 4 }).cautions).toContain(text)
    expect(joint({ ...wanted({}), drag: 1 }).cautions).not.toContain(text)
  })

  test('an extension that reaches the hand leaves the setting and says so', () => {
    const answer = joint({ ...wanted({}), extension: { lever: 50, reach: 60, angle: 180 } })
    expect(answer.torque.onWrench).toEqual({ lo: 10, hi: 10 })
    expect(answer.notChecked).toContain('wrench setting: the extension reaches the hand')
  })

  test('a better wrench narrows the clamp load', () => {
    const [usual, better] = [joint(wanted({})), joint({ ...wanted({}), deviation: 0.01 })]
    expect(better.clamp.lo).toBeGreaterThan(usual.clamp.lo)
    expect(better.clamp.hi).toBeLessThan(usual.clamp.hi)
    expect(joint(wanted({ torque: 11 })).torque.deviation).toBe(0.04)
  })
})

test('every figure has its source, each named once', () => {
  const { sources, utilisations } = joint(inAluminium(wanted({})))
  expect(new Set(sources).size).toBe(sources.length)
  for (const { source } of utilisations) expect(sources).toContain(source)
  expect(sources.join(' ')).toMatch(
    /VDI 2230:2001.*FED-STD-H28\/2B.*NADCA.*limiting pressure on cast aluminium: VDI 2230:2003/,
  )
})

test('the answer names thread, head and friction', () => {
  expect(joint(wanted({ condition: 'oiled' }))).toMatchObject({
    gripbook: 'joint/1',
    thread: 'M6',
    class: { name: '8.8', tensile: 800, yield: 640 },
    head: { name: 'hexagon, ISO 4014/4017', bearing: 8.88, hole: 6.6, acrossFlats: 10 },
    friction: { condition: 'oiled', mu: { lo: 0.08, hi: 0.16 } },
    targets: [{ mu: 0.08 }, { mu: 0.12 }, { mu: 0.16 }],
  })
})

describe('usual torques', () => {
  test('inch sizes are looked for among inch sizes', () => {
    const sizes = usualSizes(24, thread('1/4-20'), 'grade 5', frictionOf('unknown'))
    expect(sizes[0]?.thread).toBe('5/16-18 UNC')
    expect(sizes.every(({ thread: name }) => name.includes('UNC'))).toBe(true)
  })

  test('a class that a size does not have is passed over', () => {
    expect(usualSizes(300, thread('M6'), '9.8', frictionOf('unknown')).map(({ thread: name }) => name)).not.toContain(
      'M18',
    )
  })

  test('the nearest comes first', () => {
    const sizes = usualSizes(27, thread('M6'), '8.8', frictionOf('unknown'))
    const m = sizes.map(({ band }) => Math.abs(Math.log(27 / band.hi)))
    expect(m).toEqual([...m].sort((a, b) => a - b))
    for (const { band } of sizes) expect(band.lo <= 27 && band.hi >= 27).toBe(true)
  })

  test('are those sizes and bands, ends included', () => {
    const unknown = frictionOf('unknown')
    const sizes = usualSizes(27, thread('M6'), '8.8', unknown)
    expect(sizes.map(({ thread: name }) => name)).toEqual(['M8', 'M10'])
    const ring = bearingRing(thread('M8'))!.friction
    const band = usualTorque(thread('M8'), ring, boltClass('8.8', thread('M8'))!, unknown)
    expect(sizes[0]).toEqual({ thread: 'M8', band })
    expect(usualSizes(band.hi, thread('M6'), '8.8', unknown)[0]?.thread).toBe('M8')
    expect(usualSizes(band.lo, thread('M6'), '8.8', unknown).map(({ thread: name }) => name)).toContain('M8')
    expect(usualSizes(190, thread('1/4-20'), 'grade 5', unknown).map(({ thread: name }) => name)).toContain(
      '3/4-10 UNC',
    )
  })

  test('of light bolts in a dry joint have nothing to mind', () => {
    expect(joint(wanted({ torque: 9, condition: 'dry' })).cautions).toEqual([])
    const flange = inAluminium(wanted({ torque: 9, condition: 'dry', head: { form: 'flange' } }), 2)
    expect(joint(flange).cautions).toEqual([])
    expect(joint(wanted({})).cautions.at(-1)).toBe(
      'Friction not stated: dry, oiled, thread sealant, thread-lock, coated each narrow the range.',
    )
  })

  test('where the bolt breaks there is no second caution about stretching or stripping', () => {
    expect(joint(inAluminium(wanted({ torque: 40, condition: 'oiled' }))).cautions).toEqual([
      'The seat under the head would give way: clamp load is lost later. A hardened washer or a flange head spreads it.',
      'An over-tightened bolt can hold today and fail later: a bolt that has had this torque is replaced, not used again.',
      'The same 10 mm socket also fits M8 (JIS B 1189 / ISO 4162 small series): measure diameter and pitch.',
      'A hole in light alloy: US Army practice takes 30 % or more off the table torque and asks for two diameters of thread.',
    ])
  })

  test('of a socket cap name no socket', () => {
    const answer = joint(wanted({ torque: 40, head: { form: 'socket' } }))
    expect(answer.verdicts.map(({ verdict }) => verdict)).toContain('not for this size')
    expect(answer.cautions.some((text) => text.includes('socket also fits'))).toBe(false)
    expect(answer.head).toEqual({ name: 'socket cap, ISO 4762', bearing: 9.38, hole: 6.6 })
  })

  test('every row of the general table', () => {
    const rows = ['M6', 'M8', 'M10', 'M12'].map((name) =>
      ['4.8', '8.8', '9.8', '10.9', '12.9'].map((mark) => {
        const { band } = bookTorque(thread(name), mark)!
        return [band.lo, band.hi]
      }),
    )
    expect(rows).toEqual([
      [
        [4.8, 6],
        [9, 11],
        [9, 11],
        [13, 17],
        [15, 19],
      ],
      [
        [12, 15],
        [22, 28],
        [22, 28],
        [32, 40],
        [37, 47],
      ],
      [
        [23, 29],
        [43, 55],
        [43, 55],
        [63, 80],
        [75, 95],
      ],
      [
        [40, 50],
        [75, 95],
        [75, 95],
        [110, 140],
        [130, 165],
      ],
    ])
  })

  test('a book has a band for common sizes only', () => {
    expect(bookTorque(thread('M8'), '10.9')?.band).toEqual({ lo: 32, hi: 40 })
    expect(bookTorque(thread('M8x1'), '10.9')).toBeUndefined()
    expect(bookTorque(thread('M8'), '5.6')).toBeUndefined()
    expect(usualTorque(thread('M8'), 10.3, boltClass('8.8', thread('M8'))!, frictionOf('dry')).lo).toBeGreaterThan(15)
  })
})

test('the friction below which a limit is passed is found, or none, or all', () => {
  const loads = { ...wanted({ torque: 10 }), deviation: 0.04 }
  expect(slipperyBelow(loads, 640)).toBeCloseTo(0.101, 2)
  expect(slipperyBelow(loads, 2000)).toBeUndefined()
  expect(slipperyBelow(loads, 100)).toBeNull()
})
