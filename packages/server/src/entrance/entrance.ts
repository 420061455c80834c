/** Who may come in: people with a role, devices, and the sessions that join the two. What `makeEntrance` builds on the database. */
import type { Event } from '@gripbook/record'

/** What a person may do: `owner` everything; `checker` all that a builder may, and sign as checker and release; `builder` write; `viewer` read. */
export const ROLES = ['owner', 'builder', 'checker', 'viewer'] as const
export type Role = (typeof ROLES)[number]

/** `left`: when the person left the shop; what they entered stays. Times are ISO 8601 in UTC. */
export type Person = { id: string; name: string; role: Role; since: string; left: string | null }

/** `expires`: when the session ends if nobody uses it any more. */
export type Session = {
  id: string
  person: Person
  device: { id: string; name: string }
  since: string
  lastUsed: string
  expires: string
}

/** The device that asks to be paired: its own id, and a secret of 64 hex digits that it made and keeps, by which it is known again. */
export type Asking = { id: string; secret: string; name: string }

/** Whom a code is for: someone new, or a person who is there already and comes with a further device. */
export type ForWhom = { name: string; role: Role } | { person: string }

/** What the owner may change of a person; `left` false: the person is back, and needs a new code. */
export type Change = { name?: string; role?: Role; left?: boolean }

export type Entrance = {
  /** The session with this token, while neither it nor the person's stay has ended. */
  sessionOf(token: string): Promise<Session | null>
  /** Throws `Refused` when these entries may not be sent in this session: another device's, for a person who is not paired on it, or beyond the person's role. */
  mustBeAllowed(session: Session, entries: readonly Event[]): Promise<void>
  /**
   * While the shop has no owner: a new code that makes its user the owner; the one before is void. Null once there is an owner, unless `another` one is
   * wanted: whoever starts the server may let an owner in who has lost every device.
   */
  ownerCode(given?: { another?: boolean }): Promise<string | null>
  /** A code for one pairing within ten minutes. `expires` as ISO 8601 in UTC. Throws `Refused`: not-allowed, not-found. */
  makeCode(by: Session, whom: ForWhom): Promise<{ code: string; expires: string }>
  /**
   * Uses up a code, pairs the device and opens its session; the device's sessions before it end. `name` is the person's, needed with the owner code
   * alone; `replaces` a session that ends with it, as its cookie is overwritten; `before` ids under which this device wrote before it was paired: each
   * that nobody else has becomes the new person's, or stands for the person, unless that is a viewer. `token` is for the cookie and kept nowhere. Throws `Refused`:
   * code-not-valid, wrong-secret, wrong-request.
   */
  pair(
    code: string,
    asking: Asking,
    more?: { name?: string; replaces?: string; before?: readonly string[] },
  ): Promise<{ token: string; session: Session }>
  /** Everyone who ever belonged to the shop, in the order in which they came. */
  people(): Promise<Person[]>
  /** Throws `Refused`: not-allowed, not-found, last-owner. */
  changePerson(by: Session, person: string, change: Change): Promise<Person>
  /** Sessions that have not ended, the one used last first; of one person, or of all (null). */
  sessions(of: string | null): Promise<Session[]>
  /** Ends a session; only if it is this person's, where one is given. Throws `Refused`: not-found. */
  endSession(session: string, of: string | null): Promise<void>
}
