/** Where one is in the page, as an address that can be kept, sent and opened again without signal. */
export type BookName = 'shop' | 'practice'

export type Route =
  | { at: 'units' }
  | { at: 'take-in' }
  | { at: 'settings' }
  | { at: 'unit'; book: BookName; unit: string }
  | { at: 'story'; book: BookName; unit: string }
  | { at: 'parts'; book: BookName; unit: string }
  | { at: 'finish'; book: BookName; unit: string }
  | { at: 'figures'; book: BookName; unit: string }
  | { at: 'face'; book: BookName; unit: string; face: string; hole?: string }
  | { at: 'tray'; book: BookName; unit: string; face: string }
  | { at: 'readings'; book: BookName; unit: string; face: string; of?: string }
  | { at: 'tightening'; book: BookName; unit: string; face: string }
  | { at: 'bench'; book: BookName; unit: string; face: string }

/** The route of a path; one that leads nowhere leads to the list of units. */
export function readRoute(path: string): Route {
  const [first, ...rest] = path.split('/').filter(Boolean).map(decoded)
  if (first === 'take-in' || first === 'settings') return { at: first }
  const book: BookName = first === 'practice' ? 'practice' : 'shop'
  const [what, unit, place, face, more, of] = first === 'practice' ? rest : [first, ...rest]
  if (what !== 'unit' || !unit) return { at: 'units' }
  if (isOfUnit(place)) return { at: place, book, unit }
  if (place !== 'face' || !face) return { at: 'unit', book, unit }
  if (more === 'tray' || more === 'tightening' || more === 'bench') return { at: more, book, unit, face }
  if (more === 'readings') return { at: 'readings', book, unit, face, ...(of ? { of } : {}) }
  if (more === 'hole' && of) return { at: 'face', book, unit, face, hole: of }
  return { at: 'face', book, unit, face }
}

/** The path of a route: `/unit/…/face/pump-cover/hole/3`. */
export function pathOf(route: Route): string {
  if (route.at === 'units') return '/'
  if (route.at === 'take-in' || route.at === 'settings') return `/${route.at}`
  const parts = ['unit', route.unit]
  if (isOfUnit(route.at)) parts.push(route.at)
  if ('face' in route) parts.push('face', route.face)
  if (route.at === 'tray' || route.at === 'tightening' || route.at === 'bench') parts.push(route.at)
  if (route.at === 'readings') parts.push('readings', ...(route.of === undefined ? [] : [route.of]))
  if (route.at === 'face' && route.hole !== undefined) parts.push('hole', route.hole)
  return `${route.book === 'practice' ? '/practice' : ''}/${parts.map(encodeURIComponent).join('/')}`
}

/** Where "back" leads: one step out, whatever way one came. */
export function outOf(route: Route): Route {
  const onFace = route.at === 'tray' || route.at === 'readings' || route.at === 'tightening' || route.at === 'bench'
  if (onFace || (route.at === 'face' && route.hole !== undefined))
    return { at: 'face', book: route.book, unit: route.unit, face: route.face }
  if (route.at === 'face' || ('unit' in route && isOfUnit(route.at)))
    return { at: 'unit', book: route.book, unit: route.unit }
  return { at: 'units' }
}

/** Screens that are about a whole unit, one step in from it. */
const OF_UNIT = ['story', 'parts', 'finish', 'figures'] as const

function isOfUnit(place: string | undefined): place is (typeof OF_UNIT)[number] {
  return OF_UNIT.some((one) => one === place)
}

/** A broken % in an address is no reason to fail. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part)
  } catch {
    return part
  }
}
