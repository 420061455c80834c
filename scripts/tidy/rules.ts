/** docs/rules.md lists what must hold, each line with an id; a test that holds a line names its id in its title: "[PL1] …". */
import { blank } from './blank.ts'
import { type HouseFault, isTest, lineAt, type TreeFile } from './tree.ts'

const RULES = 'docs/rules.md'
const RULE_LINE = /^- \*\*([A-Z]{2}\d+)\*\*/gm
const NAMED = /\[([A-Z]{2}\d+)\]/g

export function ruleFaults(files: TreeFile[]): HouseFault[] {
  const page = files.find(({ path }) => path === RULES)
  if (page === undefined) return [{ path: RULES, line: 1, why: 'missing: no rule could be held against a test' }]
  const rules = [...page.text.matchAll(RULE_LINE)].map((match) => ({
    id: match[1],
    line: lineAt(page.text, match.index),
  }))
  const ids = new Set(rules.map(({ id }) => id))
  const named = files.filter(({ path }) => isTest(path)).flatMap(idsNamedIn)
  const covered = new Set(named.map(({ id }) => id))
  return [
    ...rules
      .filter(({ id }, i) => rules.findIndex((rule) => rule.id === id) < i)
      .map(({ id, line }) => ({ path: RULES, line, why: `${id} stands here a second time` })),
    ...rules
      .filter(({ id }) => !covered.has(id))
      .map(({ id, line }) => ({ path: RULES, line, why: `no test names [${id}] in its title` })),
    ...named
      .filter(({ id }) => !ids.has(id))
      .map(({ path, line, id }) => ({ path, line, why: `[${id}] is no rule of ${RULES}` })),
  ]
}

/** Ids inside strings only: what stands in a comment holds nothing, and an index in brackets is no id. */
function idsNamedIn({ path, text }: TreeFile) {
  const { code, bare } = blank(text)
  return [...code.matchAll(NAMED)]
    .filter((match) => bare[match.index] === ' ')
    .map((match) => ({ path, line: lineAt(text, match.index), id: match[1] }))
}
