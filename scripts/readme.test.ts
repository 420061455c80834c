import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'

const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8')
/** Every command of the README that is followed by a block with its output. */
const examples = [...readme.matchAll(/^ {4}npx gripbook (.+)\n\n```\n([\s\S]*?)```$/gm)]

test('the README shows three worked examples', () => {
  expect(examples.length).toBe(3)
})

test.each(examples.map(([, command, output]) => [command!, output!]))(
  'the README prints what the command prints: %s',
  (command, output) => {
    const args = [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, plain]) => quoted ?? plain!)
    expect(run(args)).toBe(output)
  },
)

/** Standard output of the built command, whatever its exit status. */
function run(args: string[]): string {
  const options = {
    cwd: new URL('..', import.meta.url),
    encoding: 'utf8',
    env: { ...process.env, NO_COLOR: '1' },
  } as const
  try {
    return execFileSync(process.execPath, ['packages/cli/bin/gripbook.js', ...args], options)
  } catch (error) {
    return (error as { stdout: string }).stdout
  }
}
