import type { FoldedUnit } from '@gripbook/record'
import { words } from '../words/index.ts'

/** How a part is called: by its own name, else by what it is, else by its id. */
export function partName({ part, what, name }: { part: string; what: unknown; name: unknown }): string {
  if (typeof name === 'string') return name
  return (words.parts.whats as Record<string, string>)[String(what)] ?? part
}

export function partNameIn({ things }: Pick<FoldedUnit, 'things'>, part: string): string {
  const { what, name } = things.part[part] ?? {}
  return partName({ part, what: what?.value, name: name?.value })
}
