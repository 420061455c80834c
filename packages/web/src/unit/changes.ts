/** What a form changed: only that is written, so that what was not touched keeps the entry that said it. */

/**
 * The fields to write and those that are unknown again. A field is told from its text: as it was shown, it is left alone; another one is written
 * with its value; an empty one becomes unknown. `values` holds what each text was read as.
 */
export function changesOf<T extends Record<string, unknown>>(
  shown: Readonly<Record<keyof T & string, string>>,
  typed: Readonly<Record<keyof T & string, string>>,
  values: T,
): { fields: Partial<T>; unknown: (keyof T & string)[] } {
  const fields: Partial<T> = {}
  const unknown: (keyof T & string)[] = []
  for (const name of Object.keys(values) as (keyof T & string)[]) {
    if (typed[name].trim() === shown[name].trim()) continue
    if (values[name] === undefined) unknown.push(name)
    else fields[name] = values[name]
  }
  return { fields, unknown }
}
