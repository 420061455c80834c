/** Small changes of an order. Each writes the changed order into `into` and leaves `from` as it is. */

export function swap(from: Int32Array, into: Int32Array, i: number, j: number): void {
  into.set(from)
  into[i] = from[j]!
  into[j] = from[i]!
}

/** What stands at i goes to j, the others close up. */
export function moveTo(from: Int32Array, into: Int32Array, i: number, j: number): void {
  into.set(from)
  if (i < j) into.copyWithin(i, i + 1, j + 1)
  else into.copyWithin(j + 1, j, i)
  into[j] = from[i]!
}

/** What stands from i to j goes backwards. */
export function reverse(from: Int32Array, into: Int32Array, i: number, j: number): void {
  into.set(from)
  into.subarray(i, j + 1).reverse()
}

/** One change drawn by chance. Takes two bolts at least. */
export function drawnChange(from: Int32Array, into: Int32Array, random: () => number): void {
  const i = Math.floor(random() * from.length)
  const j = (i + 1 + Math.floor(random() * (from.length - 1))) % from.length
  const kind = random()
  if (kind < 0.4) swap(from, into, i, j)
  else if (kind < 0.8) moveTo(from, into, i, j)
  else reverse(from, into, Math.min(i, j), Math.max(i, j))
}

/**
 * Goes from an order to a better neighbour, and on from there, until none of all swaps, moves and reversals is better. `isBetter` judges each; the
 * walk ends early when it is `spent`. Returns the last order that was better, the first one if none was.
 */
export function walk(from: Int32Array, isBetter: (trial: Int32Array) => boolean, spent: () => boolean): Int32Array {
  const count = from.length
  let at = from.slice()
  let trial = from.slice()
  const pairs = count * count
  /** How many neighbourhoods were looked at since the last better one. */
  let idle = 0
  for (let pair = 0; idle < pairs; pair = (pair + 1) % pairs, idle++) {
    const [i, j] = [Math.floor(pair / count), pair % count]
    if (i === j) continue
    for (const change of i < j ? [swap, moveTo, reverse] : [moveTo]) {
      if (spent()) return at
      change(at, trial, i, j)
      if (!isBetter(trial)) continue
      ;[at, trial] = [trial, at]
      idle = 0
    }
  }
  return at
}
