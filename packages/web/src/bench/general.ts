/** What lies over the screen, and what every screen of the bench can do, by a button or a key. */
export type Over =
  | 'more'
  | 'steps'
  | 'wrench'
  | 'clock'
  | 'binds'
  | 'why'
  | 'another'
  | 'short'
  | 'angle'
  | 'open again'

export type General = {
  undo(): void
  binds(): void
  look(by: 1 | -1): void
  open(over: Over): void
  /** To the unit: what next. */
  leave(): void
}
