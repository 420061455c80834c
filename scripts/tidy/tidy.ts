import { clockFaults, lengthFaults, lockFaults, switchedOffFaults, textFaults } from './habits.ts'
import { importFaults } from './imports.ts'
import { ruleFaults } from './rules.ts'
import { type HouseFault, readTree } from './tree.ts'

/** All house rules that a formatter cannot know, over the tree under the root. */
export function tidy(root: string): HouseFault[] {
  const files = readTree(root)
  return [importFaults, clockFaults, switchedOffFaults, lengthFaults, textFaults, lockFaults, ruleFaults]
    .flatMap((rule) => rule(files))
    .sort((a, b) => (a.path === b.path ? a.line - b.line : a.path < b.path ? -1 : 1))
}
