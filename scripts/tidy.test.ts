import { spawnSync } from 'node:child_process'
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { blank } from './tidy/blank.ts'
import { tidy } from './tidy/tidy.ts'

const ROOT = fileURLToPath(new URL('..', import.meta.url))

let root = ''
beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'tidy-'))
  plant('docs/rules.md', '# What must hold\n- **ZZ1** Planted.\n')
  plant('packages/engine/src/held.test.ts', `test('${named('ZZ1')} holds', () => {})\n`)
})
afterEach(() => rmSync(root, { recursive: true }))

/** Written apart, so that this file does not carry what it plants. */
const later = ['TO', 'DO'].join('')
const named = (id: string) => `[${id}]`

describe('a planted fault is found, and only that', () => {
  const engine = 'packages/engine/src/planted.ts'
  const engineTest = 'packages/engine/src/planted.test.ts'
  test.each([
    ['the engine importing from outside', engine, "import { z } from 'zod'", 'engine may not import zod'],
    ['the engine importing from Node', engine, "import fs from 'node:fs'", 'engine may not import node:fs'],
    ['the engine importing upwards', engine, "export * from '@gripbook/record'", 'may not import @gripbook/record'],
    ['an import on several lines', engine, "import {\n  a,\n} from 'zod'", 'engine may not import zod'],
    ['an import for its effect', engine, "import 'zod'", 'engine may not import zod'],
    ['a late import', engine, "const a = await import('zod')", 'engine may not import zod'],
    ['a type import', engine, "import type { Z } from 'zod'", 'engine may not import zod'],
    [
      'the engine testing against what is above it',
      engineTest,
      "import '@gripbook/print'",
      'may not import @gripbook/print',
    ],
    [
      'the record importing upwards',
      'packages/record/src/a.ts',
      "import '@gripbook/cli'",
      'may not import @gripbook/cli',
    ],
    ['print doing input and output', 'packages/print/src/a.ts', "import 'node:fs'", 'print may not import node:fs'],
    ['the command importing what is not listed', 'packages/cli/src/a.ts', "import 'left'", 'cli may not import left'],
    ['the page importing Node', 'packages/web/src/a.ts', "import 'node:fs'", 'web may not import node:fs'],
    [
      'the server importing what is not listed',
      'packages/server/src/a.ts',
      "import '@fastify/left'",
      'server may not import',
    ],
    ['the device importing Node', 'packages/device/src/a.ts', "import 'node:fs'", 'device may not import node:fs'],
    [
      'the device importing the server',
      'packages/device/src/a.ts',
      "import '@gripbook/server'",
      'device may not import',
    ],
    ['a way out of the package', engine, "import '../../record/src/a.ts'", 'leaves the package engine'],
    ['a reach into a package', 'packages/cli/src/a.ts', "import '@gripbook/engine/src/a.ts'", 'reaches into a package'],
    ['a package without a line in the table', 'packages/spare/src/a.ts', "import 'zod'", 'stands in no import table'],
    ['chance in the sums', engine, 'const a = Math.random()', 'Math.random'],
    ['a clock in the sums', engine, 'const a = Date.now()', 'Date.now'],
    ['a date in the record', 'packages/record/src/a.ts', 'const a = new Date()', 'new Date'],
    ['a stopwatch in print', 'packages/print/src/a.ts', 'const a = performance.now()', 'performance.now'],
    ['a word to the terminal', engine, 'console.log(1)', 'console'],
    ['a clock inside a template', engine, 'const a = `at ${Date.now()}`', 'Date.now'],
    ['a test skipped', engineTest, "test.skip('a', () => {})", 'test.skip'],
    ['a test alone', engineTest, "describe.only('a', () => {})", 'describe.only'],
    [
      'a test that waits to be written',
      engineTest,
      `test.${later.toLowerCase()}('a')`,
      'a test runs, or it is not there',
    ],
    ['a table of tests skipped', engineTest, "it.concurrent.skip('a', () => {})", 'it.concurrent.skip'],
    ['a test that may fail', engineTest, "test.fails('a', () => {})", 'test.fails'],
    ['a file too long', engine, 'const a = 1\n'.repeat(451), '451 lines'],
    ['a thing put off', 'README.md', `${later}: say more`, later],
    ['a path of one machine', 'README.md', `It is in ${['', 'home', 'me', 'unit.json'].join('/')}.`, '/me'],
    ['an address in the lock file', 'package-lock.json', '"resolved": "https://example.org/a.tgz"', 'registry'],
    ['a registry in the settings', '.npmrc', 'registry=https://example.org', 'registry'],
    ['a rule without a test', 'docs/rules.md', '- **ZZ1** Planted.\n- **ZZ2** Planted.', 'no test names'],
    ['a rule only a comment names', 'docs/rules.md', '- **ZZ1** Planted.\n- **ZZ3** Planted.', 'no test names'],
    ['a rule listed twice', 'docs/rules.md', '- **ZZ1** Planted.\n- **ZZ1** Planted.', 'a second time'],
    ['a test with an unknown rule', engineTest, `test('${named('ZZ9')} a', () => {})`, 'is no rule'],
  ])('%s', (_what, path, text, why) => {
    plant('packages/engine/src/comment.test.ts', `// ${named('ZZ3')} is named by nobody else\n`)
    plant(path, `${text}\n`)
    const faults = tidy(root)
    expect(faults).toHaveLength(1)
    expect(faults[0]).toMatchObject({ path, why: expect.stringContaining(why) })
  })

  test('a missing page of rules', () => {
    rmSync(join(root, 'docs/rules.md'))
    expect(tidy(root).map(({ path }) => path)).toEqual(['docs/rules.md'])
  })
})

describe('what is allowed is left alone', () => {
  test.each([
    ['speaking of chance in a comment', 'packages/engine/src/a.ts', '// instead of Math.random()\n/* import "zod" */'],
    ['speaking of a clock in a string', 'packages/engine/src/a.ts', "const a = 'Date.now and new Date'"],
    ['a quote inside a pattern', 'packages/engine/src/a.ts', "const a = /['\"]/.test(b)\n// console.log('it')"],
    ['a test that skips by itself with words', 'packages/engine/src/a.test.ts', "context.skip('no such tool')"],
    ['a test importing a tool', 'packages/engine/src/a.test.ts', "import { test } from 'vitest'\nimport 'node:fs'"],
    [
      'a long file that says why',
      'packages/engine/src/a.ts',
      `// Long because it is one table.\n${'a()\n'.repeat(500)}`,
    ],
    ['a path within the tree', 'README.md', 'See ./work/ and packages/tmp/a and a/home/b.'],
    ['packages linked in the lock file', 'package-lock.json', '"resolved": "packages/engine"'],
    ['what is installed or built', 'packages/engine/dist/a.js', 'console.log(Math.random())'],
  ])('%s', (_what, path, text) => {
    plant(path, `${text}\n`)
    expect(tidy(root)).toEqual([])
  })
})

test('blanking keeps every character in its place', () => {
  const text = "const a = 'b' // c\nconst d = `e ${f /* g */} h` + i / j / k"
  const { code, bare } = blank(text)
  expect(code).toBe("const a = 'b'     \nconst d = `e ${f        } h` + i / j / k")
  expect(bare).toBe("const a = ' '     \nconst d = `  ${f        }  ` + i / j / k")
})

describe('the linter, with the settings of this tree, finds what it is trusted to find', () => {
  beforeEach(() => copyFileSync(join(ROOT, 'biome.json'), join(root, 'biome.json')))

  test.each([
    ['engine', 'node:fs'],
    ['engine', '@gripbook/record'],
    ['record', 'node:fs'],
    ['print', 'node:fs'],
  ])('%s importing %s', (own, wanted) => {
    plant(`packages/${own}/src/planted.ts`, `import { a } from '${wanted}'\n\nexport const b = a\n`)
    const { status, said } = lint()
    expect(said).toContain('noRestrictedImports')
    expect(status).toBe(1)
  })

  test('two files that import each other', () => {
    plant('packages/engine/src/a.ts', "import { b } from './b.ts'\n\nexport const a = () => b\n")
    plant('packages/engine/src/b.ts', "import { a } from './a.ts'\n\nexport const b = () => a\n")
    const { status, said } = lint()
    expect(said).toContain('noImportCycles')
    expect(status).toBe(1)
  })

  test('nothing, where nothing is planted', () => {
    plant('packages/engine/src/a.ts', 'export const a = 1\n')
    expect(lint().status).toBe(0)
  })
})

function plant(path: string, text: string): void {
  mkdirSync(dirname(join(root, path)), { recursive: true })
  writeFileSync(join(root, path), text)
}

function lint(): { status: number | null; said: string } {
  rmSync(join(root, 'packages/engine/src/held.test.ts'))
  const linter = join(ROOT, 'node_modules/@biomejs/biome/bin/biome')
  const { status, stdout, stderr } = spawnSync(process.execPath, [linter, 'lint', '.'], { cwd: root, encoding: 'utf8' })
  return { status, said: stdout + stderr }
}
