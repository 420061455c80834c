import { useState } from 'preact/hooks'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/index.ts'
import { useApp } from './context.ts'
import { later } from './later.tsx'

const SendingSheet = later(() => import('../settings/SendingSheet.tsx').then((part) => part.SendingSheet))

import { SIGN_OF, sendingOf } from './sending.ts'

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
        <Icon name={SIGN_OF[sending]} size={18} />
        <span class="chip__words">{said}</span>
      </button>
      {open && <SendingSheet onClose={() => setOpen(false)} />}
    </>
  )
}
