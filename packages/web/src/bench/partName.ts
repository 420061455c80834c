import { words } from '../words/index.ts'

/** How a part is called: by its own name, else by what it is. */
export function partName({ what, name }: { part: string; what: string; name: string | null }): string {
  if (name !== null) return name
  return (words.parts.whats as Record<string, string>)[what] ?? what
}
