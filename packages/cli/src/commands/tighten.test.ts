import { readFileSync } from 'node:fs'
import type { Face, TighteningAnswer, Unit } from '@gripbook/engine'
import { beforeAll, describe, expect, test } from 'vitest'
import { main } from '../main.ts'
import { testWorld } from '../testing/testWorld.ts'

const DEMO = readFileSync(new URL('../../../../demo/rear-cover.json', import.meta.url), 'utf8')

/** A rectangle of four bolts: quick to work out, and no order stated. */
const PLAIN: Unit = {
  gripbook: 'unit/1',
  faces: [
    {
      id: 'lid',
      torque: 10,
      snug: true,
      holes: [
        { id: '1', thread: 'M6', grip: 6, at: [10, 10] },
        { id: '2', thread: 'M6', grip: 6, at: [90, 10] },
        { id: '3', thread: 'M6', grip: 6, at: [90, 50] },
        { id: '4', thread: 'M6', grip: 6, at: [10, 50] },
      ],
      cover: {
        outline: [
          [0, 0],
          [100, 0],
          [100, 60],
          [0, 60],
        ],
        thickness: 6,
      },
      bed: { stiffness: 20 },
    },
  ],
}

/** The text of the plain unit with its face changed. */
function changed(change: (face: Face & { cover: NonNullable<Face['cover']> }) => void): string {
  const unit = structuredClone(PLAIN)
  change(unit.faces[0] as Face & { cover: NonNullable<Face['cover']> })
  return JSON.stringify(unit)
}

async function run(args: string[], files: Record<string, string> = {}, watched = false) {
  const world = testWorld({ 'demo.json': DEMO, 'plain.json': JSON.stringify(PLAIN), ...files }, { watched })
  const status = await main(['tighten', ...args], world)
  return { status, ...world.said }
}

describe('the demo', () => {
  let answer: TighteningAnswer
  let ended: Awaited<ReturnType<typeof run>>
  beforeAll(async () => {
    ended = await run(['demo.json', '--json'])
    answer = JSON.parse(ended.out)
  })

  test('is answered as JSON by the contract, the stated order first, and it rules', () => {
    expect({ status: ended.status, err: ended.err }).toEqual({ status: 0, err: '' })
    expect(answer.gripbook).toBe('tightening/1')
    expect(answer.holes).toEqual(['1', '2', '3', '4', '5', '6', '7', '8', '9', '10'])
    expect(answer.compliance.map((row) => row.length)).toEqual(Array(10).fill(10))
    expect(answer.advice).toEqual({ why: 'stated', order: 0 })
    expect(answer.orders.map(({ kind }) => kind)).toContain('found')
    for (const { name, steps, spread, bow } of answer.orders) {
      expect(name).not.toBe('')
      expect(spread).toBeGreaterThan(0)
      expect(bow).toBeGreaterThan(0)
      for (const { loads } of steps) expect(loads).toHaveLength(10)
    }
  })

  test('keeps the second visit for last, in every order', () => {
    for (const { passes } of answer.orders) {
      const visits = passes.map(({ visit }) => visit)
      expect(visits).toEqual(visits.toSorted())
      expect(passes.filter(({ visit }) => visit === 2).every(({ sequence }) => sequence.join() === '10')).toBe(true)
    }
  })

  test('reads in 80 columns: what to do, the order, all orders, and what is taken for granted', async () => {
    const { status, out, err } = await run(['demo.json'])
    expect({ status, err }).toEqual({ status: 0, err: '' })
    for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
    expect(out).toContain('Keep to the manual’s order in 2 visits: it rules.')
    expect(out).toContain('dowels and what locates first: 4 and 9.')
    expect(out).toContain('Pass 2, 100 %:  3, 7, 2, 6, 8, 4, 1, 5, 9')
    expect(out).toContain('11, then 22 N·m: bolts 3, 4 and 6')
    expect(out).toContain('→ the manual’s order')
    expect(out).toContain('valve bore: ')
    expect(out).toContain('no promise of kN')
  })
})

test('without a stated order one is advised, in the passes that are asked for', async () => {
  const { status, out } = await run(['plain.json', '--passes', '50,100', '--json'])
  expect(status).toBe(0)
  const answer: TighteningAnswer = JSON.parse(out)
  expect(answer.advice.why).not.toBe('stated')
  for (const { passes } of answer.orders) expect(passes.map(({ share }) => share)).toEqual([0.5, 1])
})

test('without a search only patterns are shown', async () => {
  const { status, out } = await run(['plain.json', '--no-search', '--json'])
  expect(status).toBe(0)
  expect(JSON.parse(out).orders.map(({ kind }: { kind: string }) => kind)).not.toContain('found')
  const { out: words } = await run(['plain.json', '--no-search'])
  expect(words).not.toContain('search')
  // its bed is one figure: no column for a range, and no word about one
  expect(words).not.toContain('over bed')
})

test('a spread that is asked for and not reached ends with 1; one that is not asked for ends with 0', async () => {
  // two bolts close together on a soft bed under a thin cover: the first goes slack whatever the order
  const soft = changed((face) => {
    face.bed = { stiffness: 1 }
    face.cover.thickness = 3
    face.holes[1]!.at = [30, 10]
  })
  const strict = await run(['soft.json', '--spread', '0.001', '--no-search'], { 'soft.json': soft })
  expect(strict.status).toBe(1)
  expect(strict.out.replace(/\s+/g, ' ')).toContain('It stays above the under 0.1 % wanted')
  expect((await run(['soft.json', '--no-search'], { 'soft.json': soft })).status).toBe(0)
  expect((await run(['soft.json', '--spread', '100', '--no-search'], { 'soft.json': soft })).status).toBe(0)
})

test('progress is shown on a watched terminal only, and is wiped', async () => {
  expect((await run(['plain.json'])).err).toBe('')
  const { err, out } = await run(['plain.json'], {}, true)
  expect(err).toMatch(/bending the cover: \d+ %/)
  expect(err.endsWith('\r\u001b[K')).toBe(true)
  expect(out).not.toContain('\u001b')
})

describe('which face', () => {
  const two = JSON.stringify({
    ...PLAIN,
    faces: [PLAIN.faces[0], { ...PLAIN.faces[0], id: 'pan' }, { id: 'rear', holes: [{ id: '1', thread: 'M6' }] }],
  })
  test('the one that is named', async () => {
    const { out, status } = await run(['two.json', '--face=pan', '--no-search', '--json'], { 'two.json': two })
    expect(status).toBe(0)
    expect(JSON.parse(out).face).toBe('pan')
  })
  test.each<[string, string[], string]>([
    [
      'none named of two with a cover',
      ['two.json'],
      'Which face? "lid" and "pan" have a cover: gripbook tighten FILE --face "lid"',
    ],
    ['a name that slipped', ['two.json', '--face', 'pam'], 'There is no face "pam" in this unit. Did you mean "pan"?'],
    ['one without a cover', ['two.json', '--face', 'rear'], '"cover" is missing.'],
    ['none with a cover', ['bare.json'], 'No face of this unit has a cover. Add "cover" (outline and thickness)'],
  ])('%s ends with 2', async (_what, args, said) => {
    const bare = changed((face) => {
      delete (face as Face).cover
    })
    const { status, out, err } = await run(args, { 'two.json': two, 'bare.json': bare })
    expect({ status, out }).toEqual({ status: 2, out: '' })
    expect(err).toContain(said)
  })
})

describe('wrong input ends with 2, with the place of the fault on standard error and nothing on standard output', () => {
  test.each<[string, Parameters<typeof changed>[0], string]>([
    [
      'an outline that crosses itself',
      ({ cover }) => ([cover.outline[1], cover.outline[2]] = [cover.outline[2]!, cover.outline[1]!]),
      'faces[0].cover.outline[',
    ],
    [
      'an outline that runs back over itself',
      ({ cover }) =>
        (cover.outline = [
          [0, 0],
          [50, 0],
          [100, 0],
        ]),
      'faces[0].cover.outline[0]: the edge from this corner to the next meets',
    ],
    [
      'a bolt outside the cover',
      ({ holes }) => (holes[2]!.at = [190, 50]),
      'faces[0].holes[2].at: the hole at x 190, y 50 mm lies outside',
    ],
    [
      'a bolt in an opening',
      ({ cover }) =>
        (cover.openings = [
          [
            [5, 5],
            [15, 5],
            [15, 15],
            [5, 15],
          ],
        ]),
      'faces[0].holes[0].at: the hole at x 10, y 10 mm lies in openings[0]',
    ],
    [
      'an opening that leaves the cover',
      ({ cover }) =>
        (cover.openings = [
          [
            [40, 40],
            [60, 40],
            [50, 80],
          ],
        ]),
      'faces[0].cover.openings[0]',
    ],
    [
      'two bolts at one place',
      ({ holes }) => (holes[3]!.at = [10, 10]),
      'faces[0].holes[3].at: the hole lies 0 mm from hole "1"',
    ],
    ['a bolt without a place', ({ holes }) => delete holes[1]!.at, 'faces[0].holes[1]: "at" is missing'],
    ['no bed', (face) => delete face.bed, 'faces[0]: "bed" is missing'],
    [
      'a bed of nothing',
      (face) => (face.bed = { stiffness: { atLeast: 0, atMost: 0 } }),
      'faces[0].bed.stiffness: the stiffness is not above 0',
    ],
    [
      'a hollow under all of the cover',
      ({ bed }) =>
        (bed!.hollows = [
          [
            [-1, -1],
            [101, -1],
            [101, 61],
            [-1, 61],
          ],
        ]),
      'faces[0].bed.hollows: the hollows leave the cover nothing to lie on.',
    ],
    ['a cover without thickness', ({ cover }) => (cover.thickness = 0), 'faces[0].cover.thickness: 0 is not above 0.'],
    [
      'a region without thickness',
      ({ cover }) => (cover.regions = [{ outline: cover.outline, thickness: 0 }]),
      'faces[0].cover.regions[0].thickness: 0 is not above 0.',
    ],
    [
      'a line off the cover',
      ({ cover }) => (cover.lines = [{ name: 'valve', from: [10, 30], to: [130, 30] }]),
      'faces[0].cover.lines[0]',
    ],
    ['one bolt', (face) => (face.holes = face.holes.slice(0, 1)), 'faces[0].holes: fewer than two bolts'],
    [
      'an order through a hole that is not there',
      (face) => (face.order = [{ share: 1, sequence: ['1', '9'] }]),
      'faces[0].order[0].sequence[1]: there is no hole "9" here.',
    ],
    [
      'a share above the whole',
      (face) => (face.order = [{ share: 1.1, sequence: ['1'] }]),
      'faces[0].order[0].share: 1.1 is more than 1',
    ],
    [
      'a ratio of Poisson that just is none any more',
      ({ cover }) => (cover.poisson = 0.5),
      'faces[0].cover.poisson: 0.5 is just too much: the figure must lie below 0.5.',
    ],
  ])('%s', async (_what, change, said) => {
    const { status, out, err } = await run(['bad.json'], { 'bad.json': changed(change) })
    expect({ status, out }).toEqual({ status: 2, out: '' })
    expect(err).toMatch(/^bad\.json: (one fault|\d+ faults)\n/)
    expect(err).toContain(said)
  })

  test.each<[string, string[], string]>([
    ['no file named', [], 'Which file? gripbook tighten FILE'],
    ['two files', ['plain.json', 'demo.json'], 'One file at a time: "demo.json" is one too many.'],
    ['a file that is not there', ['no.json'], 'no.json: there is no such file.'],
    ['an option that slipped', ['plain.json', '--pases', '100'], 'Did you mean --passes? See: gripbook tighten --help'],
    ['passes that fall', ['plain.json', '--passes', '60,30,100'], 'a pass is not above the one before it.'],
    ['a spread that is no figure', ['plain.json', '--spread', 'even'], '--spread "even" is no figure'],
  ])('%s', async (_what, args, said) => {
    const { status, out, err } = await run(args)
    expect({ status, out }).toEqual({ status: 2, out: '' })
    expect(err).toContain(said)
  })

  test('every fault is told at once', async () => {
    const bad = changed((face) => {
      face.holes[2]!.at = [190, 50]
      delete face.holes[3]!.at
      delete face.bed
    })
    const { err } = await run(['bad.json'], { 'bad.json': bad })
    expect(err).toContain('bad.json: 3 faults')
  })
})

test('--help tells all options, with 0', async () => {
  const { status, out } = await run(['--help'])
  expect(status).toBe(0)
  for (const option of ['--face', '--passes', '--spread', '--no-search', '--json']) expect(out).toContain(option)
  for (const line of out.split('\n')) expect(line.length).toBeLessThanOrEqual(80)
})
