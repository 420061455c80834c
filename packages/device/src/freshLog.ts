/**
 * Against losing everything to one torn write. Browsers of Chromium's kind keep all databases of an address in one LevelDB and go on writing to
 * its last log after the browser was killed or the power failed. When that ended in the middle of a write, the log reads well once; what is
 * written behind the torn end makes it unreadable, and at the start after that the browser deletes all databases of the address.
 * (Seen in Chromium 156 by cutting three bytes off the log; held by a test.) A log that has outgrown LevelDB's buffer is put away, and a fresh one begun:
 * so the first thing written after a start is more than the buffer holds.
 */
import type { Place } from './place.ts'

/** Chromium's buffer is 4 MiB at most, seen: 1.3 MB written do not help, 4.6 MB do. Zeros, which the browser keeps in little room. */
const PIECE = 32_768
const PIECES = 150

/**
 * Begins a fresh log unless another tab of this browser has it open, and so has done it already. Gives what ends that hold. A storage that is full
 * has no room for it: then the record is opened without.
 */
export async function beginFreshLog({
  name,
  locks,
  reusesLog,
}: Pick<Place, 'name' | 'locks' | 'reusesLog'>): Promise<() => void> {
  if (!reusesLog) return () => {}
  const fill = () => fillLog(`${name}:log`).catch(() => {})
  if (locks === null) {
    await fill()
    return () => {}
  }
  return new Promise((ready) => {
    // Shared by all tabs as long as they are open; a tab that gets it alone is the first.
    const room = `gripbook-open:${name}`
    const share = () =>
      locks
        .request(room, { mode: 'shared' }, () => new Promise<void>((leave) => ready(leave)))
        .catch(() => ready(() => {}))
    locks
      .request(room, { mode: 'exclusive', ifAvailable: true }, async (alone) => {
        if (alone !== null) await fill()
      })
      .then(share, share)
  })
}

async function fillLog(name: string): Promise<void> {
  const db = await new Promise<IDBDatabase>((done, fail) => {
    const opening = indexedDB.open(name)
    opening.onupgradeneeded = () => opening.result.createObjectStore('zeros')
    opening.onsuccess = () => done(opening.result)
    opening.onerror = () => fail(opening.error)
  })
  try {
    await write(db, (zeros) => {
      for (let i = 0; i < PIECES; i++) zeros.put(new Uint8Array(PIECE), i)
    })
    // The next write is what begins the fresh log.
    await write(db, (zeros) => zeros.clear())
  } finally {
    db.close()
  }
}

function write(db: IDBDatabase, work: (zeros: IDBObjectStore) => void): Promise<void> {
  return new Promise((done, fail) => {
    const transaction = db.transaction('zeros', 'readwrite')
    transaction.oncomplete = () => done()
    transaction.onabort = () => fail(transaction.error)
    work(transaction.objectStore('zeros'))
  })
}
