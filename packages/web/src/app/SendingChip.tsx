import type { Status } from '@gripbook/device'
import { useState } from 'preact/hooks'
import { Icon, type IconName } from '../look/icons.tsx'
import { SendingSheet } from '../settings/SendingSheet.tsx'
import { words } from '../words/index.ts'
import { useApp } from './context.ts'

export type Sending = 'here only' | 'sent' | 'waiting' | 'refused' | 'full' | 'unknown'

/** How far what was entered has come, in one word. */
export function sendingOf(status: Status | null): Sending {
  if (status === null) return 'unknown'
  if (status.storage.full) return 'full'
  if (status.refused.entries + status.refused.photographs > 0) return 'refused'
  if (status.signedIn === 'no') return 'here only'
  if (status.waiting.entries + status.waiting.photographs > 0) return 'waiting'
  return status.signedIn === 'yes' ? 'sent' : 'here only'
}

const ICONS: Record<Sending, IconName> = {
  'here only': 'book',
  sent: 'sent',
  waiting: 'waiting',
  refused: 'warning',
  full: 'warning',
  unknown: 'waiting',
}

export function SendingChip() {
  const { book } = useApp()
  const [open, setOpen] = useState(false)
  const sending = sendingOf(book.status)
  const count = (book.status?.waiting.entries ?? 0) + (book.status?.waiting.photographs ?? 0)
  const said = words.sending.chip(sending, count)
  return (
    <>
      <button
        type="button"
        class={`chip chip--${sending.replace(' ', '-')}`}
        aria-label={words.sending.chipLabel(said)}
        onClick={() => setOpen(true)}
      >
        <Icon name={ICONS[sending]} size={18} />
        <span class="chip__words">{said}</span>
      </button>
      {open && <SendingSheet onClose={() => setOpen(false)} />}
    </>
  )
}
