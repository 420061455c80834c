/** What a key does at the bench: a keyboard, a pedal that types a key, and a gauge or wrench that types figures and Enter. */

export type KeyMeans =
  | { does: 'done' }
  | { does: 'undo' }
  | { does: 'binds' }
  | { does: 'look'; by: 1 | -1 }
  /** Part of a figure. */
  | { does: 'type'; text: string }
  | { does: 'erase' }

export type Pressed = { key: string; ctrlKey?: boolean; altKey?: boolean; metaKey?: boolean; repeat?: boolean }

/**
 * What a key means; null where it means nothing here and is the browser's. `typed`: what stands in the field for a figure, null where the step
 * takes none. `pedal`: the key that the pedal types. A key that is held down does its work once.
 */
export function keyMeans(pressed: Pressed, typed: string | null, pedal: string | null): KeyMeans | null {
  const { key, ctrlKey = false, altKey = false, metaKey = false, repeat = false } = pressed
  if (ctrlKey || altKey || metaKey) return null
  if (repeat && key !== 'Backspace' && !key.startsWith('Arrow')) return null
  if (pedal !== null && key === pedal) return { does: 'done' }
  if (key === 'Enter' || key === ' ') return { does: 'done' }
  if (key === 'Backspace') {
    if (typed !== null && typed !== '') return { does: 'erase' }
    return repeat ? null : { does: 'undo' }
  }
  if (key === 'b' || key === 'B') return { does: 'binds' }
  if (key === 'ArrowRight' || key === 'ArrowDown') return { does: 'look', by: 1 }
  if (key === 'ArrowLeft' || key === 'ArrowUp') return { does: 'look', by: -1 }
  if (typed !== null && /^[0-9.,]$/.test(key)) return { does: 'type', text: key }
  return null
}

/** Keys that would take something from the page, and that no pedal should type. */
const NO_PEDAL: ReadonlySet<string> = new Set(['Tab', 'Escape', 'Backspace', 'Shift', 'Control', 'Alt', 'Meta', 'Dead'])

/** Whether a pedal may stand for "done" with this key: not with one that means something else here. */
export function mayBePedal(key: string): boolean {
  const means = keyMeans({ key }, '', null)
  return !NO_PEDAL.has(key) && (means === null || means.does === 'done' || means.does === 'look')
}
