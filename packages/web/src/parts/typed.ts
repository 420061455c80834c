/** What is typed into a form and not yet kept, as the browser holds it meanwhile: by the name of its place, one entry each. */

/** What a field holds; null: a choice that is not made. */
type Held = string | boolean | null | readonly string[]
export type Fields = { readonly [field: string]: Held }

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
    const known = Object.entries(read).filter(([field, value]) => field in start && isAs(value, start[field]!))
    return { ...start, ...Object.fromEntries(known) }
  } catch {
    return start
  }
}

/** What is to be held; null: nothing, it is as it began. */
export function writeTyped<T extends Fields>(typed: T, start: T): string | null {
  const changed = Object.entries(typed).filter(
    ([field, value]) => JSON.stringify(value) !== JSON.stringify(start[field]),
  )
  return changed.length === 0 ? null : JSON.stringify(Object.fromEntries(changed))
}

/** Whether it may stand in a field that began so: a choice is a text once it is made. */
function isAs(value: unknown, began: Held): boolean {
  if (Array.isArray(began)) return Array.isArray(value) && value.every((one) => typeof one === 'string')
  const isText = (one: unknown) => one === null || typeof one === 'string'
  return typeof began === 'boolean' ? typeof value === 'boolean' : isText(value) && (value !== null || began === null)
}
