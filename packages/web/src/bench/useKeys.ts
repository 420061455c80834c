import { useLayoutEffect, useRef } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { type KeyMeans, keyMeans } from './keys.ts'

/**
 * Keys of the whole screen, while no sheet lies over it. What has the focus keeps its own keys: a button its Enter and space, a field its text.
 * `typed`: what stands in the field for a figure, null where the step takes none.
 */
export function useKeys(typed: string | null, act: (means: KeyMeans) => void): void {
  const { settings } = useApp()
  const now = useRef({ typed, act, pedal: settings.pedal })
  now.current = { typed, act, pedal: settings.pedal }
  // At once when the step is drawn: a key between two steps must not fall through.
  useLayoutEffect(() => {
    function pressed(event: KeyboardEvent) {
      if (event.defaultPrevented || document.querySelector('dialog[open]') !== null) return
      const { typed, act, pedal } = now.current
      const means = keyMeans(event, typed, pedal)
      if (means === null || ownKey(event, means, typed, pedal)) return
      event.preventDefault()
      act(means)
    }
    document.addEventListener('keydown', pressed)
    return () => document.removeEventListener('keydown', pressed)
  }, [])
}

/** Whether what has the focus answers to this key itself. */
function ownKey(event: KeyboardEvent, means: KeyMeans, typed: string | null, pedal: string | null): boolean {
  const at = event.target instanceof Element ? event.target : null
  if (at === null) return false
  const field = at.closest('input, textarea, select')
  if (field === null) {
    // The pedal's own key does its work wherever the focus is.
    const presses = at.closest('button, a, summary') !== null && (event.key === 'Enter' || event.key === ' ')
    return presses && (pedal !== event.key || at.closest('[data-main]') !== null)
  }
  if (field.matches('input[name="figure"]')) {
    if (means.does === 'type' || means.does === 'erase') return true
    if (means.does === 'done') return event.key === 'Enter' || (event.key === ' ' && typed !== '' && typed !== null)
    return means.does === 'look' && typed !== '' && typed !== null
  }
  if (field.matches('input[type="radio"]')) return means.does === 'look' || means.does === 'done'
  return true
}
