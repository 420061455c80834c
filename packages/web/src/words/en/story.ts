import type { State } from '../../unit/story.ts'

const states: Record<State, string> = {
  here: 'On this device',
  waiting: 'Waiting to be sent',
  sent: 'Sent',
  refused: 'Not taken by the shop',
  other: '',
}

export const story = {
  title: 'Story',
  filter: 'Show',
  all: 'The whole unit',
  count: (count: number) => (count === 1 ? '1 entry' : `${count} entries`),
  nothing: 'No entry about this face yet.',
  you: 'You',
  elsewhere: 'Someone on another device',
  states,
  tookBack: (sentence: string) => `Took back: ${sentence}`,
  broughtBack: (sentence: string) => `Brought back: ${sentence}`,
  settled: (sentence: string) => `Settled, this holds: ${sentence}`,
  settledValue: (sentence: string, value: string) =>
    sentence.includes(value) ? `Settled, this holds: ${sentence}` : `Settled, this holds: ${sentence} (${value})`,
  settledNone: 'Settled: none of them holds',
  undoneBy: (who: string, when: string) => `Undone by ${who}, ${when}`,
  undo: 'Undo',
  undoLabel: (sentence: string) => `Undo: ${sentence}`,
  bringBack: 'Bring back',
  bringBackLabel: (sentence: string) => `Bring back: ${sentence}`,
  undone: 'Undone. It stays in the story as undone.',
  broughtBackDone: 'It holds again.',
  earlier: 'Show earlier',
  slow: (count: number) =>
    count === 1 ? 'One entry is still on its way here.' : `${count} entries are still on their way here.`,
}
