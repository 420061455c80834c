import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { main } from '../main.ts'
import { testWorld } from '../testing/testWorld.ts'

const SIDE = readFileSync(new URL('../../../../demo/side-cover.json', import.meta.url), 'utf8')
const LOADER = readFileSync(new URL('../../../../demo/yard-loader.json', import.meta.url), 'utf8')
const LARGE = JSON.stringify({
  gripbook: 'unit/1',
  faces: [
    {
      id: 'lid',
      holes: [
        { id: '1', thread: 'M6', at: [0, 0] },
        { id: '2', thread: 'M6', at: [9000, 4000] },
      ],
    },
  ],
})

async function run(args: string[]) {
  const world = testWorld({
    'side.json': SIDE,
    'loader.json': LOADER,
    'large.json': LARGE,
    'no.ttf': 'this is no font',
  })
  const status = await main(['board', ...args], world)
  return { status, ...world }
}

const start = (bytes: Uint8Array | undefined) => Buffer.from(bytes?.subarray(0, 5) ?? []).toString()

test.each([
  ['a board', ['side.json', '-o', 'b.pdf']],
  ['a board of one face on Letter', ['loader.json', '-o', 'b.pdf', '--face', 'pump-cover', '--paper', 'letter']],
  ['a board as found', ['side.json', '-o', 'b.pdf', '--as-found']],
  ['a sheet for a learner', ['loader.json', '-o=b.pdf', '--learner', '--face=pump-cover']],
])('%s is written, with how to print it', async (_, args) => {
  const { status, said, writtenBytes } = await run(args)
  expect(said).toEqual({
    out: args.includes('--learner')
      ? 'b.pdf: the learner sheet on A4. The questions come first, the answers on the pages after.\n'
      : `b.pdf: the bolt board on ${args.includes('letter') ? 'Letter' : 'A4'}. Print it at actual size: the bar on every sheet must then measure 100 mm.\n`,
    err: '',
  })
  expect(status).toBe(0)
  expect(start(writtenBytes.get('b.pdf'))).toBe('%PDF-')
})

test('what was written is told as JSON too', async () => {
  const { status, said } = await run(['loader.json', '-o', 'b.pdf', '--face', 'pump-cover', '--json'])
  expect([status, JSON.parse(said.out)]).toEqual([
    0,
    { gripbook: 'board/1', file: 'b.pdf', what: 'bolt board', paper: 'A4', faces: ['pump-cover'] },
  ])
})

test('[PR1] the same file on the same day gives the same bytes', async () => {
  const [first, second] = [await run(['side.json', '-o', 'b.pdf']), await run(['side.json', '-o', 'b.pdf'])]
  expect(Buffer.compare(first.writtenBytes.get('b.pdf')!, second.writtenBytes.get('b.pdf')!)).toBe(0)
})

describe('what is wrong is told, and nothing is written', () => {
  test.each([
    ['no file', [], 'Which file?'],
    ['two files', ['a', 'b', '-o', 'c'], 'One file at a time'],
    ['nowhere to write', ['side.json'], 'Where does the board go?'],
    ['a paper that is none', ['side.json', '-o', 'b.pdf', '--paper', 'A5'], '--paper "A5": it is A4 or Letter.'],
    ['a face that is not there', ['loader.json', '-o', 'b.pdf', '--face', 'pump-cove'], 'Did you mean "pump-cover"?'],
    ['a learner with several faces', ['loader.json', '-o', 'b.pdf', '--learner'], 'of one face. Which?'],
    ['a font that is none', ['side.json', '-o', 'b.pdf', '--font', 'no.ttf'], 'no.ttf: this is no font file'],
    ['a font that is not there', ['side.json', '-o', 'b.pdf', '--font', 'x.ttf'], 'x.ttf: there is no such file.'],
    ['a face of nine metres', ['large.json', '-o', 'b.pdf'], 'Are the places ("at") in mm?'],
    ['an option that is none', ['side.json', '-o', 'b.pdf', '--learners'], 'Did you mean --learner?'],
  ])('%s', async (_, args, words) => {
    const { status, said, writtenBytes } = await run(args)
    expect(said.err).toContain(words)
    expect(status).toBe(2)
    expect(writtenBytes.size).toBe(0)
  })
})

test('the help says what the bar must measure', async () => {
  const { status, said } = await run(['--help'])
  expect(status).toBe(0)
  expect(said.out).toContain('100 mm')
})
