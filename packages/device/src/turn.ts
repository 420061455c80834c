/** One tab sends at a time. Two at once would do no harm, only send twice: so a tab that is not awake is not waited for. */
import type { Database, Lease } from './database.ts'
import type { Place } from './place.ts'

const LOOK_EVERY = 250

/** Does the work when it is this tab's turn, and what it throws is thrown; an error when `stop` comes before. */
export type InTurn = <T>(work: () => Promise<T>, stop: AbortSignal) => Promise<T>

type Around = Pick<Place, 'name' | 'locks' | 'clock' | 'newId' | 'patience'>

/**
 * By the browser's lock, or where a page may not have it, by a note in the database. A tab that the phone has put to sleep may hold the lock for
 * ever: so whoever has it keeps the note fresh meanwhile, and whoever has waited long goes by the note.
 */
export function inTurn(db: Database, place: Around): InTurn {
  const { locks } = place
  if (locks === null) return (work, stop) => underLease(db, place, work, stop)
  return async (work, stop) => {
    const waiting = new AbortController()
    const giveUp = () => waiting.abort()
    const timer = setTimeout(giveUp, place.patience.turn)
    stop.addEventListener('abort', giveUp)
    let begun = false
    try {
      return await (locks.request(`gripbook-send:${place.name}`, { signal: waiting.signal }, () => {
        begun = true
        clearTimeout(timer)
        return whileFresh(db, place, place.newId(), work, false)
      }) as ReturnType<typeof work>)
    } catch (error) {
      if (begun || stop.aborted) throw error
      return await underLease(db, place, work, stop)
    } finally {
      clearTimeout(timer)
      stop.removeEventListener('abort', giveUp)
    }
  }
}

async function underLease<T>(db: Database, place: Around, work: () => Promise<T>, stop: AbortSignal): Promise<T> {
  const owner = place.newId()
  while (!(await takeLease(db, place, owner))) {
    await new Promise((done) => setTimeout(done, LOOK_EVERY))
    stop.throwIfAborted()
  }
  return whileFresh(db, place, owner, work, true)
}

/** Keeps the note fresh while the work lasts. `noted`: it is this tab's from the beginning; else it is written only for work that takes long. */
async function whileFresh<T>(
  db: Database,
  place: Around,
  owner: string,
  work: () => Promise<T>,
  noted: boolean,
): Promise<T> {
  let written = noted
  const renewing = setInterval(() => {
    written = true
    void takeLease(db, place, owner).catch(() => {})
  }, lasting(place) / 3)
  try {
    return await work()
  } finally {
    clearInterval(renewing)
    // A note that stays behind is good for a moment only.
    if (written) await dropLease(db, owner).catch(() => {})
  }
}

/** For how long a note is good, in ms: gone before anybody who waits for the lock has lost patience. */
function lasting({ patience }: Around): number {
  return patience.turn / 2
}

/** Takes the turn when nobody has it, or whoever had it has gone; a clock that was set back does not make a turn last. */
function takeLease(db: Database, place: Around, owner: string): Promise<boolean> {
  return db.transaction('rw', db.about, async () => {
    const lease = (await db.about.get('lease')) as Lease | undefined
    const now = place.clock()
    const until = now + lasting(place)
    const free = lease === undefined || lease.owner === owner || lease.until < now || lease.until > until
    if (free) await db.about.put({ key: 'lease', owner, until })
    return free
  })
}

function dropLease(db: Database, owner: string): Promise<void> {
  return db.transaction('rw', db.about, async () => {
    const lease = (await db.about.get('lease')) as Lease | undefined
    if (lease?.owner === owner) await db.about.delete('lease')
  })
}
