import type { Unit } from '@gripbook/engine'
import type { Hash } from './chain.ts'
import { type Knowledge, learn, nextEntry } from './entry.ts'
import { boltTried } from './events/boltTried.ts'
import type { Happening } from './events/define.ts'
import type { Event } from './events/event.ts'
import { faceDescribed } from './events/faceDescribed.ts'
import { holeMarked } from './events/holeMarked.ts'
import { jobDone } from './events/jobDone.ts'
import { jobPlanned } from './events/jobPlanned.ts'
import type { Json } from './events/json.ts'
import { kindLaidOut } from './events/kindLaidOut.ts'
import { partCameOut } from './events/partCameOut.ts'
import { partWentIn } from './events/partWentIn.ts'
import { rankStated } from './events/rankStated.ts'
import { trayLaidOut } from './events/trayLaidOut.ts'
import { unitTakenIn } from './events/unitTakenIn.ts'

/**
 * What happened, in the trade's words, so that the unit stands as in its file: taken in, faces described, trays laid out, holes marked, ranks and
 * trials stated, parts out and in again, jobs planned and done. Folding it and writing the unit file again gives the same file (an empty list of ranks, trials, parts or jobs, which says nothing, is not kept).
 */
export function happeningsOf(unit: Unit): Happening[] {
  const { gripbook: _, faces, kinds, parts = [], jobs = [], ...about } = plain(unit)
  return [
    unitTakenIn(about),
    ...tray(undefined, kinds),
    ...faces.flatMap(({ id: face, holes, kinds, ranks = [], trials = [], ...rest }) => [
      faceDescribed({ face, ...rest }),
      ...tray(face, kinds),
      ...holes.map(({ id: hole, ...fields }) => holeMarked({ face, hole, ...fields })),
      ...ranks.map((rank) => rankStated({ face, ...rank })),
      ...trials.map((trial) => boltTried({ face, trial })),
    ]),
    ...parts.flatMap(({ id: part, in: isIn, ...rest }) => [
      partCameOut({ part, ...rest }),
      ...(isIn ? [partWentIn({ part })] : []),
    ]),
    ...jobs.flatMap(({ id: job, done, ...rest }) => [
      jobPlanned({ job, ...rest }),
      ...(done ? [jobDone({ job })] : []),
    ]),
  ]
}

/** A unit file as the next entries of a device. `stamp` gives id, clock and person of each. */
export function entriesFromUnit(
  unit: Unit,
  knowledge: Knowledge,
  stamp: (index: number) => Pick<Event, 'id' | 'at' | 'who'>,
  hash: Hash,
): Event[] {
  let known = knowledge
  return happeningsOf(unit).map((happening, index) => {
    const event = nextEntry(known, { ...stamp(index), ...happening }, hash)
    known = learn(known, event)
    return event
  })
}

function tray(face: string | undefined, kinds: Unit['kinds']): Happening[] {
  if (kinds === undefined) return []
  const of = face === undefined ? {} : { face }
  return [trayLaidOut(of), ...kinds.map(({ id: kind, ...rest }) => kindLaidOut({ ...of, kind, ...rest }))]
}

/** A copy in which −0, which a file may hold and canonical JSON cannot tell from 0, is 0. */
function plain<T>(value: T): T {
  return JSON.parse(JSON.stringify(value), (_name, item: Json) => (item === 0 ? 0 : item)) as T
}
