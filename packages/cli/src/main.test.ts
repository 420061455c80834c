import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { main } from './main.ts'
import { testWorld } from './testing/testWorld.ts'
import { VERSION } from './version.ts'

const DEMO = readFileSync(new URL('../../../demo/yard-loader.json', import.meta.url), 'utf8')

const RIGHT = JSON.stringify({
  gripbook: 'unit/1',
  faces: [
    {
      id: 'pan',
      minimumEngagement: 7,
      holes: [{ id: '1', thread: 'M6', grip: 20, threadDepth: 14, bottomDepth: 18, asFound: 'b1' }],
      kinds: [{ id: 'b1', thread: 'M6', length: 32, count: 1 }],
    },
  ],
})

async function run(
  args: string[],
  files: Record<string, string | Uint8Array> = { 'unit.json': RIGHT, 'demo.json': DEMO },
) {
  const world = testWorld(files)
  const status = await main(args, world)
  return { status, ...world.said, written: world.written, directories: world.directories }
}

test('a unit with nothing wrong ends with 0', async () => {
  const { status, out, err } = await run(['place', 'unit.json'])
  expect({ status, err }).toEqual({ status: 0, err: '' })
  expect(out).toContain('Nothing to change: every bolt sat where it belongs.')
})

test('the demo ends with 1 and says what to do first', async () => {
  const { status, out } = await run(['place', 'demo.json'])
  expect(status).toBe(1)
  expect(out).toContain('Swap 4 and 9.')
  expect(out).toContain('Put p35 (M8×35) in 6.')
  expect(out).toContain('Nothing in the tray fits hole 8.')
})

test('--json prints the whole answer and nothing else', async () => {
  const { status, out } = await run(['place', '--json', 'demo.json'])
  expect(status).toBe(1)
  const answer = JSON.parse(out)
  expect(answer.gripbook).toBe('placement/1')
  expect(answer.faces.map((face: { face: string; feasible: boolean }) => [face.face, face.feasible])).toEqual([
    ['control-block', true],
    ['pump-cover', true],
    ['bell-housing', false],
  ])
})

test('every command takes --json, and its help says so', async () => {
  const words = (await run(['help'])).out.match(/^ {2}gripbook (\w+) .*--json.*$/gm)!.map((line) => line.split(' ')[3])
  expect(words).toEqual([
    'place',
    'joint',
    'tighten',
    'steps',
    'board',
    'record',
    'serve',
    'backup',
    'restore',
    'check',
  ])
  for (const word of words) expect((await run(['help', word!])).out, word).toMatch(/^ {2}--json {3}/m)
})

test('--face prints one face, and only that face decides the status', async () => {
  const { out, status } = await run(['place', 'demo.json', '--face=pump-cover', '--json'])
  expect(JSON.parse(out).faces.map((face: { face: string }) => face.face)).toEqual(['pump-cover'])
  expect(status).toBe(1)
})

test('--svg writes one drawing for each hole, with names that stay in the directory', async () => {
  const away = RIGHT.replace('"pan"', '"../../pan"')
  const { written, directories, status } = await run(['place', 'away.json', '--svg', 'drawings/'], {
    'away.json': away,
  })
  expect(status).toBe(0)
  expect(directories).toEqual(['drawings/'])
  expect([...written.keys()]).toEqual(['drawings/__.._pan-1.svg'])
  expect([...written.values()][0]).toMatch(/^<svg[\s\S]*M6×32/)
})

describe('wrong input ends with 2, with words on standard error and nothing on standard output', () => {
  const bad = RIGHT.replace('"grip":20', '"gripp":20,"mouth":-1')
  test.each<[string, string[], string]>([
    ['no file named', ['place'], 'Which file?'],
    ['a file that is not there', ['place', 'no.json'], 'no.json: there is no such file.'],
    ['two files', ['place', 'unit.json', 'demo.json'], 'One file at a time'],
    ['an option slipped', ['place', 'unit.json', '--jsno'], '"--jsno" is not an option here. Did you mean --json?'],
    ['an option without its value', ['place', 'unit.json', '--face'], '--face needs a value.'],
    ['an option given twice', ['place', 'unit.json', '--face', 'pan', '--face', 'pan'], '--face is given twice.'],
    ['a value where none belongs', ['place', 'unit.json', '--json=yes'], '--json takes no value.'],
    [
      'a face that is not there',
      ['place', 'unit.json', '--face', 'pam'],
      'There is no face "pam" in this unit. Did you mean "pan"?',
    ],
    ['a command slipped', ['plaec', 'unit.json'], '"plaec" is not a command of Gripbook. Did you mean "place"?'],
    ['a command named after something built in', ['constructor'], '"constructor" is not a command of Gripbook.'],
    ['help for what is no command', ['help', 'plaec'], 'Did you mean "place"?'],
    ['faults in the file', ['place', 'bad.json'], 'bad.json: 2 faults'],
    [
      'an unknown field',
      ['place', 'bad.json'],
      'faces[0].holes[0].gripp: no field of this name is known here. Did you mean "grip"?',
    ],
    ['a negative length', ['place', 'bad.json'], 'faces[0].holes[0].mouth: -1 is negative.'],
    ['bytes that are no text', ['place', 'bytes.json'], 'the file is not text in UTF-8'],
    ['a file too large', ['place', 'large.json'], 'the file is larger than 8 MB'],
  ])('%s', async (_what, args, said) => {
    const { status, out, err, written } = await run(
      args[0] === 'place' ? ['place', '--svg', 'x', ...args.slice(1)] : args,
      {
        'unit.json': RIGHT,
        'demo.json': DEMO,
        'bad.json': bad,
        'bytes.json': new Uint8Array([0x7b, 0xff, 0xfe]),
        'large.json': new Uint8Array(10_000_000),
      },
    )
    expect({ status, out, files: written.size }).toEqual({ status: 2, out: '', files: 0 })
    expect(err).toContain(said)
  })
})

test('what goes wrong inside ends with 3 and one line', async () => {
  const world = testWorld({ 'unit.json': RIGHT })
  world.out = () => {
    throw new Error('broken\npipe')
  }
  expect(await main(['place', 'unit.json'], world)).toBe(3)
  expect(world.said.err).toBe('This is a fault in Gripbook, not in your file: broken pipe\n')
})

test('every command word is answered, and told in the help', async () => {
  const usual = await run(['joint', '--thread', 'M6', '--class', '8.8', '--torque', '10 N·m'])
  expect({ status: usual.status, err: usual.err }).toEqual({ status: 0, err: '' })
  const { out } = await run(['help'])
  for (const word of ['place', 'joint', 'tighten']) {
    expect(out).toContain(`gripbook ${word} `)
    expect((await run(['help', word])).out).toContain(`gripbook ${word} `)
  }
})

test('help and version are told, with 0', async () => {
  expect(await run([])).toMatchObject({ status: 0, err: '' })
  expect((await run(['help', 'place'])).out).toContain('--svg DIR')
  expect((await run(['place', '--help'])).out).toContain('--svg DIR')
  expect((await run(['--version'])).out).toBe(`gripbook ${VERSION}\n`)
  expect(JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8')).version).toBe(VERSION)
})

test('after -- a file may have a name that looks like an option', async () => {
  expect((await run(['place', '--', '--json'], { '--json': RIGHT })).status).toBe(0)
})

test.each([
  ['--class', 'constructor'],
  ['--friction', 'constructor'],
  ['--material', 'toString'],
  ['--head', 'valueOf'],
  ['--torque', '9 constructor'],
])('a joint option named after something built in is refused with words: %s %s', async (option, text) => {
  const torque = option === '--torque' ? [] : ['--torque', '9 N·m']
  const { status, err } = await run(['joint', '--thread', 'M6', ...torque, option, text])
  expect(status).toBe(2)
  expect(err).toContain(option)
  expect(err).not.toContain('native code')
})

test('names of holes, kinds and materials may be names of something built in', async () => {
  const unit = JSON.parse(RIGHT)
  const [face] = unit.faces
  face.material = 'constructor'
  face.holes[0] = { ...face.holes[0], id: 'toString', asFound: 'constructor', unitsBefore: { constructor: 3 } }
  face.kinds[0].id = 'constructor'
  const { status, out } = await run(['place', 'unit.json', '--json'], { 'unit.json': JSON.stringify(unit) })
  expect(status).toBe(0)
  expect(JSON.parse(out).faces[0].holes.toString).toMatchObject({ verdict: 'settled', may: ['constructor'] })
})
