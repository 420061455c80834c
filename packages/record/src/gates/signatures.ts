/** The checker's signature: a second person, after the last work of hands. */
import { knew } from '../clash.ts'
import type { BodyOf } from '../events/catalogue.ts'
import type { Event } from '../events/event.ts'
import type { Open } from './stop.ts'

/** What hands do to the unit: whoever did any of it is a builder, and a signature is older than the work when it did not know of it. */
const BY_HAND: ReadonlySet<string> = new Set([
  'bolt-placed',
  'hand-started',
  'turns-counted',
  'run-down',
  'snugged',
  'pass-torqued',
  'witness-marked',
  'bolt-backed-out',
  'face-opened',
  'face-closed',
  'part-went-in',
  'part-replaced',
  'plug-placed',
  'job-done',
])

/** What lacks of the checker's signature for the unit, or for one face, where one for the unit does too. `entries`: those that stand. */
export function openSignature(entries: readonly Event[], face?: string): Open | undefined {
  const here = (event: Event) => face === undefined || event.body.face === face
  const byHand = entries.filter((event) => BY_HAND.has(event.type) && here(event))
  const builders = new Set(
    [...byHand, ...entries.filter((event) => isSigned(event, 'builder') && here(event))].map(({ who }) => who),
  )
  const checks = entries.filter(
    (event) =>
      isSigned(event, 'checker') &&
      !builders.has(event.who) &&
      (event.body.face === undefined || event.body.face === face),
  )
  const at = face === undefined ? {} : { face }
  if (checks.length === 0) return { ...at, why: { code: 'not-checked', ...at } }
  return checks.some((check) => byHand.every((work) => knew(check, work)))
    ? undefined
    : { ...at, why: { code: 'signed-before', ...at } }
}

function isSigned({ type, body }: Event, as: BodyOf<'step-signed'>['as']): boolean {
  return type === 'step-signed' && body.as === as
}
