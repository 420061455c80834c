/** Prints what is untidy in this tree, one line each, and ends with 1 when there is anything. */
import { fileURLToPath } from 'node:url'
import { tidy } from './tidy/tidy.ts'

const faults = tidy(fileURLToPath(new URL('..', import.meta.url)))
for (const { path, line, why } of faults) process.stdout.write(`${path}:${line}  ${why}\n`)
process.stdout.write(faults.length === 0 ? 'tidy\n' : `${faults.length} untidy\n`)
process.exitCode = faults.length === 0 ? 0 : 1
