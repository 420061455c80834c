/** Ids of faces and parts: readable, and never one that was used before in the unit, also by something that was struck out. */

type Entries = readonly { body: unknown }[]

/** Every id that any entry has ever used in this field of its body, or of what its body is about. */
export function idsUsed(entries: Entries, field: 'face' | 'part'): Set<string> {
  const used = new Set<string>()
  for (const { body } of entries) {
    const { [field]: own, of } = (body ?? {}) as Record<string, unknown>
    const about = typeof of === 'object' && of !== null ? (of as Record<string, unknown>)[field] : undefined
    for (const id of [own, about]) if (typeof id === 'string') used.add(id)
  }
  return used
}

/** "Pump cover" becomes `pump-cover`, a second one `pump-cover-2`. Letters of every script stay; a name without any letter becomes `instead`. */
export function idFromName(name: string, used: ReadonlySet<string>, instead: string): string {
  const plain = name
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
  const id = [...plain].slice(0, 60).join('') || instead
  if (!used.has(id)) return id
  for (let number = 2; ; number++) if (!used.has(`${id}-${number}`)) return `${id}-${number}`
}

/** "check ball" becomes `check-ball-1`, the next one `check-ball-2`. */
export function nextPartId(what: string, used: ReadonlySet<string>): string {
  const word = what.replaceAll(' ', '-')
  for (let number = 1; ; number++) if (!used.has(`${word}-${number}`)) return `${word}-${number}`
}
