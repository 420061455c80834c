import type { Sending } from '../../app/SendingChip.tsx'

const CHIP: Record<Exclude<Sending, 'waiting'>, string> = {
  'here only': 'On this device',
  sent: 'Sent',
  refused: 'Not taken',
  full: 'Full',
  unknown: '…',
}

export const sending = {
  chip: (sending: Sending, count: number) => (sending === 'waiting' ? `${count} waiting` : CHIP[sending]),
  chipLabel: (said: string) => `How sending stands: ${said}`,
}
