/** One tab sends at a time. Two at once would do no harm, only send twice: so whoever waits too long for a turn goes on without. */
import type { Database, Lease } from './database.ts'
import type { Place } from './place.ts'

/** A tab that the phone has put to sleep may hold its turn for ever; the one being looked at does not wait for it. In ms. */
const PATIENCE = 20_000
/** A turn without locks is a note in the database that is good for so long. In ms. */
const LEASE = 10_000
const LOOK_EVERY = 100

export type InTurn = <T>(work: () => Promise<T>) => Promise<T>

export function inTurn(db: Database, place: Pick<Place, 'name' | 'locks' | 'clock' | 'newId'>): InTurn {
  const { locks } = place
  if (locks === null) return (work) => underLease(db, place, work)
  return async (work) => {
    const waiting = new AbortController()
    const timer = setTimeout(() => waiting.abort(), PATIENCE)
    let begun = false
    try {
      return await (locks.request(`gripbook-send:${place.name}`, { signal: waiting.signal }, () => {
        begun = true
        clearTimeout(timer)
        return work()
      }) as ReturnType<typeof work>)
    } catch (error) {
      if (begun) throw error
      return await work()
    } finally {
      clearTimeout(timer)
    }
  }
}

async function underLease<T>(
  db: Database,
  { clock, newId }: Pick<Place, 'clock' | 'newId'>,
  work: () => Promise<T>,
): Promise<T> {
  const owner = newId()
  for (const end = clock() + PATIENCE; !(await takeLease(db, owner, clock())) && clock() < end; )
    await new Promise((done) => setTimeout(done, LOOK_EVERY))
  const renewing = setInterval(() => void takeLease(db, owner, clock()).catch(() => {}), LEASE / 3)
  try {
    return await work()
  } finally {
    clearInterval(renewing)
    await db.transaction('rw', db.about, async () => {
      const lease = (await db.about.get('lease')) as Lease | undefined
      if (lease?.owner === owner) await db.about.delete('lease')
    })
  }
}

/** Takes the turn when nobody has it, or whoever had it has gone; a clock that was set back does not make a turn last. */
function takeLease(db: Database, owner: string, now: number): Promise<boolean> {
  return db.transaction('rw', db.about, async () => {
    const lease = (await db.about.get('lease')) as Lease | undefined
    const free = lease === undefined || lease.owner === owner || lease.until < now || lease.until > now + LEASE
    if (free) await db.about.put({ key: 'lease', owner, until: now + LEASE })
    return free
  })
}
