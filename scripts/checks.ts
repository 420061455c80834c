/**
 * Prints every published figure beside what Gripbook makes of it: what, source, published, ours, deviation. Ends with 1 when one is out of its
 * tolerance. The list is the one that the tests use. `--out` prints only what is out of its tolerance.
 */
import { bySource, type Check, deviationOf, holds } from '../packages/engine/src/joints/testing/check.ts'
import { jointChecks } from '../packages/engine/src/joints/testing/jointChecks.ts'
import { stiffnessChecks } from '../packages/engine/src/joints/testing/stiffnessChecks.ts'
import { threadChecks } from '../packages/engine/src/threads/testing/threadChecks.ts'
import { clampChecks } from '../packages/engine/src/tightening/clamp/testing/clampChecks.ts'
import { plateChecks } from '../packages/engine/src/tightening/plate/testing/plateChecks.ts'

const checks = [...threadChecks(), ...jointChecks(), ...stiffnessChecks(), ...plateChecks(), ...clampChecks()]
const out = checks.filter((check) => !holds(check))
const shown = process.argv.includes('--out') ? out : checks

for (const [source, group] of bySource(shown)) process.stdout.write(`\n${source}\n${group.map(line).join('\n')}\n`)
process.stdout.write(`\n${summary()}\n`)
process.exitCode = out.length === 0 ? 0 : 1

function line(check: Check): string {
  const { what, published, ours, unit, range } = check
  const decimals = Math.min(8, (/\.(\d+)/.exec(published)?.[1]?.length ?? 0) + 1)
  const plain = published.includes('e')
    ? ours.toExponential(published.replace(/e.*|\D/g, '').length)
    : ours.toFixed(decimals)
  const own = range ? `${range.lo.toFixed(1)} to ${range.hi.toFixed(1)}` : plain
  const mark = holds(check) ? '' : '  OUT OF TOLERANCE'
  return `  ${what.padEnd(58)} ${published.padStart(12)} ${own.padStart(18)} ${unit.padEnd(8)} ${off(check, decimals)}${mark}`
}

function off(check: Check, decimals: number): string {
  if (check.range) return holds(check) ? 'inside' : 'outside'
  const deviation = deviationOf(check)
  const written = check.published.includes('e') ? deviation.toPrecision(2) : deviation.toFixed(decimals)
  const share = ((100 * deviation) / Number(check.published)).toFixed(2)
  return `${deviation < 0 ? '' : '+'}${written} (${share} %)`
}

function summary(): string {
  const count = (basis: Check['basis']) => checks.filter((check) => check.basis === basis).length
  const sources = new Set(checks.map((check) => check.source)).size
  return `${checks.length} published figures from ${sources} tables, ${count('seen')} seen, ${count('from memory')} from memory and ${count('calculated')} calculated: ${checks.length - out.length} within tolerance, ${out.length} out of it.`
}
