import type { PlacementAnswer } from '@gripbook/engine'
import type { Hash } from '../chain.ts'
import type { Json } from '../events/json.ts'
import { openBefore } from '../gates/openBefore.ts'
import { passedStops } from '../gates/passedStops.ts'
import { recordHash, upTo } from '../proof.ts'
import { sayEntry } from '../say.ts'
import { unitFileOf } from '../toUnitFile.ts'
import type { FoldedUnit, Standing } from '../unit.ts'
import { writeUnitFile } from '../unitFile/write.ts'
import type { BuildRecord, Line, Proof, RecordState } from './buildRecord.ts'
import { cautionsFor } from './cautions.ts'
import { builtFaces, wrenchesOf } from './faces.ts'
import { builtBolts, builtClocks, builtFits, builtParts, builtPlugs } from './parts.ts'
import { builtFigures, builtReadings } from './readings.ts'
import { builtResistances, builtSignatures, builtStops } from './stops.ts'
import { byTime, given, type Telling, tellingOf } from './telling.ts'

export type ToTell = {
  /** Names by the ids that entries carry. */
  people: Readonly<Record<string, string>>
  /** Where the shop’s server is reached, without a slash at the end, and the public key that signs for it, 64 hex digits. */
  shop?: { address?: string; key?: string }
  /** What belongs where by sizes, of the unit as it stands. */
  answer?: PlacementAnswer
  hash: Hash
  /** The unit comes from a unit file: its entries were made up to hold it, and nobody did what they say. */
  stateOnly?: boolean
}

/** The content of the build record. The same entries, names and answer give the same record; no clock is read. */
export function buildRecordOf(
  folded: FoldedUnit,
  { people, shop = {}, answer, hash, stateOnly = false }: ToTell,
): BuildRecord {
  const telling = tellingOf(folded, people)
  const { unit, work, entries } = folded
  const passed = stateOnly ? [] : passedStops(folded)
  const faces = builtFaces(telling, { answer, passed })
  const stops = builtStops(telling, passed)
  const figures = builtFigures(telling)
  const signatures = builtSignatures(telling)
  const release = releaseOf(telling, hash)
  const open = stateOnly ? [] : openBefore(folded, { onlyPerson: release?.onlyPerson === true })
  const takenIn = telling.of('unit-taken-in')[0]?.event
  return {
    gripbook: 'build-record/1',
    unit: {
      id: folded.id,
      ...given({
        name: unit.name,
        model: work.model?.value,
        job: work.job?.value,
        history: unit.history,
        note: unit.note,
      }),
    },
    ...(takenIn === undefined || stateOnly ? {} : { takenIn: telling.done(takenIn) }),
    ...given({ complaint: firstComplaint(telling) ?? work.complaint?.value }),
    cameBack: cameBackIn(telling),
    state: stateOnly ? 'state only' : stateOf(folded, { release, open }),
    hash: stateOnly ? hash(fileText(folded)) : recordHash(entries, hash),
    entries: stateOnly ? 0 : entries.length,
    ...(entries.length === 0 || stateOnly ? {} : { last: entries.at(-1)!.at }),
    shop,
    ...(release === undefined ? {} : { release }),
    since: folded.sinceRelease.map((id) => lineOf(telling, id)),
    open,
    proof: proofOf({ faces, stops, figures, signatures }),
    openedBefore: telling.of('opened-before-seen').map(({ event, body: { face, sign, photograph } }) => ({
      ...telling.done(event),
      sign,
      ...given({ face, photograph }),
    })),
    faces,
    photographs: photographsBeside(folded),
    readings: builtReadings(telling),
    figures,
    parts: stateOnly ? builtParts(telling).map(({ fateBy: _, wentIn: __, ...part }) => part) : builtParts(telling),
    fits: builtFits(telling),
    plugs: builtPlugs(telling),
    bolts: builtBolts(telling),
    wrenches: wrenchesOf(faces),
    clocks: builtClocks(telling),
    stops,
    resistances: builtResistances(telling),
    notes: notesOf(telling),
    signatures,
    cautions: cautionsFor(folded),
    undone: folded.undone.map(({ event, by }) => {
      const undoing = telling.byId(by)!
      return {
        ...lineOf(telling, event),
        by: { ...telling.done(undoing), ...given({ reason: undoing.body.reason as string | undefined }) },
      }
    }),
    clashes: folded.clashes,
    notUnderstood: folded.notUnderstood.map(({ event }) => sayEntry(telling.byId(event)!)),
  }
}

function stateOf(
  { work, sinceRelease }: FoldedUnit,
  { release, open }: { release: BuildRecord['release'] | undefined; open: BuildRecord['open'] },
): RecordState {
  if (release === undefined) return work.cameBack === undefined ? 'not released' : 'came back'
  if (!release.holds) return 'does not fit'
  if (sinceRelease.length > 0) return 'changed since'
  return open.length > 0 ? 'released open' : 'released'
}

/** The release that stands, held against the entries that it names. */
function releaseOf(telling: Telling, hash: Hash): BuildRecord['release'] {
  const released = telling.folded.work.released
  if (released === undefined) return undefined
  const { heads, record } = released.value
  const told = telling.of('unit-released').find(({ event }) => event.id === released.event)
  return {
    ...telling.doneBy(released),
    onlyPerson: told?.body.onlyPerson === true,
    heads,
    record,
    holds: recordHash(upTo(heads, telling.folded.entries), hash) === record,
    ...given({ key: told?.body.signature?.key }),
  }
}

function firstComplaint(telling: Telling): string | undefined {
  return telling.of('unit-taken-in').find(({ body }) => body.complaint !== undefined)?.body.complaint
}

function cameBackIn(telling: Telling): BuildRecord['cameBack'] {
  const answers = telling.of('come-back-answered')
  return telling.of('came-back').map(({ event, body: { complaint } }) => ({
    ...telling.done(event),
    complaint,
    answers: answers
      .filter(({ body }) => body.cameBack === event.id)
      .map(({ event: by, body: { found, done, face } }) => ({ ...telling.done(by), found, ...given({ done, face }) })),
  }))
}

function fileText(folded: FoldedUnit): string {
  const { unit } = unitFileOf(folded)
  return unit === null ? '' : writeUnitFile(unit)
}

function lineOf(telling: Telling, id: string): Line {
  const event = telling.byId(id)!
  return { ...telling.done(event), says: sayEntry(event) }
}

function photographsBeside({ things, faces }: FoldedUnit): BuildRecord['photographs'] {
  const ofFaces = new Set(Object.values(faces).map(({ photograph }) => photograph?.value.photograph))
  const text = (standing: Standing<Json> | undefined) => standing?.value as string | undefined
  return Object.entries(things.photograph)
    .filter(([photograph]) => !ofFaces.has(photograph))
    .map(([photograph, { width, height, caption, face, hole, part }]) => ({
      photograph,
      width: (width?.value ?? 0) as number,
      height: (height?.value ?? 0) as number,
      ...given({ caption: text(caption), face: text(face), hole: text(hole), part: text(part) }),
    }))
}

function notesOf(telling: Telling): BuildRecord['notes'] {
  return [
    ...telling.of('decided').map(({ event, body: { decision, reason, face, hole } }) => ({
      ...telling.done(event),
      decided: true,
      text: decision,
      ...given({ reason, face, hole }),
    })),
    ...telling.of('note-written').map(({ event, body: { text, face, hole } }) => ({
      ...telling.done(event),
      decided: false,
      text,
      ...given({ face, hole }),
    })),
  ].toSorted(byTime)
}

function proofOf({
  faces,
  stops,
  figures,
  signatures,
}: Pick<BuildRecord, 'faces' | 'stops' | 'figures' | 'signatures'>): Proof {
  const holes = faces.flatMap((face) => face.holes)
  const finals = holes.flatMap(({ passes }) => passes.filter(({ final }) => final).slice(-1))
  const checkers = signatures.filter(({ as, before }) => as === 'checker' && !before)
  const count = <T>(list: readonly T[], holds: (one: T) => boolean): number => list.filter(holds).length
  return {
    bolts: holes.length,
    final: finals.length,
    byFeel: count(finals, ({ byFeel }) => byFeel),
    outOfBand: count(finals, ({ outOfBand }) => outOfBand),
    outOfCalibration: count(finals, ({ inCalibration }) => inCalibration === false),
    calibrationUnknown: count(finals, ({ byFeel, inCalibration }) => !byFeel && inCalibration === undefined),
    overridden: count(stops, ({ override }) => override !== undefined),
    silent: count(stops, ({ override }) => override === undefined),
    figures: count(figures, ({ limit }) => limit !== undefined),
    inside: count(figures, ({ verdict }) => verdict === 'inside'),
    waived: count(figures, ({ verdict }) => verdict === 'waived'),
    checkedBy: [...new Set(checkers.map(({ who }) => who))],
  }
}
