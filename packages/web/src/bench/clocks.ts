/** Clocks that run on every device: sealant that is open, plates that soak, a part that was warmed. */
import type { FoldedUnit } from '@gripbook/record'

export const CLOCK_SORTS = ['sealant', 'soaking', 'warmed', 'other'] as const
export type ClockSort = (typeof CLOCK_SORTS)[number]

export type Clock = {
  clock: string
  what: string
  face: string | null
  minutes: number
  /** ms that are left; below 0 it has run out. */
  left: number
}

/** Before this no entry was made: what is on its way to the disk has no time yet. */
const NO_TIME_YET = Date.UTC(2000, 0, 1)

/** Clocks that are running, the one that ends first at the head. `now` in ms since 1970. */
export function runningClocks({ things }: Pick<FoldedUnit, 'things'>, now: number): Clock[] {
  return Object.entries(things.clock)
    .flatMap(([clock, { what, minutes, face, running }]): Clock[] => {
      if (running?.value !== true || typeof minutes?.value !== 'number') return []
      const at = Date.parse(running.at)
      // Another device's clock may be ahead of this one: nothing has run before it was started.
      const run = at < NO_TIME_YET ? 0 : Math.max(0, now - at)
      const place = typeof face?.value === 'string' ? face.value : null
      const said = typeof what?.value === 'string' ? what.value : clock
      return [{ clock, what: said, face: place, minutes: minutes.value, left: minutes.value * 60_000 - run }]
    })
    .sort((a, b) => a.left - b.left)
}

/** "4:07", "1:02:30", "+0:45" for one that ran out so long ago. */
export function clockText(left: number): string {
  const over = left < 0
  const seconds = over ? Math.floor(-left / 1000) : Math.ceil(left / 1000)
  const [h, m, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60]
  const two = (figure: number) => String(figure).padStart(2, '0')
  return `${over ? '+' : ''}${h > 0 ? `${h}:${two(m)}` : m}:${two(s)}`
}

export type ClockState = 'running' | 'soon' | 'over'

/** Soon: less than a fifth of it is left, and less than five minutes. */
export function clockState({ left, minutes }: Pick<Clock, 'left' | 'minutes'>): ClockState {
  if (left <= 0) return 'over'
  return left < minutes * 12_000 && left < 300_000 ? 'soon' : 'running'
}

/** An id that no clock of the unit ever had: "sealant 2". */
export function nextClock(sort: ClockSort, entries: readonly { type: string; body: unknown }[]): string {
  const taken = new Set(
    entries.flatMap(({ type, body }) => (type === 'clock-started' ? [(body as { clock?: unknown }).clock] : [])),
  )
  let number = 1
  while (taken.has(`${sort} ${number}`)) number++
  return `${sort} ${number}`
}

/** Minutes as they were typed: "5", "2,5". Null for none, and for more than a week. */
export function readMinutes(text: string): number | null {
  const minutes = /^\d{1,5}(?:[.,]\d{1,2})?$/.test(text.trim()) ? Number(text.trim().replace(',', '.')) : 0
  return minutes > 0 && minutes <= 10_080 ? minutes : null
}
