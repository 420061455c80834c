import type { Round } from '../../bench/round.ts'

/** The rounds of the bench, on its own page and where the face tells how far it is. */
export const rounds: Record<Round['what'], string> = {
  start: 'Start by hand',
  'run down': 'Run down',
  snug: 'Snug',
  pass: 'Pass',
  mark: 'Witness mark',
  close: 'Close',
}
