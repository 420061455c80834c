/** Something that lies over the page until it is done: the browser's own dialog, which keeps the focus and closes with Escape. */
import type { ComponentChildren } from 'preact'
import { useEffect, useId, useRef } from 'preact/hooks'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/index.ts'
import './Sheet.css'

type Props = { title: string; onClose: () => void; wide?: boolean; children: ComponentChildren }

export function Sheet({ title, onClose, wide = false, children }: Props) {
  const dialog = useRef<HTMLDialogElement>(null)
  const id = useId()
  useEffect(() => {
    const shown = dialog.current!
    if (!shown.open) shown.showModal()
    return () => shown.close()
  }, [])
  return (
    // biome-ignore lint/a11y/useKeyWithClickEvents: the click beside it is one more way out; Escape and the close button are the keyboard's.
    <dialog
      ref={dialog}
      class={`sheet${wide ? ' sheet--wide' : ''}`}
      aria-labelledby={id}
      onCancel={(event) => {
        event.preventDefault()
        onClose()
      }}
      onClick={(event) => {
        // A tap on the ground beside it: the dialog itself is what was hit.
        if (event.target === dialog.current) onClose()
      }}
    >
      <div class="sheet__body">
        <div class="sheet__head">
          <h2 id={id}>{title}</h2>
          <button type="button" class="sheet__close" aria-label={words.shell.close} onClick={onClose}>
            <Icon name="cross" />
          </button>
        </div>
        {children}
      </div>
    </dialog>
  )
}
