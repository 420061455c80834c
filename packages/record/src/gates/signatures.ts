/** The checker's signature: a second person, after the last work of hands and after the unit came back. */
import { knew } from '../clash.ts'
import type { BodyOf } from '../events/catalogue.ts'
import { asksForAnswer } from './comeBacks.ts'
import type { Done } from './standing.ts'
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

/** What lacks of the checker's signature for the unit, or for one face, where one for the unit does too. */
export function openSignature(standing: readonly Done[], face?: string): Open | undefined {
  const here = ({ body }: Done) => face === undefined || faceOf(body) === face
  const byHand = standing.filter((done) => BY_HAND.has(done.event.type) && here(done))
  const signed = standing.filter((done) => isSigned(done, 'builder') && here(done))
  const builders = new Set([...byHand, ...signed].map(({ event }) => event.who))
  const checks = standing.filter(
    (done) =>
      isSigned(done, 'checker') &&
      !builders.has(done.event.who) &&
      (faceOf(done.body) === undefined || faceOf(done.body) === face),
  )
  const at = face === undefined ? {} : { face }
  if (checks.length === 0) return { ...at, why: { code: 'not-checked', ...at } }
  const toKnow = [...byHand, ...standing.filter((done) => isOfComeBack(done) && here(done))]
  return checks.some((check) => toKnow.every((work) => knew(check.event, work.event)))
    ? undefined
    : { ...at, why: { code: 'signed-before', ...at } }
}

/** Whoever checks a unit that came back knows why it did, and what was found. */
function isOfComeBack(done: Done): boolean {
  return asksForAnswer(done) || done.event.type === 'come-back-answered'
}

function isSigned({ event, body }: Done, as: BodyOf<'step-signed'>['as']): boolean {
  return event.type === 'step-signed' && (body as BodyOf<'step-signed'>).as === as
}

function faceOf(body: unknown): string | undefined {
  return (body as { face?: string }).face
}
