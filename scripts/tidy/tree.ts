import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'

/** One text file of the tree. `path` is from the root, with forward slashes. */
export type TreeFile = { path: string; text: string }

/** A house rule that does not hold, where it does not, and what to do. Lines count from 1. */
export type HouseFault = { path: string; line: number; why: string }

const NOT_OURS = new Set(['node_modules', 'dist', 'coverage', 'reports', '.git', '.stryker-tmp'])

/** Every text file under the root that is ours: nothing installed, nothing built. A file with a zero byte is no text. */
export function readTree(root: string, under = ''): TreeFile[] {
  return readdirSync(join(root, under), { withFileTypes: true })
    .filter((entry) => !NOT_OURS.has(entry.name) && !entry.name.endsWith('.tsbuildinfo'))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const path = under === '' ? entry.name : `${under}/${entry.name}`
      if (entry.isDirectory()) return readTree(root, path)
      const text = entry.isFile() ? readFileSync(join(root, path), 'utf8') : ''
      return text === '' || text.includes('\0') ? [] : [{ path, text }]
    })
}

export function isCode(path: string): boolean {
  return /\.(ts|tsx|js|mjs|cjs)$/.test(path)
}

/** Tests, and what only tests use. */
export function isTest(path: string): boolean {
  return /\.test\.tsx?$/.test(path) || path.includes('/testing/')
}

export function lineAt(text: string, index: number): number {
  return text.slice(0, index).split('\n').length
}

/** A fault at every place where the pattern (global) stands in the text. */
export function everywhere(path: string, text: string, pattern: RegExp, why: (found: string) => string): HouseFault[] {
  return [...text.matchAll(pattern)].map((match) => ({
    path,
    line: lineAt(text, match.index),
    why: why(match[0].trim()),
  }))
}
