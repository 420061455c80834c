/** What is open before a release, as lines to read: grouped, the holes of a face in one line, each with the place where it is settled. */
import type { Open, OpenWhy } from '@gripbook/record'
import type { BookName, Route } from '../app/route.ts'

export const GROUPS = [
  'come back',
  'faces',
  'parts',
  'plugs',
  'readings',
  'jobs',
  'clocks',
  'clashes',
  'stops',
  'record',
  'signatures',
] as const
export type Group = (typeof GROUPS)[number]

const GROUP_OF: Readonly<Record<OpenWhy['code'], Group>> = {
  'come-back-not-answered': 'come back',
  'hole-not-placed': 'faces',
  'hole-not-final': 'faces',
  'resistance-stands': 'faces',
  'face-not-closed': 'faces',
  'part-out': 'parts',
  'plug-not-placed': 'plugs',
  'figure-not-taken': 'readings',
  'figure-before-opening': 'readings',
  'figure-outside': 'readings',
  'figure-in-other-unit': 'readings',
  'job-not-done': 'jobs',
  'job-before-opening': 'jobs',
  'clock-runs': 'clocks',
  clash: 'clashes',
  'stop-passed': 'stops',
  'entries-missing': 'record',
  'entry-not-understood': 'record',
  'not-signed': 'signatures',
  'not-checked': 'signatures',
  'signed-before': 'signatures',
}

/** `holes`: those of the face for which the same is open, in the order in which they came. */
export type Line = { why: OpenWhy; face: string | null; holes: string[] }

/** Groups that have something, in the order of the work; a line per face and reason. */
export function groupsOf(open: readonly Open[]): { group: Group; lines: Line[] }[] {
  const groups = new Map<Group, Map<string, Line>>()
  for (const { why, face, hole } of open) {
    const group = GROUP_OF[why.code]
    const lines = groups.get(group) ?? new Map<string, Line>()
    groups.set(group, lines)
    const alike = group === 'faces' && why.code !== 'resistance-stands'
    const key = alike ? `${why.code}\n${face}` : String(lines.size)
    const line = lines.get(key)
    if (line !== undefined) {
      if (hole !== undefined) line.holes.push(hole)
    } else lines.set(key, { why, face: face ?? null, holes: hole === undefined ? [] : [hole] })
  }
  return GROUPS.flatMap((group) => {
    const lines = groups.get(group)
    return lines === undefined ? [] : [{ group, lines: [...lines.values()] }]
  })
}

/** Where a line is settled; null: on the spot, or nowhere but by waiting. */
export function placeOf({ why, face }: Pick<Line, 'why' | 'face'>, at: { book: BookName; unit: string }): Route | null {
  switch (GROUP_OF[why.code]) {
    case 'faces':
      return face === null ? null : { at: 'bench', ...at, face }
    case 'readings':
      return { at: 'figures', ...at }
    case 'clocks':
      return face === null ? null : { at: 'bench', ...at, face }
    case 'clashes':
      return { at: 'unit', ...at }
    case 'stops':
    case 'record':
      return { at: 'story', ...at }
    default:
      return null
  }
}
