/** Who may sign and release: the checker is a second person, unless the shop is one person, which the release then says. */
import { type Event, type FoldedUnit, foldMore, knowledgeOf, nextEntry, openBefore, stepSigned } from '@gripbook/record'
import { standingOf } from '../unit/standing.ts'

/** The step under which the whole unit is signed. */
export const WHOLE_UNIT = 'unit'

export type Signature = {
  event: string
  as: 'builder' | 'checker'
  who: string
  at: string
  face: string | null
}

/** Signatures that stand, in the order of the record. */
export function signaturesOf(folded: FoldedUnit): Signature[] {
  return standingOf(folded).flatMap(({ id, type, who, at, body }) =>
    type === 'step-signed' && (body.as === 'builder' || body.as === 'checker')
      ? [{ event: id, as: body.as, who, at, face: typeof body.face === 'string' ? body.face : null }]
      : [],
  )
}

export type Person = {
  who: string
  device: string
  /** What the shop lets this person do; null where no shop is asked: unpaired, or practice. */
  role: string | null
  /** People of the shop who may write; null while that is not known. */
  people: number | null
}

/** Of a device that belongs to a shop and has not heard from it yet: who works here is not known. */
export const UNKNOWN = 'unknown'

type Standing = { signedIn: 'unknown' | 'yes' | 'no'; person: { role: string } | null }

/** What the shop lets whoever works here do; null without a shop: practice, or a device that is not paired. `paired`: as far as the shop said last. */
export function roleOf(isPractice: boolean, status: Standing | null, paired: boolean): string | null {
  if (isPractice) return null
  if (status?.person != null) return status.person.role
  return status?.signedIn === 'no' || !paired ? null : UNKNOWN
}

/** Whether whoever works here is the only one: by the shop's list, and without a shop by the entries on this device. */
export function isOnlyPerson(folded: FoldedUnit, { role, people }: Person): boolean {
  if (role !== null) return role !== UNKNOWN && people === 1
  return new Set(standingOf(folded).map(({ who }) => who)).size <= 1
}

/** What lets a person sign as checker, or why not. `worked-here`: whoever built it does not check it. */
export function mayCheck(folded: FoldedUnit, person: Person): 'yes' | 'role' | 'worked-here' {
  if (person.role !== null && person.role !== 'checker' && person.role !== 'owner') return 'role'
  const lacking = openBefore(foldMore(folded, [signedBy(folded, person)]))
  return lacking.some(({ why }) => why.code === 'not-checked' || why.code === 'signed-before') ? 'worked-here' : 'yes'
}

/** What lets a person release. Without a shop whoever is there may. */
export function mayRelease({ role }: Person): boolean {
  return role === null || role === 'checker' || role === 'owner'
}

/** The entry that a signature made now would become. */
function signedBy(folded: FoldedUnit, { who, device }: Person): Event {
  const knowledge = knowledgeOf(folded.id, device, folded.entries)
  const id = 'signature to come'
  const happening = stepSigned({ step: WHOLE_UNIT, as: 'checker' })
  return nextEntry(knowledge, { id, at: new Date(0).toISOString(), who, ...happening }, () => id)
}

/** Whether this person wrote any of the unit's work: bolts, parts and faces that went back. */
export function hasWorked(folded: FoldedUnit, who: string): boolean {
  return standingOf(folded).some((entry) => entry.who === who && AT_WORK.has(entry.type))
}

const AT_WORK: ReadonlySet<string> = new Set([
  'bolt-placed',
  'hand-started',
  'run-down',
  'snugged',
  'pass-torqued',
  'face-closed',
  'part-went-in',
  'part-replaced',
  'job-done',
])
