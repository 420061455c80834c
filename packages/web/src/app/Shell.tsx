/** The frame of a screen: where one is, the way out, how sending stands. */
import type { ComponentChildren } from 'preact'
import { useEffect } from 'preact/hooks'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/index.ts'
import { useApp } from './context.ts'
import { outOf, pathOf } from './route.ts'
import { SendingChip } from './SendingChip.tsx'
import './Shell.css'

type Props = {
  title: string
  /** Above the title, smaller: what it lies in. */
  over?: string
  /** The screen is a picture: it fills the window and does not scroll. */
  filled?: boolean
  /** The work needs the room of the head: the title is there for screen readers, the way out lies in the screen itself. */
  bare?: boolean
  actions?: ComponentChildren
  children: ComponentChildren
}

export function Shell({ title, over, filled = false, bare = false, actions, children }: Props) {
  const { route, go, book } = useApp()
  useEffect(() => {
    document.title = title === 'Gripbook' ? title : `${title} · Gripbook`
  }, [title])
  const out = outOf(route)
  return (
    <div class={`shell${filled ? ' shell--filled' : ''}`}>
      {!bare && (
        <header class="shell__head">
          {route.at === 'units' ? (
            <span class="shell__sign" aria-hidden="true">
              <Sign />
            </span>
          ) : (
            <a
              class="shell__back"
              href={pathOf(out)}
              aria-label={words.shell.backTo(out.at)}
              onClick={(event) => {
                event.preventDefault()
                go(out)
              }}
            >
              <Icon name="back" />
            </a>
          )}
          <div class="shell__name">
            {over !== undefined && <p class="shell__over">{over}</p>}
            <h1>{title}</h1>
          </div>
          {actions}
          {book.name === 'practice' ? <span class="chip chip--practice">{words.shell.practice}</span> : <SendingChip />}
        </header>
      )}
      <main class="shell__main">
        {bare && <h1 class="unseen">{title}</h1>}
        {children}
      </main>
    </div>
  )
}

/** The sign of the book: a bolt in its seat, with its grip measured beside it. */
function Sign() {
  return (
    <svg viewBox="0 0 32 32" width="32" height="32" aria-hidden="true">
      <path d="M9 5h14v6H9z" fill="currentColor" />
      <path d="M13 11h6v16l-3 2-3-2z" fill="currentColor" opacity="0.75" />
      <path d="M3 11h6M3 20h6M6 11v9M23 11h6M23 20h6" stroke="currentColor" stroke-width="2" fill="none" />
    </svg>
  )
}
