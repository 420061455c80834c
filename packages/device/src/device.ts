/** The record on a phone or tablet: written here at once, sent to the shop when it can be, and what others write brought here. */
import type { Event, FoldedUnit, Happening } from '@gripbook/record'
import { keepPhotograph, makeRoom, photographHere, photographsAgain } from './album.ts'
import { type Answer, asker, isObject } from './ask.ts'
import { openDatabase } from './database.ts'
import { DeviceFault, inWords, storageFault } from './faults.ts'
import { follower } from './follow.ts'
import { type Reason, startLoop } from './loop.ts'
import { newsDesk } from './news.ts'
import { type Given, inBrowser } from './place.ts'
import { isPerson, type Person, type Refusing, sender } from './sender.ts'
import { clockOf, nothingHeard, type Standing, type Status, statusOf } from './status.ts'
import { oneAtATime } from './telling.ts'
import { inTurn } from './turn.ts'
import { type EntryHere, unitsHere } from './units.ts'
import { waitAgain } from './waiting.ts'
import { type NotStored, storeForeign, writeOwn } from './writing.ts'

export type Device = {
  /** UUID of the device, in every entry that it makes. */
  readonly id: string
  /** Writes that something happened; resolves with the entry when it is on the disk of the device. Errors: 'bad-entry', 'storage-full', 'storage-failed'. */
  append(unit: string, who: string, happening: Happening): Promise<Event>
  /** Several at once: all of them or none. */
  appendAll(unit: string, who: string, happenings: readonly Happening[]): Promise<Event[]>
  /** Keeps a photograph; resolves with its name in entries (SHA-256 of its bytes) when it is on the disk of the device. */
  photograph(bytes: Uint8Array | Blob): Promise<{ photograph: string }>
  /** A photograph that lies on this device, as it was taken; null when it does not (then the shop has it). */
  photographOf(sha256: string): Promise<Uint8Array<ArrayBuffer> | null>
  /** The unit by all entries that are here. */
  unitOf(unit: string): Promise<FoldedUnit>
  /** Entries of a unit in the order of the record, with how far each has come. */
  entriesOf(unit: string): Promise<EntryHere[]>
  /** Units of which there are entries here. */
  units(): Promise<string[]>
  /** Calls with the unit now and after each change, also by another tab; gives what stops it. */
  watch(unit: string, listener: (unit: FoldedUnit) => void): () => void
  /** Brings what others do on this unit, as long as it is followed; gives what stops it. */
  follow(unit: string): () => void
  status(): Promise<Status>
  watchStatus(listener: (status: Status) => void): () => void
  /** Calls for entries that came and were not stored, with the reason. */
  watchNotStored(listener: (notStored: readonly NotStored[]) => void): () => void
  /** Refused entries of a unit, and refused photographs, are sent again: when what they were refused for has been put right. */
  tryAgain(unit: string): Promise<void>
  /** Pairs with a code of the owner's; `before`: at most 20 ids (UUID) under which people wrote on this device before it was paired, so that these entries are taken. Errors: 'code-not-valid', 'too-often', 'no-answer', 'refused-by-shop'. */
  pair(code: string, personName?: string, before?: readonly string[]): Promise<Person>
  /** Ends the session; what waits stays and goes on after pairing again. Errors: 'no-answer', since the shop has to end it. */
  signOut(): Promise<void>
  /** Asks the browser never to clear the record by itself, as pairing does by itself; null where it cannot be asked. */
  keepForGood(): Promise<boolean | null>
  /** Stops sending and following, also in the middle, and closes the database; what waits stays. */
  close(): Promise<void>
}

/** ms between two tellings of the status: counting what waits goes through the whole database, and nobody reads faster. */
const STATUS_REST = 250

/** Opens the record on this device; at the first opening the device gets its id. Errors: 'newer-version', 'storage-failed', 'storage-full'. */
export async function openDevice(given: Given = {}): Promise<Device> {
  const place = inBrowser(given)
  const [db, self] = await openDatabase(place)
  const news = newsDesk(place)
  const standing = nothingHeard()
  const statusListeners = new Set<() => void>()
  const notStoredListeners = new Set<(notStored: readonly NotStored[]) => void>()
  const units = unitsHere(db, news)
  const ending = new AbortController()
  let pairings = 0
  let pairingsAtRound = 0

  function stand(change: Partial<Standing>): void {
    Object.assign(standing, change)
    for (const listener of [...statusListeners]) listener()
  }

  const ask = asker(place, ending.signal, ({ ahead }) =>
    stand({
      contact: new Date(place.clock()).toISOString(),
      ...(ahead === null ? {} : { clock: clockOf(ahead) }),
    }),
  )

  /** When there is no room, what the shop has already makes some, and the write is tried once more. */
  async function withRoom<T>(write: () => Promise<T>): Promise<T> {
    try {
      const done = await write().catch(async (error) => {
        if (storageFault(error).code !== 'storage-full' || (await makeRoom(db, 0)) === 0) throw error
        return write()
      })
      if (standing.full) stand({ full: false })
      return done
    } catch (error) {
      const fault = storageFault(error)
      if (fault.code === 'storage-full') stand({ full: true })
      throw fault
    }
  }

  async function store(entries: readonly unknown[]) {
    const stored = await withRoom(() => storeForeign(db, self, entries))
    if (stored.units.length > 0) news.tell({ of: 'units', units: stored.units })
    if (stored.notStored.length > 0) for (const listener of [...notStoredListeners]) listener(stored.notStored)
    return stored
  }

  const following = follower({ db, self, place, ask, store, reached: () => loop.wake('network-back') })

  const takeTurn = inTurn(db, place)
  const loop = startLoop({
    place,
    turn(work, until) {
      pairingsAtRound = pairings
      return takeTurn(work, until)
    },
    ending,
    sender: sender({
      db,
      self,
      place,
      ask,
      news,
      signedIn: (person) => stand({ signedIn: 'yes', person }),
      goesOn() {
        if (standing.trouble !== null) stand({ trouble: null })
      },
      fetchMissing: following.fetchMissing,
    }),
    ended(last, error) {
      const fault = error === null ? null : storageFault(error)
      // What was sent could not be noted as sent: it is sent again, which is harmless, once there is room.
      if (fault?.code === 'storage-full') void makeRoom(db, 0).catch(() => {})
      // A round that began before a pairing tells nothing of the session since: the one that the pairing has woken will.
      if (pairingsAtRound !== pairings && isSignedOut(last)) return
      stand({
        ...(error === null ? { trouble: last } : {}),
        ...(isSignedOut(last) ? { signedIn: 'no' as const, person: null } : {}),
        ...(fault?.code === 'storage-full' ? { full: true } : {}),
      })
    },
  })

  async function keepForGood(): Promise<boolean | null> {
    const kept = (await place.storage?.persist()) ?? null
    stand({})
    return kept
  }

  function wake(reason: Reason): void {
    loop.wake(reason)
    if (reason !== 'new-entry') following.wake()
  }

  const stopNews = news.listen((one, here) => {
    for (const listener of [...statusListeners]) listener()
    // The tab that wrote may be closed before it has sent: whichever is left sends.
    if (!here) wake(one.of === 'session' ? 'session' : 'new-entry')
  })
  const stopBack = place.onBack(() => wake('network-back'))
  const stopSeen = place.onSeen((seen) => {
    if (seen) loop.wake('seen')
  })

  async function appendAll(unit: string, who: string, happenings: readonly Happening[]): Promise<Event[]> {
    const events = await withRoom(() => writeOwn(db, self, place, { unit, who, happenings }))
    news.tell({ of: 'units', units: [unit] })
    wake('new-entry')
    return events
  }

  return {
    id: self.id,
    appendAll,
    async append(unit, who, happening) {
      const [event] = await appendAll(unit, who, [happening])
      return event!
    },
    async photograph(given) {
      const bytes = given instanceof Uint8Array ? given : new Uint8Array(await given.arrayBuffer())
      const photograph = await withRoom(() => keepPhotograph(db, bytes, place.clock()))
      news.tell({ of: 'photographs' })
      wake('new-entry')
      return { photograph }
    },
    photographOf: (sha256) => inWords(() => photographHere(db, sha256, place.clock())),
    ...units,
    watch: (unit, listener) => units.watch(unit, listener, () => stand({})),
    follow: following.follow,
    status: () => inWords(() => statusOf(db, self, place, standing)),
    watchStatus(listener) {
      const { tell, stop } = oneAtATime(() => statusOf(db, self, place, standing), listener, undefined, STATUS_REST)
      statusListeners.add(tell)
      tell()
      return () => {
        statusListeners.delete(tell)
        stop()
      }
    },
    watchNotStored(listener) {
      notStoredListeners.add(listener)
      return () => notStoredListeners.delete(listener)
    },
    async tryAgain(unit) {
      await inWords(async () => {
        await waitAgain(db, { unit })
        await photographsAgain(db, 'refused')
      })
      news.tell({ of: 'units', units: [unit] })
      wake('new-entry')
    },
    async pair(code, personName, before) {
      const device = { id: self.id, secret: self.secret, name: place.label }
      const body = JSON.stringify({ code, device, name: personName, before })
      const answer = await ask({ method: 'POST', path: '/pairing', body })
      if (!answer.ok) throw pairingFault(answer)
      const { person } = answer.body as { person?: unknown }
      if (!isObject(person) || !isPerson(person)) throw new DeviceFault('strange-answer', { status: answer.status })
      pairings++
      stand({ signedIn: 'yes', person, trouble: null })
      // With another person or role the shop may take what it refused before.
      const changed = await inWords(() => waitAgain(db, { codes: ['not-allowed', 'other-device'] }))
      await inWords(() => photographsAgain(db, 'refused'))
      // Someone has just decided to work with this device: the moment to ask, where a browser asks the person.
      if ((await place.storage?.persisted().catch(() => true)) === false) void keepForGood().catch(() => {})
      if (changed.length > 0) news.tell({ of: 'units', units: changed })
      news.tell({ of: 'session' })
      wake('session')
      return person
    },
    async signOut() {
      const answer = await ask({ method: 'DELETE', path: '/session' })
      if (!answer.ok && !isSignedOut(answer)) throw pairingFault(answer)
      stand({ signedIn: 'no', person: null })
      news.tell({ of: 'session' })
      wake('session')
    },
    keepForGood,
    async close() {
      stopNews()
      stopBack()
      stopSeen()
      following.stop()
      news.close()
      await loop.stop()
      db.close()
      db.leave()
    },
  }
}

function isSignedOut(last: Answer | null): boolean {
  return last !== null && !last.ok && last.why === 'refused' && last.status === 401
}

function pairingFault(answer: Refusing): DeviceFault {
  if (answer.why === 'no-answer' || answer.why === 'strange-answer') return new DeviceFault(answer.why)
  if (answer.why === 'later')
    return answer.status === 429
      ? new DeviceFault('too-often', { after: answer.after })
      : new DeviceFault('no-answer', { status: answer.status })
  if (answer.code === 'code-not-valid' || answer.code === 'not-signed-in') return new DeviceFault(answer.code)
  return new DeviceFault('refused-by-shop', { code: answer.code, ...answer.facts })
}
