/**
 * `npm start`: builds what is not built, then serves the shop with its page by the same command that a user types. What follows `npm start --` goes on to that
 * command. Ctrl-C ends it in good order.
 */
import { existsSync, readdirSync, statSync } from 'node:fs'
import { createServer } from 'node:net'
import { join } from 'node:path'
import { mustBeInstalled, ROOT, run, TOOLS } from './tools.mjs'

const USUAL_PORT = 7480
const PORTS_TRIED = 50
const PAGE = 'packages/web/dist/index.html'
/** What the page is built from. */
const SOURCES = [
  'packages/web/src',
  'packages/web/public',
  'packages/web/index.html',
  'packages/web/vite.config.ts',
  'packages/web/package.json',
  'packages/engine/src',
  'packages/record/src',
  'packages/print/src',
  'packages/paper/src',
  'packages/device/src',
]

mustBeInstalled()
build('the command', [TOOLS.tsc, '-b', 'packages/cli'])
if (!pageIsNew()) {
  say('Building the page.')
  build('the page', [TOOLS.vite, 'build', 'packages/web', '--logLevel', 'error'])
}
const { main, processWorld } = await import('../packages/cli/dist/index.js')
const world = processWorld(process)
process.exitCode = await main(await argumentsOf(process.argv.slice(2)), {
  ...world,
  stopAsked() {
    say('The practice unit is there to open on the page. Ctrl-C stops the server.')
    return world.stopAsked()
  },
})

function build(what, args) {
  const { status, output } = run(args, 'pipe')
  if (status === 0) return
  process.stderr.write(`${what} could not be built, so nothing is served:\n${output}`)
  process.exit(3)
}

function pageIsNew() {
  const page = join(ROOT, PAGE)
  return existsSync(page) && newest(SOURCES.map((source) => join(ROOT, source))) <= statSync(page).mtimeMs
}

/** When the newest of these files, or of the files in these folders, was written: ms since 1970; 0 where there is none. */
function newest(paths) {
  return Math.max(
    0,
    ...paths
      .filter((path) => existsSync(path))
      .map((path) => {
        const found = statSync(path)
        return found.isDirectory() ? newest(readdirSync(path).map((name) => join(path, name))) : found.mtimeMs
      }),
  )
}

async function argumentsOf(given) {
  const isGiven = (name) => given.some((each) => each === name || each.startsWith(`${name}=`))
  const port =
    isGiven('--port') || isGiven('--help') ? [] : ['--port', String(await freePort(given.includes('--shop')))]
  return ['serve', ...(isGiven('--log') ? [] : ['--log', 'warn']), ...port, ...given]
}

/** The usual port, or the next that is free; for the shop's network the one after it is needed too, for the page that hands out the certificate. */
async function freePort(shop) {
  for (let port = USUAL_PORT; port < USUAL_PORT + PORTS_TRIED; port++) {
    if (!(await isFree(port, shop)) || (shop && !(await isFree(port + 1, shop)))) continue
    if (port !== USUAL_PORT) say(`Port ${USUAL_PORT} is taken, so it serves on ${port}.`)
    return port
  }
  return USUAL_PORT
}

function isFree(port, shop) {
  return new Promise((done) => {
    const server = createServer()
    server.once('error', () => done(false))
    server.listen({ port, ...(shop ? {} : { host: '127.0.0.1' }) }, () => server.close(() => done(true)))
  })
}

function say(text) {
  process.stdout.write(`${text}\n`)
}
