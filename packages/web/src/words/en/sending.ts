import type { Sending } from '../../app/sending.ts'
import type { Trouble } from '../../settings/trouble.ts'

const CHIP: Record<Exclude<Sending, 'waiting'>, string> = {
  'here only': 'On this device',
  sent: 'Sent',
  refused: 'Not taken',
  full: 'Full',
  unknown: '…',
}

const LEAD: Record<Sending, string> = {
  'here only': 'It is on this device alone',
  sent: 'Everything is with the shop',
  waiting: 'Waiting to be sent',
  refused: 'The shop did not take everything',
  full: 'The storage of this device is full',
  unknown: 'Looking…',
}

const TROUBLE: Record<Trouble, string> = {
  'no answer': 'The shop does not answer. It is asked again by itself until it does.',
  'not the shop': 'Something else answers in its place: the sign-in page of a network, or another server.',
  'shop busy': 'The shop asks to wait. It is asked again by itself.',
  'signed out': 'This device is not signed in any more. It needs a new code from the owner.',
}

const counted = (count: number, one: string, more: string) => `${count} ${count === 1 ? one : more}`

function things(entries: number, photographs: number): string {
  const parts = []
  if (entries > 0) parts.push(counted(entries, 'entry', 'entries'))
  if (photographs > 0) parts.push(counted(photographs, 'photograph', 'photographs'))
  return parts.join(' and ')
}

export const sending = {
  chip: (sending: Sending, count: number) => (sending === 'waiting' ? `${count} waiting` : CHIP[sending]),
  chipLabel: (said: string) => `How sending stands: ${said}`,
  title: 'How sending stands',
  lead: (sending: Sending) => LEAD[sending],
  nothingLost: 'Nothing is lost: what is entered is on this device at once.',
  full: 'Nothing more can be kept until something else on this device is deleted. What was kept before stays.',
  trouble: (trouble: Trouble) => TROUBLE[trouble],
  waits: 'Waits',
  waiting: (entries: number, photographs: number) => things(entries, photographs) || 'nothing',
  waitingBytes: (bytes: string) => `${bytes} of photographs`,
  waitingSince: (since: string) => `the oldest since ${since}`,
  contact: 'The shop answered',
  never: 'not yet',
  signedIn: 'Signed in',
  clock: 'Clock',
  clockAhead: (by: string) => `This device is ${by} ahead of the shop. Set its clock: times in the record follow it.`,
  clockBehind: (by: string) => `This device is ${by} behind the shop. Set its clock: times in the record follow it.`,
  refused: 'Not taken',
  refusedWhat: 'It stays on this device. When the reason is put right, send it again.',
  refusedFor: (entries: number, why: string) => `${counted(entries, 'entry', 'entries')}: ${why}`,
  refusedPhotographs: (count: number) => `${counted(count, 'photograph', 'photographs')}: the shop cannot take it.`,
  tryAgain: 'Send it again',
  triedAgain: 'It is sent again.',
  replaced:
    'What Gripbook kept in this browser was deleted once. What had been sent by then is with the shop; what still waited is gone.',
  storage: 'Storage of this device',
  used: (used: string, quota: string) => `${used} used of ${quota} that the browser allows`,
  usedUnknown: 'The browser does not say how much is used.',
  persistent: 'The browser has promised to keep it, however full the device gets.',
  notPersistent: 'The browser may clear it by itself when the device is nearly full. It can be asked to keep it.',
  persistentUnknown: 'Whether the browser keeps it when the device is nearly full cannot be asked here.',
  keepForGood: 'Ask the browser to keep it',
  kept: 'The browser keeps it now.',
  notKept:
    'The browser does not promise it now. Installing Gripbook on this device, or using it for some days, often brings it.',
}
