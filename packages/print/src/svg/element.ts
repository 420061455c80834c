import { must } from '@gripbook/engine'

export type Attributes = Record<string, string | number | undefined>

/** Characters that XML 1.0 allows; the rest (control characters, halves of a pair) become the replacement character. */
const NOT_XML =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what has to be found
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g

const MARKS: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }

/** Text made safe for XML, in content and in attributes. */
export function escapeXml(text: string): string {
  return text.replace(NOT_XML, '\ufffd').replace(/[&<>"']/g, (mark) => MARKS[mark]!)
}

/** A coordinate to a thousandth of a pixel. Not finite: a bug. */
export function coordinate(value: number): string {
  must(Number.isFinite(value), 'coordinate: not a place', { value })
  return String(Math.round(value * 1000) / 1000 + 0)
}

/** One SVG element. `children` are SVG already; text goes through `escapeXml` first. */
export function element(name: string, attributes: Attributes, ...children: string[]): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? coordinate(value) : escapeXml(value!)}"`)
    .join('')
  return children.length === 0 ? `<${name}${written}/>` : `<${name}${written}>${children.join('')}</${name}>`
}

export function line(x1: number, y1: number, x2: number, y2: number, attributes: Attributes): string {
  return element('line', { x1, y1, x2, y2, ...attributes })
}

export function rect(x: number, y: number, width: number, height: number, attributes: Attributes): string {
  return element('rect', { x, y, width: Math.max(0, width), height: Math.max(0, height), ...attributes })
}

/** A path through points; `closed` makes it an area. */
export function polyline(
  points: readonly (readonly [number, number])[],
  attributes: Attributes,
  closed = false,
): string {
  const d = points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${coordinate(x)} ${coordinate(y)}`).join('')
  return element('path', { d: closed ? `${d}Z` : d, ...attributes })
}
