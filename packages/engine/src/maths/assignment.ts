/**
 * Cheapest assignment of items to bins with capacities, by successive shortest augmenting paths on the graph of bins (a transportation
 * problem with unit supplies; R. K. Ahuja, T. L. Magnanti, J. B. Orlin, "Network Flows", 1993, section 9.7).
 */

/** cost[item * bins + bin]; Infinity forbids. capacity[bin]; Infinity is unlimited. */
export type AssignmentTask = { items: number; bins: number; cost: Float64Array; capacity: ArrayLike<number> }
export type Assignment = { bin: Int32Array; cost: number }

/** The cheapest complete assignment, or null when not every item can have a bin. */
export function cheapestAssignment(task: AssignmentTask): Assignment | null {
  const { items, bins, cost, capacity } = task
  const bin = new Int32Array(items).fill(-1)
  const used = new Int32Array(bins)
  const step = new Float64Array(bins * bins)
  const via = new Int32Array(bins * bins)
  let stale = true
  for (let item = 0; item < items; item++) {
    // The cheapest bin of all with room needs no path: a cheaper detour would have improved the assignment before.
    let direct = -1
    for (let b = 0; b < bins; b++)
      if (cost[item * bins + b]! < (direct < 0 ? Number.POSITIVE_INFINITY : cost[item * bins + direct]!)) direct = b
    if (direct < 0) return null
    if (used[direct]! < capacity[direct]!) {
      bin[item] = direct
      used[direct]!++
      stale = true
      continue
    }
    if (stale) shortestSteps(task, bin, step, via)
    const end = shortestPath(task, item, used, step)
    if (end === null) return null
    let at = end.bin
    while (end.from[at]! >= 0) {
      const before = end.from[at]!
      bin[via[before * bins + at]!] = at
      at = before
    }
    bin[item] = at
    used[end.bin]!++
    stale = true
  }
  let total = 0
  for (let item = 0; item < items; item++) total += cost[item * bins + bin[item]!]!
  return { bin, cost: total }
}

/** step[a * bins + b]: least cost of moving one item from bin a to bin b; via: which item. */
function shortestSteps({ items, bins, cost }: AssignmentTask, bin: Int32Array, step: Float64Array, via: Int32Array) {
  step.fill(Number.POSITIVE_INFINITY)
  for (let item = 0; item < items; item++) {
    const a = bin[item]!
    if (a < 0) continue
    const here = cost[item * bins + a]!
    for (let b = 0; b < bins; b++) {
      const more = cost[item * bins + b]! - here
      if (more < step[a * bins + b]!) {
        step[a * bins + b] = more
        via[a * bins + b] = item
      }
    }
  }
}

function shortestPath({ bins, cost, capacity }: AssignmentTask, item: number, used: Int32Array, step: Float64Array) {
  const far = new Float64Array(bins)
  const from = new Int32Array(bins).fill(-1)
  for (let b = 0; b < bins; b++) far[b] = cost[item * bins + b]!
  for (let round = 0, moved = true; moved && round < bins; round++) {
    moved = false
    for (let a = 0; a < bins; a++) {
      if (far[a] === Number.POSITIVE_INFINITY) continue
      for (let b = 0; b < bins; b++) {
        const through = far[a]! + step[a * bins + b]!
        if (a !== b && through < far[b]! - 1e-12) {
          far[b] = through
          from[b] = a
          moved = true
        }
      }
    }
  }
  let best = -1
  for (let b = 0; b < bins; b++)
    if (used[b]! < capacity[b]! && far[b]! < Number.POSITIVE_INFINITY && (best < 0 || far[b]! < far[best]!)) best = b
  return best < 0 ? null : { bin: best, from }
}

/**
 * Which item-bin pairs stand in at least one complete assignment, given one: an item may move to a bin from which a chain of moves leads
 * back to its own bin or to a bin with room. This is the filtering of J.-C. Régin, "Generalized arc consistency for global cardinality
 * constraint", AAAI 1996, on the graph of bins.
 */
export function assignablePairs(task: AssignmentTask, bin: Int32Array): Uint8Array {
  const { items, bins, cost, capacity } = task
  const used = new Int32Array(bins)
  for (const b of bin) used[b]!++
  const reaches = new Uint8Array(bins * bins)
  for (let b = 0; b < bins; b++) reaches[b * bins + b] = 1
  for (let item = 0; item < items; item++)
    for (let b = 0; b < bins; b++)
      if (cost[item * bins + b]! < Number.POSITIVE_INFINITY) reaches[bin[item]! * bins + b] = 1
  for (let m = 0; m < bins; m++)
    for (let a = 0; a < bins; a++)
      if (reaches[a * bins + m]) for (let b = 0; b < bins; b++) if (reaches[m * bins + b]) reaches[a * bins + b] = 1
  const reachesRoom = new Uint8Array(bins)
  for (let a = 0; a < bins; a++)
    for (let b = 0; b < bins; b++) if (reaches[a * bins + b] && used[b]! < capacity[b]!) reachesRoom[a] = 1
  const pairs = new Uint8Array(items * bins)
  for (let item = 0; item < items; item++)
    for (let b = 0; b < bins; b++)
      if (cost[item * bins + b]! < Number.POSITIVE_INFINITY && (reachesRoom[b] || reaches[b * bins + bin[item]!]))
        pairs[item * bins + b] = 1
  return pairs
}

/**
 * Moves one item to another bin and mends the rest by a shortest chain of moves, in place. False, with nothing moved, when no chain does.
 * `fixed`: items before this number stay where they are.
 */
export function moveItem(
  { items, bins, cost, capacity }: AssignmentTask,
  bin: Int32Array,
  item: number,
  to: number,
  fixed: number,
): boolean {
  const home = bin[item]!
  if (home === to) return true
  const used = new Int32Array(bins)
  for (const b of bin) used[b]!++
  const via = new Int32Array(bins).fill(-1)
  const from = new Int32Array(bins).fill(-1)
  const queue = [to]
  for (const at of queue) {
    if (at === home || used[at]! < capacity[at]!) {
      let end = at
      while (end !== to) {
        bin[via[end]!] = end
        end = from[end]!
      }
      bin[item] = to
      return true
    }
    for (let other = fixed; other < items; other++) {
      if (bin[other] !== at || other === item) continue
      for (let b = 0; b < bins; b++)
        if (b !== to && via[b]! < 0 && cost[other * bins + b]! < Number.POSITIVE_INFINITY) {
          via[b] = other
          from[b] = at
          queue.push(b)
        }
    }
  }
  return false
}
