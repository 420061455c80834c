/** The instruments of the shop: what stands behind the ± of every reading. */
import type { LengthUnit, Quantity } from '@gripbook/engine'
import type { Instrument, Settings } from '../device/settings.ts'

type Kept = Pick<Settings, 'instruments' | 'used'>

/** With the instrument at that place changed, or one more at the end; a new name goes along to where it was used last. */
export function withInstrument({ instruments, used }: Kept, at: number | null, to: Instrument): Kept {
  const was = at === null ? undefined : instruments[at]
  if (was === undefined) return { instruments: [...instruments, to], used }
  return {
    instruments: instruments.map((one) => (one === was ? to : one)),
    used: Object.fromEntries(Object.entries(used).map(([of, name]) => [of, name === was.name ? to.name : name])),
  }
}

/** Without it; what it was used for has no last instrument any more. */
export function withoutInstrument({ instruments, used }: Kept, at: number): Kept {
  const was = instruments[at]
  return {
    instruments: instruments.filter((one) => one !== was),
    used: Object.fromEntries(Object.entries(used).filter(([, name]) => name !== was?.name)),
  }
}

/** Readings name an instrument by its name, so no two have the same. */
export function nameTaken(instruments: readonly Instrument[], at: number | null, name: string): boolean {
  return instruments.some((one, i) => i !== at && one.name.toLowerCase() === name.trim().toLowerCase())
}

/** The one figure of what was typed as a ±; null for a range or a figure that has a ± of its own. */
export function singleFigure(quantity: Quantity): { value: number; unit?: LengthUnit } | null {
  if (typeof quantity === 'number') return { value: quantity }
  if (!('value' in quantity) || quantity.plusMinus !== undefined) return null
  const unit = quantity.unit
  return { value: quantity.value, ...(unit === 'mm' || unit === 'in' ? { unit } : {}) }
}

/** The two ends of what was typed as a range ("0 to 150", "0–150"), in the unit that it was typed in; null for anything else. */
export function rangeOf(typed: { state: string; value?: Quantity }): [number, number] | null {
  const { value } = typed
  if (typed.state !== 'read' || typeof value !== 'object' || !('atLeast' in value) || !('atMost' in value)) return null
  const { atLeast, atMost } = value
  return typeof atLeast === 'number' && typeof atMost === 'number' && atMost > atLeast ? [atLeast, atMost] : null
}

/** Whether a day of calibration has passed; both ISO 8601. */
export function isOut(until: string, now: string): boolean {
  return until < now.slice(0, 10)
}
