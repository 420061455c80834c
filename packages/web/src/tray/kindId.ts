/** The next id of a kind, "b1", "b2" …: one above the highest ever used in the unit, so that an id which was struck out never means another bolt. */
export function nextKindId(entries: readonly { body: unknown }[]): string {
  let highest = 0
  for (const { body } of entries) {
    const kind = (body as { kind?: unknown } | null)?.kind
    const number = typeof kind === 'string' ? /^b(\d{1,6})$/.exec(kind)?.[1] : undefined
    if (number !== undefined) highest = Math.max(highest, Number(number))
  }
  return `b${highest + 1}`
}
