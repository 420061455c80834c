/** Every kind of entry that there is, and reading a body by the definition of its kind. */

import type * as z from 'zod/mini'
import { boltBackedOut } from './boltBackedOut.ts'
import { boltFound } from './boltFound.ts'
import { boltPlaced } from './boltPlaced.ts'
import { boltsAdded } from './boltsAdded.ts'
import { boltsWrittenOff } from './boltsWrittenOff.ts'
import { boltTried } from './boltTried.ts'
import { cameBack } from './cameBack.ts'
import { clashSettled } from './clashSettled.ts'
import { clockStarted } from './clockStarted.ts'
import { clockStopped } from './clockStopped.ts'
import { comeBackAnswered } from './comeBackAnswered.ts'
import { decided } from './decided.ts'
import type { Definition } from './define.ts'
import type { Event } from './event.ts'
import { faceClosed } from './faceClosed.ts'
import { faceDescribed } from './faceDescribed.ts'
import { faceOpened } from './faceOpened.ts'
import { facePhotographed } from './facePhotographed.ts'
import { faceReleased } from './faceReleased.ts'
import { faceStruckOut } from './faceStruckOut.ts'
import { figureTaken } from './figureTaken.ts'
import { gateOverridden } from './gateOverridden.ts'
import { handStarted } from './handStarted.ts'
import { holeDescribed } from './holeDescribed.ts'
import { holeMarked } from './holeMarked.ts'
import { holeMoved } from './holeMoved.ts'
import { holeStruckOut } from './holeStruckOut.ts'
import { instrumentChecked } from './instrumentChecked.ts'
import { jobDone } from './jobDone.ts'
import { jobPlanned } from './jobPlanned.ts'
import type { Json } from './json.ts'
import { kindDescribed } from './kindDescribed.ts'
import { kindLaidOut } from './kindLaidOut.ts'
import { kindStruckOut } from './kindStruckOut.ts'
import { limitStated } from './limitStated.ts'
import { noteWritten } from './noteWritten.ts'
import { openedBeforeSeen } from './openedBeforeSeen.ts'
import { orderChosen } from './orderChosen.ts'
import { partCameOut } from './partCameOut.ts'
import { partChosen } from './partChosen.ts'
import { partReplaced } from './partReplaced.ts'
import { partWentIn } from './partWentIn.ts'
import { partWrittenOff } from './partWrittenOff.ts'
import { passTorqued } from './passTorqued.ts'
import { photographed } from './photographed.ts'
import { plugFound } from './plugFound.ts'
import { plugPlaced } from './plugPlaced.ts'
import { rankStated } from './rankStated.ts'
import { readingTaken } from './readingTaken.ts'
import { readingWaived } from './readingWaived.ts'
import { resistanceCleared } from './resistanceCleared.ts'
import { resistanceFelt } from './resistanceFelt.ts'
import { runDown } from './runDown.ts'
import { snugged } from './snugged.ts'
import { stepSigned } from './stepSigned.ts'
import { trayLaidOut } from './trayLaidOut.ts'
import { turnsCounted } from './turnsCounted.ts'
import { undone } from './undone.ts'
import { unitDescribed } from './unitDescribed.ts'
import { unitReleased } from './unitReleased.ts'
import { unitTakenIn } from './unitTakenIn.ts'
import { witnessMarked } from './witnessMarked.ts'
import { workPaused } from './workPaused.ts'

export const CATALOGUE = [
  unitTakenIn,
  unitDescribed,
  openedBeforeSeen,
  photographed,
  facePhotographed,
  faceDescribed,
  faceStruckOut,
  holeMarked,
  holeMoved,
  holeDescribed,
  holeStruckOut,
  trayLaidOut,
  kindLaidOut,
  kindDescribed,
  kindStruckOut,
  boltFound,
  boltsWrittenOff,
  boltsAdded,
  partCameOut,
  partWentIn,
  partReplaced,
  partWrittenOff,
  plugFound,
  plugPlaced,
  instrumentChecked,
  readingTaken,
  figureTaken,
  limitStated,
  readingWaived,
  rankStated,
  boltTried,
  noteWritten,
  decided,
  partChosen,
  jobPlanned,
  jobDone,
  orderChosen,
  clockStarted,
  clockStopped,
  boltPlaced,
  handStarted,
  runDown,
  snugged,
  passTorqued,
  witnessMarked,
  turnsCounted,
  resistanceFelt,
  resistanceCleared,
  boltBackedOut,
  faceOpened,
  faceClosed,
  gateOverridden,
  workPaused,
  stepSigned,
  faceReleased,
  unitReleased,
  cameBack,
  comeBackAnswered,
  undone,
  clashSettled,
] as const

type Definitions = (typeof CATALOGUE)[number]
export type EventType = Definitions['type']
/** The body of an entry of this type, as its present version holds it. */
export type BodyOf<T extends EventType> = z.infer<Extract<Definitions, { type: T }>['body']>

const BY_TYPE: ReadonlyMap<string, Definition> = new Map(
  CATALOGUE.map((definition) => [definition.type, definition as unknown as Definition]),
)

export type BodyRead =
  | { ok: true; definition: Definition; body: unknown }
  /** `unknown-type` and `newer-version`: made by a newer Gripbook than this one, so kept and shown as not understood. */
  | { ok: false; why: 'unknown-type' | 'newer-version' }
  /** `path`: the first field that is wrong, `of.quantity`. */
  | { ok: false; why: 'malformed'; path: string }

/** The body of an entry, brought up to the present version of its type and checked. Never throws. */
export function readBody(event: Pick<Event, 'type' | 'version' | 'body'>, byType = BY_TYPE): BodyRead {
  const definition = byType.get(event.type)
  if (definition === undefined) return { ok: false, why: 'unknown-type' }
  if (event.version > definition.version) return { ok: false, why: 'newer-version' }
  const present = upgraded(definition, event)
  const read = definition.body.safeParse(present)
  if (!read.success) return { ok: false, why: 'malformed', path: (read.error.issues[0]?.path ?? []).join('.') }
  return { ok: true, definition, body: read.data }
}

/** An older body in the present version; undefined, which no schema takes, when it is not what its own version wrote and a step fails on it. */
function upgraded(definition: Definition, event: Pick<Event, 'version' | 'body'>): unknown {
  try {
    return definition.upgrades.slice(event.version - 1).reduce<Json>((body, step) => step(body), event.body)
  } catch {
    return undefined
  }
}
