/** What is typed into a form and not yet kept, as the browser holds it meanwhile: by the name of its place, one entry each. */

type Fields = Readonly<Record<string, string>>

/** Where it lies in the browser's storage. */
export function typedPlace(place: string): string {
  return `gripbook typed ${place}`
}

/** What was held, in the fields of `start`; `start` where nothing was, or what it is not. */
export function readTyped<T extends Fields>(held: string | null, start: T): T {
  if (held === null) return start
  try {
    const read: unknown = JSON.parse(held)
    if (typeof read !== 'object' || read === null) return start
    const known = Object.entries(read).filter(([field, text]) => field in start && typeof text === 'string')
    return { ...start, ...Object.fromEntries(known) }
  } catch {
    return start
  }
}

/** What is to be held; null: nothing, it is as it began. */
export function writeTyped<T extends Fields>(typed: T, start: T): string | null {
  const changed = Object.entries(typed).filter(([field, text]) => text !== start[field])
  return changed.length === 0 ? null : JSON.stringify(Object.fromEntries(changed))
}
