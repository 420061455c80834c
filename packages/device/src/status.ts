/** How things stand between this device and the shop, for the page to show. */
import type { Database, Self } from './database.ts'
import type { Place } from './place.ts'
import type { Person, Refusing } from './sender.ts'

/** Further apart than this the device's clock is wrong, in ms. */
const CLOCK_WRONG = 120_000

export type Status = {
  device: string
  /**
   * Id of the device that this browser was before: its record was deleted here, by the browser or by somebody's hand. What it had sent is with the
   * shop; what waited then is gone. Null when nothing like that has happened.
   */
  replaces: string | null
  /** 'unknown' until the shop has answered. */
  signedIn: 'unknown' | 'yes' | 'no'
  /** Who is signed in here; the one last heard of while the shop is out of reach. */
  person: Person | null
  waiting: {
    entries: number
    photographs: number
    /** Of photographs. */
    bytes: number
    /** ISO 8601: how long the oldest has waited; null when nothing waits. */
    since: string | null
  }
  refused: { entries: number; photographs: number }
  /** ISO 8601: when the shop last answered. */
  contact: string | null
  /** What stands in the way of sending; null when nothing does, as far as was tried. */
  trouble: Refusing | null
  storage: {
    /** Bytes; null where the browser does not say (plain HTTP). */
    used: number | null
    quota: number | null
    /** Whether the browser has promised not to clear it by itself; null where it does not say. */
    persistent: boolean | null
    /** The last thing written did not fit. */
    full: boolean
  }
  /** `offBy`: ms by which the device's clock is ahead of the shop's (negative: behind); null before the shop has said. */
  clock: { offBy: number; wrong: boolean } | null
}

/** What the device has heard, kept by whoever hears it; the counts are read from the database when asked. */
export type Standing = Pick<Status, 'signedIn' | 'person' | 'contact' | 'trouble' | 'clock'> & { full: boolean }

export function nothingHeard(): Standing {
  return { signedIn: 'unknown', person: null, contact: null, trouble: null, clock: null, full: false }
}

export function clockOf(ahead: number): { offBy: number; wrong: boolean } {
  const offBy = Math.round(0 - ahead)
  return { offBy, wrong: Math.abs(offBy) > CLOCK_WRONG }
}

export async function statusOf(
  db: Database,
  { id: device, replaces }: Pick<Self, 'id' | 'replaces'>,
  { storage }: Pick<Place, 'storage'>,
  { full, ...heard }: Standing,
): Promise<Status> {
  const counts = await db.transaction('r', db.entries, db.photographs, async () => {
    const photographs = await db.photographs.where('state').equals('waiting').toArray()
    const oldest = await db.entries.where('state').equals('waiting').first()
    const [since = null] = [...(oldest?.since ? [oldest.since] : []), ...photographs.map((row) => row.since)].sort()
    return {
      waiting: {
        entries: await db.entries.where('state').equals('waiting').count(),
        photographs: photographs.length,
        bytes: photographs.reduce((sum, { bytes }) => sum + bytes, 0),
        since,
      },
      refused: {
        entries: await db.entries.where('state').equals('refused').count(),
        photographs: await db.photographs.where('state').equals('refused').count(),
      },
    }
  })
  return { device, replaces: replaces ?? null, ...heard, ...counts, storage: { ...(await roomOf(storage)), full } }
}

async function roomOf(storage: Place['storage']): Promise<Omit<Status['storage'], 'full'>> {
  try {
    const { usage = null, quota = null } = (await storage?.estimate()) ?? {}
    return { used: usage, quota, persistent: (await storage?.persisted()) ?? null }
  } catch {
    return { used: null, quota: null, persistent: null }
  }
}
