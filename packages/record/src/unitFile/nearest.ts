/** Edits (one letter added, left out, changed, or two neighbours swapped) that turn a into b. */
function edits(a: string, b: string): number {
  let before: number[] = []
  let row = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const next = [i]
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1]
      let best = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + (same ? 0 : 1))
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) best = Math.min(best, before[j - 2]! + 1)
      next.push(best)
    }
    before = row
    row = next
  }
  return row[b.length]!
}

/**
 * The known name that a slip of the typing hand may have meant, or undefined when none is near: a third of the letters may be wrong, capitals
 * and joining marks do not count. Ties go to the name listed first.
 */
export function nearestName(found: string, known: Iterable<string>): string | undefined {
  if (found.length > 60) return undefined
  const plain = (name: string) => name.toLowerCase().replace(/[\s_-]/g, '')
  const wanted = plain(found)
  let nearest: string | undefined
  let least = Number.POSITIVE_INFINITY
  for (const name of known) {
    if (Math.abs(name.length - found.length) > 6) continue
    const off = edits(wanted, plain(name))
    if (off < least && off <= Math.max(1, Math.floor(wanted.length / 3)) && off < wanted.length) {
      least = off
      nearest = name
    }
  }
  return nearest
}
