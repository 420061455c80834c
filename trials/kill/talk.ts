/** What the trial and the process that it kills say to each other. */
import type { Event, Head, Page, Position } from '@gripbook/record'

export type Order = { no: number } & (
  | { what: 'append'; events: Event[] }
  | { what: 'since'; position: Position | null; limit: number }
  | { what: 'digest' }
  | { what: 'heads'; unit: string }
  | { what: 'close' }
)

/** `to`: the number of the order; 0 says that the database is open. */
export type Answer = { to: number; failed?: string; page?: Page; heads?: Head[]; digest?: string; count?: number }
