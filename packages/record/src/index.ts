export { type ArchiveFault, type CheckedArchive, checkArchive, type Unpacked } from './archive/check.ts'
export {
  ENTRIES_FILE,
  MANIFEST_FILE,
  type Manifest,
  type PackedPhotograph,
  photographName,
  SIGNATURE_FILE,
  UNIT_FILE,
} from './archive/manifest.ts'
export { entriesText, packUnit, photographsOf, type TextFile, type ToPack } from './archive/pack.ts'
export { archiveFaultText, chainFaultText } from './archive/words.ts'
export { type Judged, judgeBatch, type Kept, type ReadEntry, readBatch } from './batch.ts'
export type {
  BuildRecord,
  BuiltFace,
  BuiltFigure,
  BuiltHole,
  BuiltPart,
  BuiltPass,
  BuiltReading,
  BuiltResistance,
  BuiltSignature,
  BuiltStop,
  Done,
  Instrument,
  RecordState,
  TakenFigure,
} from './build/buildRecord.ts'
export { buildRecordOf, type ToTell } from './build/buildRecordOf.ts'
export type { Caution } from './build/cautions.ts'
export { canonical } from './canonical.ts'
export { type ChainFault, chainFaults, type Hash, hashOf, hasOwnHash, movedFaults } from './chain.ts'
export { type Given, type Knowledge, knowledgeOf, learn, nextEntry } from './entry.ts'
export { type EntryText, entryText } from './entryText.ts'
export { boltBackedOut } from './events/boltBackedOut.ts'
export { boltFound } from './events/boltFound.ts'
export { boltPlaced } from './events/boltPlaced.ts'
export { boltsAdded } from './events/boltsAdded.ts'
export { boltsWrittenOff } from './events/boltsWrittenOff.ts'
export { boltTried } from './events/boltTried.ts'
export { cameBack } from './events/cameBack.ts'
export { type BodyOf, type BodyRead, CATALOGUE, type EventType, readBody } from './events/catalogue.ts'
export { clashSettled } from './events/clashSettled.ts'
export { clockStarted } from './events/clockStarted.ts'
export { clockStopped } from './events/clockStopped.ts'
export { comeBackAnswered } from './events/comeBackAnswered.ts'
export { decided } from './events/decided.ts'
export type { Definition, Happening, Write } from './events/define.ts'
export { EVENT_LIMITS, type Event, readEvent } from './events/event.ts'
export { faceClosed } from './events/faceClosed.ts'
export { faceDescribed } from './events/faceDescribed.ts'
export { faceOpened } from './events/faceOpened.ts'
export { facePhotographed } from './events/facePhotographed.ts'
export { faceReleased } from './events/faceReleased.ts'
export { faceStruckOut } from './events/faceStruckOut.ts'
export { figureTaken } from './events/figureTaken.ts'
export { gateOverridden } from './events/gateOverridden.ts'
export { handStarted } from './events/handStarted.ts'
export { holeDescribed } from './events/holeDescribed.ts'
export { holeMarked } from './events/holeMarked.ts'
export { holeMoved } from './events/holeMoved.ts'
export { holeStruckOut } from './events/holeStruckOut.ts'
export { instrumentChecked } from './events/instrumentChecked.ts'
export { jobDone } from './events/jobDone.ts'
export { jobPlanned } from './events/jobPlanned.ts'
export type { Json } from './events/json.ts'
export { eventJsonSchema, eventJsonSchemaText } from './events/jsonSchema.ts'
export { kindDescribed } from './events/kindDescribed.ts'
export { kindLaidOut } from './events/kindLaidOut.ts'
export { kindStruckOut } from './events/kindStruckOut.ts'
export { limitStated } from './events/limitStated.ts'
export { noteWritten } from './events/noteWritten.ts'
export { openedBeforeSeen } from './events/openedBeforeSeen.ts'
export { orderChosen } from './events/orderChosen.ts'
export { partCameOut } from './events/partCameOut.ts'
export { partChosen } from './events/partChosen.ts'
export { partReplaced } from './events/partReplaced.ts'
export { partWentIn } from './events/partWentIn.ts'
export { partWrittenOff } from './events/partWrittenOff.ts'
export { passTorqued } from './events/passTorqued.ts'
export { photographed } from './events/photographed.ts'
export { type Place, sayPlace, type ThingName } from './events/places.ts'
export { plugFound } from './events/plugFound.ts'
export { plugPlaced } from './events/plugPlaced.ts'
export { rankStated } from './events/rankStated.ts'
export { readingTaken } from './events/readingTaken.ts'
export { readingWaived } from './events/readingWaived.ts'
export { resistanceCleared } from './events/resistanceCleared.ts'
export { resistanceFelt } from './events/resistanceFelt.ts'
export { runDown } from './events/runDown.ts'
export { snugged } from './events/snugged.ts'
export { stepSigned } from './events/stepSigned.ts'
export { trayLaidOut } from './events/trayLaidOut.ts'
export { turnsCounted } from './events/turnsCounted.ts'
export { undone } from './events/undone.ts'
export { unitDescribed } from './events/unitDescribed.ts'
export { unitReleased } from './events/unitReleased.ts'
export { unitTakenIn } from './events/unitTakenIn.ts'
export { witnessMarked } from './events/witnessMarked.ts'
export { workPaused } from './events/workPaused.ts'
export { fold, foldMore } from './fold.ts'
export { entriesFromUnit, happeningsOf } from './fromUnitFile.ts'
export { type FaceStep, faceSteps, type Stage } from './gates/faceSteps.ts'
export { sizeIn } from './gates/figures.ts'
export { openBefore } from './gates/openBefore.ts'
export { passedStops } from './gates/passedStops.ts'
export { doneBeforeOpening, readBeforeOpening } from './gates/reopened.ts'
export type { Band, Facts, Open, OpenWhy, Passed, Stop, StopName, Why } from './gates/stop.ts'
export { stopsFor } from './gates/stopsFor.ts'
export { isUuid, SHA256_HEX, UUID } from './identity.ts'
export { inOrder } from './inOrder.ts'
export { memoryStore } from './memoryStore.ts'
export { recordHash, stateHash, upTo } from './proof.ts'
export { type Called, sayEntry } from './say.ts'
export { sha256, sha256OfText } from './sha256.ts'
export type { Appended, Head, Page, Position, Refusal, Store } from './store.ts'
export { type StoreCase, storeSuite } from './storeSuite.ts'
export { type LeftOut, unitFileOf } from './toUnitFile.ts'
export type {
  Clash,
  FaceWork,
  FoldedUnit,
  HoleWork,
  NotUnderstood,
  Standing,
  Steps,
  Torqued,
  UnitWork,
} from './unit.ts'
export { withoutWork } from './unitFile/earlier.ts'
export type { FileFault, Named, ReadFile } from './unitFile/fault.ts'
export { faultLines, faultText } from './unitFile/faultWords.ts'
export { unitJsonSchema, unitJsonSchemaText } from './unitFile/jsonSchema.ts'
export { LIMITS } from './unitFile/limits.ts'
export { isPrintable } from './unitFile/localChecks.ts'
export { nearestName } from './unitFile/nearest.ts'
export { PART_SORTS } from './unitFile/partSorts.ts'
export { pathText } from './unitFile/path.ts'
export { readUnitFile } from './unitFile/read.ts'
export { writeUnitFile } from './unitFile/write.ts'
