/**
 * Prints every published figure beside what Gripbook makes of it: what, source, published, ours, deviation. Ends with 1 when one is out of its
 * tolerance. The list is the one that the tests use. `--out` prints only what is out of its tolerance.
 */
import { bySource, type Check, deviationOf, holds } from '../packages/engine/src/joints/testing/check.ts'
import { jointChecks } from '../packages/engine/src/joints/testing/jointChecks.ts'
import { threadChecks } from '../packages/engine/src/threads/testing/threadChecks.ts'

const checks = [...threadChecks(), ...jointChecks()]
const out = checks.filter((check) => !holds(check))
const shown = process.argv.includes('--out') ? out : checks

for (const [source, group] of bySource(shown)) process.stdout.write(`\n${source}\n${group.map(line).join('\n')}\n`)
process.stdout.write(`\n${summary()}\n`)
process.exitCode = out.length === 0 ? 0 : 1

function line(check: Check): string {
  const { what, published, ours, unit, range } = check
  const decimals = Math.min(8, (/\.(\d+)/.exec(published)?.[1]?.length ?? 0) + 1)
  const own = range ? `${range.lo.toFixed(1)} to ${range.hi.toFixed(1)}` : ours.toFixed(decimals)
  const mark = holds(check) ? '' : '  OUT OF TOLERANCE'
  return `  ${what.padEnd(58)} ${published.padStart(12)} ${own.padStart(18)} ${unit.padEnd(8)} ${off(check, decimals)}${mark}`
}

function off(check: Check, decimals: number): string {
  if (check.range) return holds(check) ? 'inside' : 'outside'
  const deviation = deviationOf(check)
  const share = ((100 * deviation) / Number(check.published)).toFixed(2)
  return `${deviation < 0 ? '' : '+'}${deviation.toFixed(decimals)} (${share} %)`
}

function summary(): string {
  const seen = checks.filter(({ basis }) => basis === 'seen').length
  const sources = new Set(checks.map((check) => check.source)).size
  return `${checks.length} published figures from ${sources} tables, ${seen} seen and ${checks.length - seen} from memory: ${checks.length - out.length} within tolerance, ${out.length} out of it.`
}
