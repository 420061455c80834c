/** The conflicts of a tray as the answer tells them: holes that cannot all be filled, and lines that cannot all be true. */
import type { Conflict } from './answer.ts'
import { irreducibleHoles } from './conflict.ts'
import type { StatedLine } from './contradiction.ts'
import { doubtsOf } from './doubt.ts'
import type { Problem } from './problem.ts'
import type { Placement } from './search.ts'
import type { Tools } from './solver.ts'
import { type Tray, taskOf } from './tray.ts'
import { list, statementWords } from './words.ts'

/** A conflict with the numbers of its holes and kinds beside their names. */
export type FoundConflict = { holes: number[]; kinds: number[]; conflict: Conflict }

/** So many conflicts are told; the holes of the rest show by themselves that they may stay empty. */
const MOST_TOLD = 8
/** Of so many conflicts it is worked out what to doubt: a face with more than these has to be read again from the start. */
const MOST_DOUBTED = 3

/** Sets of clashing holes, each found after one hole of those before is left empty. */
export async function conflictsOf(tray: Tray, empty: number, best: Placement, tools: Tools): Promise<FoundConflict[]> {
  const { problem, bins, search } = tray
  const conflicts: FoundConflict[] = []
  if (empty === 0) return conflicts
  let among = problem.holes.map((_, h) => h)
  while (conflicts.length < MOST_TOLD) {
    const holes = await irreducibleHoles(
      search,
      taskOf(tray, 0, () => 0),
      among,
    )
    if (!holes) break
    const kinds = problem.kinds.map((_, k) => k).filter((k) => holes.some((h) => tray.possible[h * bins + k]))
    conflicts.push({
      holes,
      kinds,
      conflict: {
        holes: holes.map((h) => problem.holes[h]!.source.id),
        kinds: kinds.map((k) => problem.kinds[k]!.source.id),
        short: 1,
        why: conflictWhy(tray, holes, kinds),
        doubt: conflicts.length < MOST_DOUBTED ? await doubtsOf(tray, holes, empty, tools) : [],
      },
    })
    const out = holes.find((h) => best.bin[h] === bins - 1) ?? holes[0]
    among = among.filter((h) => h !== out)
  }
  return conflicts
}

function conflictWhy({ problem }: Tray, holes: number[], kinds: number[]): string {
  const names = list(holes.map((h) => problem.holes[h]!.source.id))
  const ids = kinds.map((k) => problem.kinds[k]!.source.id)
  if (kinds.length === 0) return `nothing in the tray fits hole ${names}`
  const count = kinds.reduce((sum, k) => sum + problem.kinds[k]!.count, 0)
  if (count < holes.length)
    return `holes ${names} can take only ${list(ids, 'or')}, of which there ${count === 1 ? 'is' : 'are'} ${count}`
  return `holes ${names} cannot all have a bolt of ${list(ids, 'or')}: lengths, rank lines and counts leave no way`
}

/** The conflict of lines that cannot all be true, whatever bolt goes where. */
export function lineConflict(problem: Problem, lines: StatedLine[]): FoundConflict {
  const statements = lines.map((line) => {
    if ('trial' in line) {
      const { hole, kind } = line.trial
      return { what: 'trial' as const, hole: problem.holes[hole]!.source.id, kind: problem.kinds[kind]!.source.id }
    }
    const names = line.rank.quantity === 'length' ? problem.kinds : problem.holes
    const [less, more] = [names[line.rank.less]!.source.id, names[line.rank.more]!.source.id]
    return { what: 'rank' as const, quantity: line.rank.quantity, less, more }
  })
  const holes = new Set<number>()
  const kinds = new Set<number>()
  for (const line of lines) {
    if ('trial' in line) {
      holes.add(line.trial.hole)
      kinds.add(line.trial.kind)
    } else
      for (const number of [line.rank.less, line.rank.more])
        (line.rank.quantity === 'length' ? kinds : holes).add(number)
  }
  const named = list(statements.map(statementWords))
  const why = lines.length > 1 ? `${named} cannot all be true` : `${named} contradicts the readings`
  return {
    holes: [...holes],
    kinds: [...kinds],
    conflict: {
      holes: [...holes].map((h) => problem.holes[h]!.source.id),
      kinds: [...kinds].map((k) => problem.kinds[k]!.source.id),
      short: 0,
      why,
      doubt: statements.map((statement) => ({
        statements: [statement],
        why: `without ${statementWords(statement)} the rest can be true`,
        likely: 1 / statements.length,
      })),
    },
  }
}
