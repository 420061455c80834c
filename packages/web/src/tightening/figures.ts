/** Plain numbers as hands type them. */

/** A number above zero; a decimal comma counts as a point. Null for everything else. */
export function numberOf(text: string): number | null {
  const plain = text.trim().replace(',', '.')
  if (!/^\d{1,12}(\.\d{1,9})?$|^\.\d{1,9}$/.test(plain)) return null
  const value = Number(plain)
  return value > 0 ? value : null
}

/** "5", or "2.1 to 6.2": the smaller one first. */
export function rangeOf(text: string): number | { atLeast: number; atMost: number } | null {
  const parts = text.split(/\s*(?:to|–|—|-|\.\.\.?|…)\s*/i)
  const [from, to] = parts.map((part) => numberOf(part))
  if (from === undefined || from === null || parts.length > 2) return null
  if (to === undefined) return from
  return to === null || to < from ? null : { atLeast: from, atMost: to }
}

/** A load in N: "8000", "8000 N" or "8 kN". */
export function loadOf(text: string): number | null {
  const found = /^(.*?)\s*(kN|N)?$/i.exec(text.trim())!
  const value = numberOf(found[1]!)
  return value === null ? null : value * (found[2]?.toLowerCase() === 'kn' ? 1000 : 1)
}

/** A share of the final torque as a figure from above 0 to 1: "60" and "60 %" are 0.6. */
export function shareOf(text: string): number | null {
  const value = numberOf(text.replace(/%\s*$/, ''))
  return value === null || value > 100 ? null : Math.round(value * 1e4) / 1e6
}
