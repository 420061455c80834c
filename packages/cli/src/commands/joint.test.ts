import { describe, expect, test } from 'vitest'
import { testWorld } from '../testing/testWorld.ts'
import { jointCommand } from './joint.ts'

function run(...args: string[]) {
  let out = ''
  let err = ''
  const status = jointCommand.run(
    args,
    (text) => (out += text),
    (text) => (err += text),
    testWorld(),
  )
  return { status, out, err }
}

const json = (...args: string[]) => JSON.parse(run(...args, '--json').out)

describe('gripbook joint', () => {
  test('says of 20 lbf·ft on M6 8.8 that it breaks, what is usual, and that it belongs to M8', () => {
    const { status, out, err } = run('--thread', 'M6', '--class', '8.8', '--torque', '20 lbf·ft')
    expect(status).toBe(1)
    expect(err).toBe('')
    const lines = out.split('\n')
    expect(lines[0]).toBe('M6 8.8, 20 lbf·ft = 27.1 N·m')
    expect(lines[2]).toBe('WOULD BREAK THE BOLT')
    expect(out).toContain('NOT FOR THIS SIZE')
    expect(out).toContain('Usual for M6 8.8: 5.4 to 11.2 N·m (4 to 8.3 lbf·ft)')
    expect(out).toContain('The stated torque is usual for M8 (12.9 to 27.2 N·m, 9.5 to 20.1 lbf·ft)')
    expect(out).toContain('whether it says lbf·ft or lbf·in')
    expect(out.replace(/\s+/g, ' ')).toContain('more than the bolt is sure to carry (16.1 kN)')
    expect(out.replace(/\s+/g, ' ')).toContain(
      "The manual's figure rules. These sums check it; they are never permission.",
    )
  })

  test('keeps to 80 columns', () => {
    const { out } = run(
      '--thread',
      'M6',
      '--torque',
      '20 lbf·ft',
      '--material',
      'cast aluminium',
      '--engagement',
      '1.5d',
      '--drag',
      '4',
      '--extension',
      '50/300',
    )
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
  })

  test('ends with 0 in the usual band, and says nothing of other sizes', () => {
    const { status, out } = run('--thread', 'M6', '--class', '8.8', '--torque', '10 Nm')
    expect(status).toBe(0)
    expect(out).toContain('IN THE USUAL BAND')
    expect(out).toContain('M6 8.8, 10 N·m\n')
    expect(out).not.toContain('usual for M8')
    expect(out).not.toContain('Set the wrench')
  })

  test('ends with 1 when it is high or low', () => {
    expect(run('--thread', 'M6', '--class', '8.8', '--torque', '11.5').status).toBe(1)
    expect(run('--thread', 'M6', '--class', '8.8', '--torque', '4').status).toBe(1)
  })

  test('the answer as JSON has verdicts worst first', () => {
    const answer = json('--thread', 'M6', '--class', '8.8', '--torque', '20 lbf·ft')
    expect(answer.gripbook).toBe('joint/1')
    expect(answer.stated).toBe('20 lbf·ft')
    expect(answer.verdicts.map(({ verdict }: { verdict: string }) => verdict)).toEqual([
      'would break the bolt',
      'not for this size',
    ])
    expect(answer.verdicts[1].usualFor[0].thread).toBe('M8')
    expect(answer.clamp.lo).toBeLessThan(answer.clamp.hi)
    expect(answer.cautions[0]).toContain('lbf·in')
  })

  test('N·m or lbf·ft changes nothing but the words', () => {
    const pounds = json('--thread', 'M8', '--class', '8.8', '--torque', '15 lbf·ft')
    const newtons = json('--thread', 'M8x1.25', '--class', '8.8', '--torque', '20.337269224971006')
    expect(pounds.clamp.middle).toBeCloseTo(newtons.clamp.middle, 6)
    expect(pounds.verdicts).toEqual(newtons.verdicts)
  })

  test('reads every option', () => {
    const answer = json(
      '--thread=M8',
      '--class',
      '10.9',
      '--torque',
      '30 to 34 Nm',
      '--material',
      'grey iron',
      '--seat',
      'steel',
      '--engagement',
      '12 ± 1 mm',
      '--friction',
      '0.10-0.14',
      '--head',
      'EN 1665',
      '--drag',
      '9 lbf·in',
      '--extension',
      '50/300@90',
    )
    expect(answer.torque.atBolt).toEqual({ lo: 30, hi: 34 })
    expect(answer.torque.drag).toBeCloseTo(1.0169, 3)
    expect(answer.torque.onWrench.lo).toBeCloseTo(31.0169, 3)
    expect(answer.head.name).toBe('hex flange, EN 1665')
    expect(answer.friction).toMatchObject({ condition: 'stated', mu: { lo: 0.1, hi: 0.14 } })
    expect(answer.engagement.stated).toEqual({ lo: 11, hi: 13 })
    expect(answer.utilisations.map(({ part }: { part: string }) => part)).toEqual([
      'bolt to yield',
      'bolt to break',
      'thread of the hole',
      'thread of the bolt',
      'seat under the head',
    ])
    expect(answer.utilisations[4].limit.lo).toBe(490)
  })

  test.each([
    ['flange', 'hex flange, EN 1665'],
    ['small flange', 'hex flange, JIS B 1189 / ISO 4162 small series'],
    ['10 mm', 'hex flange, JIS B 1189 / ISO 4162 small series'],
    ['10', 'hex flange, JIS B 1189 / ISO 4162 small series'],
    ['hex 12', 'hexagon, JIS B 1180 annex, small'],
    ['Socket', 'socket cap, ISO 4762'],
    ['ISO 4762', 'socket cap, ISO 4762'],
  ])('the head %s is the %s', (head, name) => {
    expect(json('--thread', 'M8', '--torque', '5', '--head', head).head.name).toBe(name)
  })

  test.each([
    ['oil', 'oiled'],
    ['Dry', 'dry'],
    ['sealant', 'thread sealant'],
    ['thread locker', 'thread-lock'],
    ['lubricated', 'oiled'],
    ['threadlock', 'thread-lock'],
    ['thread lock', 'thread-lock'],
    ['0.12', 'stated'],
    ['0,10 to 0,14', 'stated'],
  ])('friction %s is %s', (friction, condition) => {
    expect(json('--thread', 'M8', '--torque', '5', '--friction', friction).friction.condition).toBe(condition)
  })

  test('the seat is of the hole’s material where no other is given', () => {
    expect(json('--thread', 'M8', '--torque', '5', '--material', 'steel').utilisations.at(-1).part).toBe(
      'seat under the head',
    )
  })

  test('an engagement in diameters', () => {
    expect(
      json('--thread', 'M8', '--torque', '5', '--material', 'steel', '--engagement', '1.5 d').engagement.stated,
    ).toEqual({ lo: 12, hi: 12 })
    expect(
      json('--thread', 'M8', '--torque', '5', '--material', 'steel', '--engagement', '1,5D').engagement.stated,
    ).toEqual({ lo: 12, hi: 12 })
  })

  test('an unmarked bolt is said to be counted as the weakest', () => {
    expect(run('--thread', 'M6', '--torque', '3').out).toContain(
      'no class given: counted as 4.6, the weakest usual class. Read the head mark.',
    )
    expect(run('--thread', 'M6', '--class', 'no mark', '--torque', '3').out).toContain('no head mark: counted as 4.6')
  })

  test('the wrench setting is told when drag or an extension changes it', () => {
    const { out } = run(
      '--thread',
      'M6',
      '--class',
      '8.8',
      '--torque',
      '10',
      '--drag',
      '1',
      '--extension',
      '50 mm / 300 mm',
    )
    expect(out.replace(/\s+/g, ' ')).toContain('Set the wrench to 9.4 N·m (7 lbf·ft), 1 N·m of drag counted in.')
    expect(run('--thread', 'M6', '--class', '8.8', '--torque', '10', '--extension', '50/300').out).not.toContain(
      'of drag',
    )
  })

  test('helps', () => {
    expect(run('--help')).toMatchObject({ status: 0, out: jointCommand.help })
    expect(jointCommand.words.startsWith('joint ')).toBe(true)
    for (const line of jointCommand.help.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
  })
})

describe('what cannot be used is refused with the option, what was found and what to write', () => {
  const whole = ['--thread', 'M6', '--class', '8.8', '--torque', '10', '--material', 'steel', '--engagement', '9']
  const but = (option: string, value: string) => {
    const at = whole.indexOf(option)
    return at < 0 ? [...whole, option, value] : whole.map((part, i) => (i === at + 1 ? value : part))
  }

  test.each([
    ['--thread', 'M6x7', 'is no standard thread', 'M8x1'],
    ['--class', '7.7', 'is no class that Gripbook knows for M6', '10.9'],
    ['--torque', 'tight', 'is not understood', '"10 N·m"'],
    ['--torque', '0', 'must be above 0', '"10 N·m"'],
    ['--torque', '-5', 'is below 0', '"10 N·m"'],
    ['--torque', '5 furlong', 'has a unit that is not known, "furlong"', '"20 lbf·ft"'],
    ['--torque', '10 mm', 'is in mm, which measures something else', '"20 lbf·ft"'],
    ['--torque', '11 to 9', 'has its ends crossed', '"9 to 11 N·m"'],
    ['--torque', '20 lb-ft (30 N·m)', 'gives two figures that do not agree', '"9 to 11 N·m"'],
    ['--torque', 'at least 5', 'must be known and at most 2000 N·m', '"10 N·m"'],
    ['--torque', '2001', 'must be known and at most 2000 N·m', '"10 N·m"'],
    ['--material', 'cheese', 'is no material that Gripbook knows', 'cast aluminium, wrought aluminium'],
    ['--seat', 'cheese', 'is no material that Gripbook knows', 'cast aluminium, wrought aluminium'],
    ['--engagement', 'long', 'is not understood', '"1.5 d"'],
    ['--engagement', '0', 'must be above 0', '"1.5 d"'],
    ['--engagement', '61', 'must be known and at most 10 d', '"1.5 d"'],
    ['--engagement', 'at least 5', 'must be known and at most 10 d', '"1.5 d"'],
    ['--friction', 'greasy', 'is not understood', 'dry, oiled'],
    ['--friction', '0.9', 'is not understood', '0.10-0.16'],
    [
      '--head',
      'wing',
      'is no head that Gripbook knows for M6; for M6 Gripbook knows ISO 4014/4017 10 mm, ISO 4762,',
      '"EN 1665"',
    ],
    ['--drag', 'some', 'is not understood', '"1.5 N·m"'],
    ['--drag', 'at least 1', 'must be known and at most 2000 N·m', '"1.5 N·m"'],
    ['--extension', 'long', 'is not understood', '50/300@90'],
    ['--extension', '50/0', 'needs a wrench length above 0', '50/300@90'],
    ['--extension', '50/300@200', 'has an angle above 180°', '50/300@90'],
    ['--extension', '300/300@180', 'turns back to the hand', '50/300@90'],
  ])('%s %s', (option, value, found, instead) => {
    const { status, out, err } = run(...but(option, value))
    expect(status).toBe(2)
    expect(out).toBe('')
    expect(err).toMatch(new RegExp(`^${option}: `))
    expect(err).toContain(JSON.stringify(value))
    expect(err).toContain(found)
    expect(err).toContain(instead)
    expect(err.endsWith('.\n')).toBe(true)
  })

  test('a missing thread or torque', () => {
    expect(run('--torque', '10')).toMatchObject({
      status: 2,
      err: expect.stringContaining('--thread is missing. Write a size'),
    })
    expect(run('--thread', 'M6')).toMatchObject({
      status: 2,
      err: expect.stringContaining('--torque is missing. Write a torque'),
    })
  })

  test('a word without an option, an unknown option, an option without its value', () => {
    expect(run('--thread', 'M6', '--torque', '20', 'lbf·ft')).toMatchObject({
      status: 2,
      err: expect.stringContaining('needs quotes'),
    })
    expect(run('--thred', 'M6')).toMatchObject({ status: 2, err: expect.stringContaining('Did you mean --thread?') })
    expect(run('--thread')).toMatchObject({ status: 2, err: expect.stringContaining('--thread needs a value') })
  })
})
