/** The manual's order as it is typed or tapped. */

export type PassDraft = { share: string; sequence: string }

export type SequenceFault = { unknown: string } | { twice: string }

/**
 * The holes that a text names, in its order: parted by commas, blanks, semicolons or arrows; a hole that has such a sign in its name is found first.
 * The first thing wrong with it, if any; a text that names nothing is an empty list.
 */
export function readSequence(text: string, holes: readonly string[]): { holes: string[]; fault: SequenceFault | null } {
  const known = [...holes].sort((a, b) => b.length - a.length)
  const found: string[] = []
  let rest = trimmed(text)
  while (rest !== '') {
    const here = known.find((hole) => rest.startsWith(hole) && /^($|[\s,;→>-])/.test(rest.slice(hole.length)))
    if (here === undefined) return { holes: found, fault: { unknown: rest.split(/[\s,;→>-]/)[0] || rest } }
    if (found.includes(here)) return { holes: found, fault: { twice: here } }
    found.push(here)
    rest = trimmed(rest.slice(here.length))
  }
  return { holes: found, fault: null }
}

export function writeSequence(holes: readonly string[]): string {
  return holes.join(', ')
}

/** A tap on a hole: it comes next, or, as the last one, is taken back. Another one that is in already stays where it is. */
export function tapped(sequence: string, hole: string, holes: readonly string[]): string {
  const { holes: now, fault } = readSequence(sequence, holes)
  if (fault !== null) return sequence
  if (now.at(-1) === hole) return writeSequence(now.slice(0, -1))
  return now.includes(hole) ? sequence : writeSequence([...now, hole])
}

const trimmed = (text: string) => text.replace(/^[\s,;→>-]+/, '').replace(/[\s,;→>-]+$/, '')
