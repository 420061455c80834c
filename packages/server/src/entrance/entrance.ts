/** Who may come in: people with a role, devices, and the sessions that join the two. What `makeEntrance` builds on the database. */
import type { Event } from '@gripbook/record'

/** What a person may do: `owner` everything; `checker` all that a builder may, and sign as checker and release; `builder` write; `viewer` read. */
export const ROLES = ['owner', 'builder', 'checker', 'viewer'] as const
export type Role = (typeof ROLES)[number]

/** `left`: when the person left the shop; what they entered stays. Times are ISO 8601 in UTC. */
export type Person = { id: string; name: string; role: Role; since: string; left: string | null }

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

export type Entrance = {
  /** The session with this token, while neither it nor the person's stay has ended. */
  sessionOf(token: string): Promise<Session | null>
  /** Throws `Refused` when these entries may not be sent in this session: another device's, for a person who is not paired on it, or beyond the person's role. */
  mustBeAllowed(session: Session, entries: readonly Event[]): Promise<void>
}
