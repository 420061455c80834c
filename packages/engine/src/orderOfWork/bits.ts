/** Sets of whole numbers from 0 up, as bits: what is done, what must be done before. */
export type Bits = Uint32Array

export const emptyBits = (count: number): Bits => new Uint32Array(Math.max(1, Math.ceil(count / 32)))

export const hasBit = (bits: Bits, at: number): boolean => ((bits[at >>> 5]! >>> (at & 31)) & 1) === 1

export function setBit(bits: Bits, at: number): void {
  bits[at >>> 5] = bits[at >>> 5]! | (1 << (at & 31))
}

/** Takes all of `more` in. */
export function joinBits(bits: Bits, more: Bits): void {
  for (let i = 0; i < bits.length; i += 1) bits[i] = bits[i]! | more[i]!
}

/** True when every member of `part` is in `whole`. */
export function within(part: Bits, whole: Bits): boolean {
  for (let i = 0; i < part.length; i += 1) if ((part[i]! & ~whole[i]!) !== 0) return false
  return true
}

export function meet(a: Bits, b: Bits): boolean {
  for (let i = 0; i < a.length; i += 1) if ((a[i]! & b[i]!) !== 0) return true
  return false
}
