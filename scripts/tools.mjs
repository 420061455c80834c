/** How the scripts run the tools of this tree: with this same Node, from node_modules, so that no shell and no global install matters. */
import { spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)))

export const TOOLS = {
  tsc: 'node_modules/typescript/bin/tsc',
  biome: 'node_modules/@biomejs/biome/bin/biome',
  knip: 'node_modules/knip/bin/knip.js',
  vite: 'node_modules/vite/bin/vite.js',
  vitest: 'node_modules/vitest/vitest.mjs',
}

/**
 * Runs a script under Node in the root of the tree.
 * @param {string[]} args the script and its arguments
 * @param {'inherit' | 'pipe'} output where its output goes: to the terminal, or into the answer
 * @returns {{ status: number, output: string }} its exit status (3 when it could not be run) and, when piped, what it said
 */
export function run(args, output) {
  const child = spawnSync(process.execPath, args, {
    cwd: ROOT,
    encoding: 'utf8',
    stdio: ['ignore', output, output],
    maxBuffer: 2 ** 28,
  })
  const said = `${child.stdout ?? ''}${child.stderr ?? ''}${child.error ? `${child.error.message}\n` : ''}`
  return { status: child.status ?? 3, output: said }
}

/** Ends with words when the tree has not been installed: everything else would fail with a riddle. */
export function mustBeInstalled() {
  if (existsSync(join(ROOT, TOOLS.tsc))) return
  process.stderr.write('The tools are not installed yet. Run "npm ci" in this folder first.\n')
  process.exit(3)
}
