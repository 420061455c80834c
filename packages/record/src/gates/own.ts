/** What a record holds under a name that a person gave: `constructor` is a name like any other. */
export function own<T>(record: Readonly<Record<string, T>>, name: string): T | undefined {
  return Object.hasOwn(record, name) ? record[name] : undefined
}
