/** "9, 10" and not "10, 9": numbers in names count as numbers. */
const inOrder = new Intl.Collator('en', { numeric: true })

/** From and to; the same where it is one name. */
export type Run = { from: string; to: string }

/** Names of holes for reading at a glance: sorted, each once, and three or more that count on drawn together as first and last. */
export function runsOf(names: readonly string[]): Run[] {
  const runs: string[][] = []
  for (const name of [...new Set(names)].sort(inOrder.compare)) {
    const last = runs.at(-1)
    if (last !== undefined && countsOn(last.at(-1)!, name)) last.push(name)
    else runs.push([name])
  }
  return runs.flatMap((run) =>
    run.length > 2 ? [{ from: run[0]!, to: run.at(-1)! }] : run.map((name) => ({ from: name, to: name })),
  )
}

function countsOn(before: string, name: string): boolean {
  return /^(0|[1-9]\d*)$/.test(before) && name === String(Number(before) + 1)
}
