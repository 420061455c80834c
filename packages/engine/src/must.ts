/** A bug in Gripbook, never a fault of the user's: thrown where going on would mean guessing. */
export class Bug extends Error {
  override name = 'Bug'
  readonly facts: unknown
  constructor(message: string, facts?: unknown) {
    super(message)
    this.facts = facts
  }
}

/** Stops with words when something that must be true is not. Stays on in the shop. */
export function must(holds: boolean, message: string, facts?: unknown): asserts holds {
  if (!holds) throw new Bug(message, facts)
}
