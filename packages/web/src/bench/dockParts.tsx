/** What every dock has: undo, "it binds", the one large action, and the keys for them. */
import type { ComponentChildren } from 'preact'
import { useEffect, useRef } from 'preact/hooks'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/bench.ts'
import type { General } from './general.ts'
import type { KeyMeans } from './keys.ts'
import type { Bench } from './useBench.ts'
import { useKeys } from './useKeys.ts'
import './Dock.css'

export type DockProps = { bench: Bench; general: General }

/** Keys of a dock: its own for the figure and for done, the general ones for all else. */
export function useDockKeys(
  typed: string | null,
  general: General,
  own: { done(): void; type?(text: string): void; erase?(): void },
): void {
  useKeys(typed, (means: KeyMeans) => {
    switch (means.does) {
      case 'done':
        return own.done()
      case 'type':
        return own.type?.(means.text)
      case 'erase':
        return own.erase?.()
      case 'undo':
        return general.undo()
      case 'binds':
        return general.binds()
      case 'look':
        return general.look(means.by)
    }
  })
}

export function DockFrame({ bench, general, children }: DockProps & { children: ComponentChildren }) {
  return (
    <footer class="dock">
      <div class="dock__ways">
        <button type="button" class="button dock__undo" onClick={() => general.undo()}>
          <Icon name="undo" />
          {words.undo}
        </button>
        {bench.step.hole !== null && (
          <button type="button" class="button button--stop dock__binds" onClick={() => general.binds()}>
            <Icon name="warning" />
            {words.binds}
          </button>
        )}
      </div>
      {children}
    </footer>
  )
}

type MainProps = { onClick: () => void; disabled?: boolean; children: ComponentChildren }

/** The one large action. It has the focus when its step comes, so that a key and a screen reader are where the hand is. */
export function Main({ onClick, disabled = false, children }: MainProps) {
  const button = useRef<HTMLButtonElement>(null)
  useEffect(() => {
    if (document.querySelector('dialog[open]') === null) button.current!.focus({ preventScroll: true })
  }, [])
  return (
    <button
      ref={button}
      type="button"
      data-main
      class="button button--act dock__main"
      aria-disabled={disabled}
      onClick={onClick}
    >
      {children}
    </button>
  )
}
