import type { Face, Kind } from '../../unit.ts'
import { type ContractRows, contractRows } from './contractRows.ts'
import { canHold, greatest, type Row } from './exactLinear.ts'

/** Hole by hole the index of its kind, −1 where the hole stays empty. */
export type Placed = readonly number[]

export type BruteAnswer = {
  feasible: boolean
  /** All complete placements; without one, all partial placements that leave the fewest holes empty. */
  placements: Placed[]
  /** Fewest empty holes; null when the figures, rank lines and trials contradict each other with every hole empty. */
  missing: number | null
  may: Record<string, string[]>
  /** Whether some of `placements` leaves the hole empty. */
  canBeEmpty: Record<string, boolean>
  likely: Record<string, Record<string, number>>
  /** null when not feasible. */
  changes: number | null
  /** Whether these holes, and no others, can be filled at once. */
  canFill(holes: readonly string[]): boolean
}

/** Every placement of a small face, each decided by a linear program. Slow on purpose, and independent of the engine's ways. */
export function bruteForce(face: Face, tray: readonly Kind[] = face.kinds ?? []): BruteAnswer {
  const rows = contractRows(face, tray)
  const decide = decider(rows)
  const room = rows.kinds.map(({ count }) => count ?? Number.POSITIVE_INFINITY)
  const candidates = rows.holes.map((_, hole) =>
    rows.kinds.flatMap((_, kind) => {
      const alone = rows.holes.map((_, other) => (other === hole ? kind : -1))
      return rows.compatible(hole, kind) && decide(alone) ? [kind] : []
    }),
  )

  /** All placements that fill the wanted holes and leave just `empty` of the others open, in the order of the holes. */
  const search = (empty: number, wanted: readonly boolean[], enough: number): Placed[] => {
    const found: Placed[] = []
    const placed = rows.holes.map(() => -1)
    const used = rows.kinds.map(() => 0)
    const go = (hole: number, left: number) => {
      if (found.length >= enough) return
      if (hole === placed.length) {
        if (left === 0) found.push([...placed])
        return
      }
      for (const kind of candidates[hole]!) {
        if (!wanted[hole] || used[kind]! >= room[kind]!) continue
        placed[hole] = kind
        used[kind]! += 1
        if (decide(placed)) go(hole + 1, left)
        used[kind]! -= 1
        placed[hole] = -1
      }
      if (!wanted[hole]) go(hole + 1, left)
      else if (left > 0) go(hole + 1, left - 1)
    }
    if (decide(placed)) go(0, empty)
    return found
  }

  const all = rows.holes.map(() => true)
  let missing: number | null = 0
  let placements = search(0, all, Number.POSITIVE_INFINITY)
  const feasible = placements.length > 0
  while (placements.length === 0) {
    missing += 1
    if (missing > rows.holes.length) break
    placements = search(missing, all, Number.POSITIVE_INFINITY)
  }
  if (placements.length === 0) missing = null

  const may: BruteAnswer['may'] = {}
  const likely: BruteAnswer['likely'] = {}
  const canBeEmpty: BruteAnswer['canBeEmpty'] = {}
  for (const [hole, { id }] of rows.holes.entries()) {
    may[id] = []
    likely[id] = {}
    canBeEmpty[id] = placements.some((placed) => placed[hole] === -1)
    for (const [kind, { id: kindId }] of rows.kinds.entries()) {
      const times = placements.filter((placed) => placed[hole] === kind).length
      if (times === 0) continue
      may[id].push(kindId)
      likely[id][kindId] = times / placements.length
    }
  }

  const differs = (placed: Placed) =>
    rows.holes.filter(({ asFound }, hole) => asFound !== undefined && asFound !== rows.kinds[placed[hole]!]?.id).length

  return {
    feasible,
    placements,
    missing,
    may,
    likely,
    canBeEmpty,
    changes: feasible ? Math.min(...placements.map(differs)) : null,
    canFill: (holes) =>
      search(
        0,
        rows.holes.map(({ id }) => holes.includes(id)),
        1,
      ).length > 0,
  }
}

/**
 * Decides whether one value for every quantity bears a (partial) placement. Rows that share no open quantity are decided apart and
 * remembered, so that a placement costs little more than its newest bolt.
 */
function decider(rows: ContractRows): (placed: Placed) => boolean {
  const { variables } = rows
  if (rows.ring || variables.some(({ lo, hi }) => lo > hi)) return () => false
  const open = variables.map(({ lo, hi }) => lo < hi)
  const known = new Map<string, boolean>()
  const blocks: { rows: readonly Row[]; open: number[] }[] = []
  const block = (of: readonly Row[]) =>
    blocks.push({
      rows: of,
      open: [...new Set(of.flatMap(({ terms }) => terms.map(([at]) => at)))].filter((at) => open[at]),
    }) - 1

  const holeBlocks = rows.holeFacts.map(block)
  const kindBlocks = rows.kindFacts.map(block)
  const always = [...rows.rankFacts.map((row) => block([row])), ...rows.trialFacts.map(({ rows: of }) => block(of))]
  const fits = rows.holes.map((_, hole) => rows.kinds.map((_, kind) => block(rows.fitRows(hole, kind, 'lowest')!)))

  const together = (group: readonly number[]): boolean => {
    const key = group.join()
    const before = known.get(key)
    if (before !== undefined) return before
    const inside = [...new Set(group.flatMap((at) => blocks[at]!.open))]
    const index = new Map(inside.map((at, position) => [at, position]))
    const own = group.flatMap((at) =>
      blocks[at]!.rows.map(({ terms, atMost }) => {
        let left = atMost
        const kept: [number, number][] = []
        for (const [at2, coefficient] of terms) {
          const position = index.get(at2)
          if (position === undefined) left -= coefficient * variables[at2]!.lo
          else kept.push([position, coefficient])
        }
        return { terms: kept, atMost: left }
      }),
    )
    const holds = canHold(
      inside.map((at) => variables[at]!),
      own,
    )
    known.set(key, holds)
    return holds
  }

  // An empty hole or an unused kind whose own figures contradict each other stops nothing until it is used.
  const holeSound = holeBlocks.map((at) => together([at]))
  const kindSound = kindBlocks.map((at) => together([at]))

  const leader = new Int32Array(variables.length)
  return (placed) => {
    const active = [...always]
    const used = new Set<number>()
    for (const [hole, kind] of placed.entries()) {
      if (kind >= 0 || holeSound[hole]) active.push(holeBlocks[hole]!)
      if (kind < 0) continue
      used.add(kind)
      active.push(fits[hole]![kind]!)
    }
    for (const [kind, at] of kindBlocks.entries()) if (used.has(kind) || kindSound[kind]) active.push(at)

    for (let at = 0; at < leader.length; at += 1) leader[at] = at
    const find = (at: number): number => {
      let top = at
      while (leader[top] !== top) {
        leader[top] = leader[leader[top]!]!
        top = leader[top]!
      }
      return top
    }
    for (const at of active) {
      const [first, ...others] = blocks[at]!.open
      for (const other of others) leader[find(other)] = find(first!)
    }
    const groups = new Map<number, number[]>()
    for (const at of active) {
      const first = blocks[at]!.open[0]
      const name = first === undefined ? -1 - at : find(first)
      const group = groups.get(name)
      if (group) group.push(at)
      else groups.set(name, [at])
    }
    for (const group of groups.values()) if (!together(group.sort((a, b) => a - b))) return false
    return true
  }
}

export type LoneVerdict = 'fits' | 'may' | 'cannot'

/** One hole and one kind alone: their own readings, lines 1 to 5 and the trials of that very pair. */
export function pairAlone(rows: ContractRows, hole: number, kind: number): LoneVerdict {
  if (!rows.compatible(hole, kind)) return 'cannot'
  const trials = rows.trialFacts
    .filter((trial) => trial.hole === hole && trial.kind === kind)
    .flatMap((trial) => trial.rows)
  const facts = [...rows.holeFacts[hole]!, ...rows.kindFacts[kind]!, ...trials]
  const lowest = rows.fitRows(hole, kind, 'lowest')!
  const own = new Map<number, number>()
  for (const { terms } of [...facts, ...lowest]) for (const [at] of terms) if (!own.has(at)) own.set(at, own.size)
  const bounds = [...own.keys()].map((at) => rows.variables[at]!)
  const move = (terms: Row['terms'], turn = 1) =>
    terms.map(([at, coefficient]) => [own.get(at)!, turn * coefficient] as const)
  const moved = (list: readonly Row[]) => list.map(({ terms, atMost }) => ({ terms: move(terms), atMost }))
  if (!canHold(bounds, moved([...facts, ...lowest]))) return 'cannot'
  const highest = rows.fitRows(hole, kind, 'highest')
  if (highest === null) return 'may'
  const always = moved(facts)
  return highest.every(({ terms, atMost }) => greatest(bounds, always, move(terms))! <= atMost) ? 'fits' : 'may'
}
