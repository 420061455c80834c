import {
  type Face,
  type Kind,
  lengthTolerance,
  type Quantity,
  readThread,
  standardLengths,
  type Unit,
} from '@gripbook/engine'

/** Every kind that a face can draw on, by its id: its own and the shared tray's. */
export function trayOf(unit: Unit, face: Face): Map<string, Kind> {
  return new Map([...(face.kinds ?? []), ...(unit.kinds ?? [])].map((kind) => [kind.id, kind]))
}

/**
 * A bolt as the bench calls it: "M6×45", "1/4-20×1.5 in", "M6" where the length is unknown. A metric length that was measured goes by the
 * standard length that it is within its product's tolerance.
 */
export function sizeName(kind: Kind): string {
  const thread = typeof kind.thread === 'string' ? kind.thread : kind.thread.join('/')
  const length = standardLength(kind) ?? lengthName(kind.length)
  return `${thread}${length === '' ? '' : `×${length}`}`
}

function standardLength({ thread, length }: Kind): string | undefined {
  if (typeof length !== 'number' && (length === undefined || !('value' in length))) return undefined
  const { value, plusMinus = 0, unit = 'mm' } = typeof length === 'number' ? { value: length } : length
  const read = readThread(typeof thread === 'string' ? thread : (thread[0] ?? ''))
  if (unit !== 'mm' || !read.ok || read.value.profile !== 'metric') return undefined
  const nearest = standardLengths(read.value).sort((a, b) => Math.abs(a - value) - Math.abs(b - value))[0]
  if (nearest === undefined || Math.abs(nearest - value) > lengthTolerance(nearest) + plusMinus) return undefined
  return String(nearest)
}

/** The id and the size: "b1 (M6×45)". An id that says the size already stands alone. */
export function boltName(id: string, tray: ReadonlyMap<string, Kind>): string {
  const kind = tray.get(id)
  if (!kind) return id
  const size = sizeName(kind)
  return plain(id).includes(plain(size)) ? id : `${id}\u00a0(${size.replaceAll(' ', '\u00a0')})`
}

function plain(text: string): string {
  return text.toLowerCase().replace(/[×*\s]/g, 'x')
}

function lengthName(length: Quantity | undefined): string {
  if (length === undefined) return ''
  if (typeof length === 'number') return figure(length)
  const unit = length.unit === 'in' ? ' in' : ''
  if ('value' in length) return figure(length.value) + unit
  if ('nominal' in length) return figure(length.nominal) + unit
  const { atLeast, atMost } = length
  if (atLeast !== undefined && atMost !== undefined) return `${figure(atLeast)}–${figure(atMost)}${unit}`
  return atLeast === undefined ? `up to ${figure(atMost!)}${unit}` : `${figure(atLeast)}+${unit}`
}

function figure(value: number): string {
  return String(Number(value.toFixed(3)))
}
