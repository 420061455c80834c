import type { ComponentChildren } from 'preact'
import { useApp } from '../app/context.ts'
import { pathOf, type Route } from '../app/route.ts'

type Props = { to: Route; class?: string; label?: string; onGo?: () => void; children: ComponentChildren }

/** A link to a place in the page: it can be opened in a tab of its own, and goes there without loading the page again. */
export function Go({ to, class: name, label, onGo, children }: Props) {
  const { go } = useApp()
  return (
    <a
      href={pathOf(to)}
      {...(name === undefined ? {} : { class: name })}
      {...(label === undefined ? {} : { 'aria-label': label })}
      onClick={(event) => {
        if (event.metaKey || event.ctrlKey || event.shiftKey || event.button !== 0) return
        event.preventDefault()
        onGo?.()
        go(to)
      }}
    >
      {children}
    </a>
  )
}
