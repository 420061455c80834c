import { spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, expect, test } from 'vitest'

const ROOT = fileURLToPath(new URL('../../..', import.meta.url))
const COMMAND = join(ROOT, 'packages/cli/bin/gripbook.js')
const DEMO = join(ROOT, 'demo/yard-loader.json')
const COVER = join(ROOT, 'demo/rear-cover.json')

let directory = ''

beforeAll(() => {
  directory = mkdtempSync(join(tmpdir(), 'gripbook-'))
  // what is run here is what is built, so that the published entry is tested too
  const built = spawnSync(process.execPath, [join(ROOT, 'node_modules/typescript/bin/tsc'), '-b', 'packages/cli'], {
    cwd: ROOT,
  })
  expect(String(built.stdout)).toBe('')
})
afterAll(() => rmSync(directory, { recursive: true, force: true }))

function gripbook(args: string[], options: { input?: string } = {}) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [COMMAND, ...args], {
    cwd: directory,
    ...options,
    maxBuffer: 1e8,
    // What never ends is ended, and then has no status.
    timeout: 300_000,
  })
  return { status, out: String(stdout), err: String(stderr) }
}

function file(name: string, text: string): string {
  writeFileSync(join(directory, name), text)
  return name
}

test('the demo is answered, with 1, and the whole answer comes through a pipe', () => {
  const { status, out, err } = gripbook(['place', DEMO, '--json'])
  expect({ status, err }).toEqual({ status: 1, err: '' })
  expect(JSON.parse(out).faces).toHaveLength(3)
  expect(gripbook(['place', DEMO]).out).not.toContain('\u001b')
})

test.each<[string, () => string[], string]>([
  [
    'an unknown field',
    () => ['place', file('field.json', '{"gripbook":"unit/1","nme":"x","faces":[]}')],
    'nme: no field of this name is known here. Did you mean "name"?',
  ],
  ['ten megabytes of nonsense', () => ['place', file('nonsense.json', 'x'.repeat(10_000_000))], 'larger than 8 MB'],
  [
    'brackets a hundred thousand deep',
    () => ['place', file('deep.json', '['.repeat(100_000))],
    'brackets stand more than',
  ],
  ['a file that is not there', () => ['place', 'missing.json'], 'missing.json: there is no such file.'],
  ['a directory', () => ['place', '.'], '.: this is a directory.'],
  ['a file without end', () => ['place', '/dev/zero'], 'larger than 8 MB'],
  ['a command that is none', () => ['plaec'], 'Did you mean "place"?'],
  ['a unit without a cover', () => ['tighten', DEMO], 'No face of this unit has a cover.'],
  [
    'an outline that crosses itself',
    () => [
      'tighten',
      file('crossed.json', readFileSync(COVER, 'utf8').replace('[10, 0], [190, 0]', '[190, 0], [10, 0]')),
    ],
    'faces[0].cover.outline[',
  ],
])('%s ends with 2 and words', (_what, args, said) => {
  const { status, out, err } = gripbook(args())
  expect({ status, out }).toEqual({ status: 2, out: '' })
  expect(err).toContain(said)
})

test('the order of a cover is planned, with 0, and nothing but the answer is printed', () => {
  const { status, out, err } = gripbook(['tighten', COVER, '--json'])
  expect({ status, err }).toEqual({ status: 0, err: '' })
  expect(JSON.parse(out)).toMatchObject({ gripbook: 'tightening/1', face: 'rear-cover', advice: { why: 'stated' } })
  const strict = gripbook(['tighten', COVER, '--no-search', '--spread', '0.01'])
  expect({ status: strict.status, err: strict.err }).toEqual({ status: 1, err: '' })
})

test('a fault in the file leaves no drawing behind', () => {
  const drawings = join(directory, 'drawings')
  expect(gripbook(['place', file('bad.json', '{}'), '--svg', drawings]).status).toBe(2)
  expect(existsSync(drawings)).toBe(false)
  expect(gripbook(['place', DEMO, '--face', 'pump-cover', '--svg', drawings]).status).toBe(1)
  expect(readdirSync(drawings)).toHaveLength(8)
})

test('drawings that cannot be written are told, with 2', () => {
  const { status, err } = gripbook(['place', DEMO, '--svg', join(file('taken', ''), 'x')])
  expect(status).toBe(2)
  expect(err).toContain('the drawings cannot be written there')
})

test('a reader that closes the pipe early breaks nothing', () => {
  const line = `"${process.execPath}" "${COMMAND}" place "${DEMO}" --json 2>err.txt | head -c 1; wc -c < err.txt`
  const { stdout } = spawnSync('sh', ['-c', line], { cwd: directory })
  expect(String(stdout).replace(/\s/g, '')).toBe('{0')
})
