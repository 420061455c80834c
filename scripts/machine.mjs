/**
 * What the tests want of the machine beyond Node and npm: a PostgreSQL as a shop would have it, a browser, a finite-element program to
 * compare with, and two readers of PDF that know nothing of each other. Installed where that can be done (Debian, as
 * root); where not, what to install is said, and the tests that want it skip with words.
 */
import { spawnSync } from 'node:child_process'
import { existsSync, readdirSync } from 'node:fs'

const WANTED = [
  { name: 'postgresql', isThere: hasPostgresql },
  { name: 'chromium', isThere: hasChromium },
  { name: 'calculix-ccx', isThere: () => existsSync('/usr/bin/ccx') },
  { name: 'poppler-utils', isThere: () => existsSync('/usr/bin/pdftoppm') },
  { name: 'mupdf-tools', isThere: () => existsSync('/usr/bin/mutool') },
]

/** Says in one line what is there, was installed or is missing. @returns {string} */
export function prepareMachine() {
  const missing = missingPackages()
  if (missing.length === 0) return 'ok'
  const mayInstall = process.getuid?.() === 0 && spawnSync('apt-get', ['--version']).status === 0
  if (mayInstall) {
    const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' }
    spawnSync('apt-get', ['update'], { env })
    spawnSync('apt-get', ['install', '-y', '--no-install-recommends', ...missing], { env })
  }
  const left = missingPackages()
  const installed = missing.filter((name) => !left.includes(name))
  const said = installed.length > 0 ? [`installed ${installed.join(', ')}`] : []
  if (left.length > 0)
    said.push(`the tests that want them skip; to run them: apt-get install --no-install-recommends ${left.join(' ')}`)
  return said.join('; ')
}

function missingPackages() {
  return WANTED.filter(({ isThere }) => !isThere()).map(({ name }) => name)
}

function hasPostgresql() {
  const folder = '/usr/lib/postgresql'
  return existsSync(folder) && readdirSync(folder).some((version) => Number(version) >= 15)
}

function hasChromium() {
  return [process.env.CHROMIUM_PATH, '/usr/bin/chromium', '/usr/bin/google-chrome'].some(
    (path) => path && existsSync(path),
  )
}
