/**
 * `npm start`: builds what is not built, then answers for the demo unit in the terminal, through the same command that a user types.
 * The demo unit is wrong on purpose, so the command's status 1 ("answered, something is wrong") is a success here.
 */
import { mustBeInstalled, run, TOOLS } from './tools.mjs'

const DEMO = 'demo/yard-loader.json'

mustBeInstalled()
const built = run([TOOLS.tsc, '-b', 'packages/cli'], 'pipe')
if (built.status !== 0) {
  process.stderr.write(`The build failed, so there is no answer:\n${built.output}`)
  process.exit(3)
}
const { status } = run(['packages/cli/bin/gripbook.js', 'place', DEMO], 'inherit')
if (status > 1) process.exit(status)
process.stdout.write(
  `\nThat was ${DEMO}. For a unit of your own: npx gripbook place my-unit.json   (add --json for the whole answer)\n`,
)
