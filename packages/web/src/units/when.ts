/** When something was, as one says it: "today 14:02", "yesterday 9:30", "12 Mar 2026". Times are ISO 8601; without a zone they are told in the browser's. */
const DAY = 86_400_000

export type Place = { language: string; timeZone?: string }

/** `now`: ms since 1970. */
export function sayWhen(at: string, now: number, place: Place): string {
  const ago = dayNumber(now, place.timeZone) - dayNumber(Date.parse(at), place.timeZone)
  if (ago !== 0 && ago !== 1) return sayDay(at, place)
  const day = new Intl.RelativeTimeFormat(place.language, { numeric: 'auto' }).format(0 - ago, 'day')
  return `${day} ${sayTime(at, place)}`
}

export function sayTime(at: string, { language, timeZone }: Place): string {
  return formatter(language, { hour: '2-digit', minute: '2-digit' }, timeZone).format(new Date(at))
}

/** "12 Mar 2026"; `full`: "Thursday, 12 March 2026". */
export function sayDay(at: string, { language, timeZone }: Place, dateStyle: 'medium' | 'full' = 'medium'): string {
  return formatter(language, { dateStyle }, timeZone).format(new Date(at))
}

/** A day of the calendar, "2026-03-12", as "12 Mar 2026": the same in every zone. */
export function sayCalendarDay(day: string, language: string): string {
  return sayDay(day, { language, timeZone: 'UTC' })
}

/** Days since 1970 by the calendar of the zone: two times of one day have the same. */
export function dayNumber(time: number, timeZone?: string): number {
  const parts = formatter('en', { year: 'numeric', month: 'numeric', day: 'numeric' }, timeZone).formatToParts(time)
  const part = (type: string) => Number(parts.find((one) => one.type === type)?.value)
  return Date.UTC(part('year'), part('month') - 1, part('day')) / DAY
}

const made = new Map<string, Intl.DateTimeFormat>()

/** Making one takes longer than all that a list of a hundred lines says with it. */
function formatter(language: string, options: Intl.DateTimeFormatOptions, timeZone?: string): Intl.DateTimeFormat {
  const key = `${language} ${timeZone} ${JSON.stringify(options)}`
  const known = made.get(key)
  if (known !== undefined) return known
  const one = new Intl.DateTimeFormat(language, timeZone === undefined ? options : { ...options, timeZone })
  made.set(key, one)
  return one
}
