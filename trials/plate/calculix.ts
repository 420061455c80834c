/** CalculiX, a general-purpose finite-element program that knows nothing of covers: found, installed where that can be done, and run in a folder of its own. */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const PACKAGE = 'calculix-ccx'
const PROGRAM = 'ccx'

/** Null when the program can be run, else words that say what to install. Installs it as root on Debian. */
export function whyNoCalculix(): string | null {
  if (isThere()) return null
  if (process.getuid?.() === 0 && spawnSync('apt-get', ['--version']).status === 0) {
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
    spawnSync('apt-get', ['update'], { env })
    spawnSync('apt-get', ['install', '-y', '--no-install-recommends', PACKAGE], { env })
  }
  return isThere() ? null : `no CalculiX to compare with: apt-get install --no-install-recommends ${PACKAGE}`
}

function isThere(): boolean {
  return spawnSync(PROGRAM, ['-v']).error === undefined
}

/** Deflection in mm at every bolt (columns) for each step of a deck (rows), in the deck's order of nodes. */
export function runCalculix(deck: string, bolts: readonly number[]): number[][] {
  const folder = mkdtempSync(join(tmpdir(), 'plate-'))
  try {
    writeFileSync(join(folder, 'cover.inp'), deck)
    const env = { ...process.env, OMP_NUM_THREADS: '1' }
    const { stdout, status, error } = spawnSync(PROGRAM, ['cover'], {
      cwd: folder,
      encoding: 'utf8',
      env,
      maxBuffer: 2 ** 28,
    })
    if (error !== undefined || status !== 0 || stdout.includes('*ERROR'))
      throw new Error(`CalculiX failed: ${error?.message ?? stdout.slice(-2_000)}`)
    return stepsIn(readFileSync(join(folder, 'cover.dat'), 'utf8'), bolts)
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}

function stepsIn(printed: string, bolts: readonly number[]): number[][] {
  const steps = printed.split('displacements (vx,vy,vz)').slice(1)
  return steps.map((step) => {
    const sinks = new Map<number, number>()
    for (const line of step.split('\n').slice(1)) {
      const [node, , , vz] = line.trim().split(/\s+/).map(Number)
      if (vz !== undefined) sinks.set(node!, vz)
    }
    return bolts.map((node) => {
      const sink = sinks.get(node + 1)
      if (sink === undefined) throw new Error(`CalculiX printed nothing for node ${node + 1}`)
      return sink
    })
  })
}
