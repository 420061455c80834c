/**
 * `npm test`: what the machine lacks, types, style, dead code, house rules, then every test. All stages run even when one fails, so that one run tells everything.
 * The last line is always "N passed, N failed": tests, plus one failed for each stage before them that failed.
 */
import { mkdirSync, readFileSync, rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { prepareMachine } from './machine.mjs'
import { mustBeInstalled, ROOT, run, TOOLS } from './tools.mjs'

const STAGES = [
  { name: 'types', args: [TOOLS.tsc, '-b'] },
  { name: 'style', args: [TOOLS.biome, 'check', '--error-on-warnings', '.'] },
  { name: 'dead code', args: [TOOLS.knip] },
  { name: 'house rules', args: ['--conditions=development', '--import', 'tsx', 'scripts/tidy.ts'] },
]
const REPORT = join(ROOT, 'node_modules/.cache/vitest.json')

mustBeInstalled()
const preparing = performance.now()
say(line('machine', prepareMachine(), preparing))
const failedStages = STAGES.filter((stage) => !stageHolds(stage)).map((stage) => stage.name)
const tests = runTests()
const failed = failedStages.length + tests.failed
if (failedStages.length > 0) say(`failed before the tests: ${failedStages.join(', ')}`)
say(`${tests.passed} passed, ${failed} failed`)
process.exit(failed === 0 ? 0 : 1)

function stageHolds({ name, args }) {
  const started = performance.now()
  const { status, output } = run(args, 'pipe')
  say(line(name, status === 0 ? 'ok' : 'FAILED', started))
  if (status !== 0) say(output.trimEnd())
  return status === 0
}

/** A test file that does not load has no tests of its own: it counts as one failed, and so does a run that ends without a report. */
function runTests() {
  mkdirSync(dirname(REPORT), { recursive: true })
  rmSync(REPORT, { force: true })
  const started = performance.now()
  const args = [TOOLS.vitest, 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${REPORT}`]
  const { status } = run(args, 'inherit')
  const report = readReport()
  const unloaded = report.testResults.filter((file) => file.status === 'failed' && !hasFailedTest(file)).length
  const counted = report.numFailedTests + unloaded
  const failed = status !== 0 && counted === 0 ? 1 : counted
  const skipped = report.numPendingTests + report.numTodoTests
  const files = `${report.testResults.length} files${skipped > 0 ? `, ${skipped} skipped` : ''}`
  say(line('tests', failed === 0 ? `ok, ${files}` : `FAILED, ${files}`, started))
  return { passed: report.numPassedTests, failed }
}

function readReport() {
  try {
    return JSON.parse(readFileSync(REPORT, 'utf8'))
  } catch {
    return { numPassedTests: 0, numFailedTests: 0, numPendingTests: 0, numTodoTests: 0, testResults: [] }
  }
}

function hasFailedTest(file) {
  return file.assertionResults.some((test) => test.status === 'failed')
}

function line(name, verdict, started) {
  return `${name.padEnd(12)} ${verdict} (${((performance.now() - started) / 1000).toFixed(1)} s)`
}

function say(text) {
  process.stdout.write(`${text}\n`)
}
