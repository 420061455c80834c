/**
 * SHA-256 (FIPS 180-4) in plain ECMAScript: it answers at once and works where a page is not trusted with WebCrypto (plain HTTP in the shop).
 * About 50 MB/s; a server hands in its own instead.
 */

/** The first 32 bits of the fractional parts of the cube roots (`K`) and square roots (`FIRST`) of the first primes. FIPS 180-4, 4.2.2 and 5.3.3. */
const PRIMES = primes(64)
const K = Uint32Array.from(PRIMES, (prime) => fraction(prime, 3))
const FIRST = Uint32Array.from(PRIMES.slice(0, 8), (prime) => fraction(prime, 2))

/** SHA-256 of bytes, as 64 lower-case hex digits. */
export function sha256(bytes: Uint8Array): string {
  const state = FIRST.slice()
  const words = new Uint32Array(64)
  const padded = withPadding(bytes)
  for (let at = 0; at < padded.byteLength; at += 64) {
    for (let i = 0; i < 16; i++) words[i] = padded.getUint32(at + 4 * i)
    mixIn(state, words)
  }
  return Array.from(state, (word) => word.toString(16).padStart(8, '0')).join('')
}

/** SHA-256 of a text written as UTF-8. The text has no half surrogate pair (`isWellFormedText`). */
export function sha256OfText(text: string): string {
  return sha256(utf8(text))
}

/** The message, a one bit, zeros, and the count of bits in 64 bits: a whole number of blocks of 64 bytes. */
function withPadding(bytes: Uint8Array): DataView {
  const padded = new Uint8Array((Math.floor((bytes.length + 8) / 64) + 1) * 64)
  padded.set(bytes)
  padded[bytes.length] = 0x80
  const view = new DataView(padded.buffer)
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 0x20000000))
  view.setUint32(padded.length - 4, bytes.length << 3)
  return view
}

/** One block, 6.2.2. The letters are the standard's. */
function mixIn(state: Uint32Array, w: Uint32Array): void {
  for (let t = 16; t < 64; t++) {
    const w2 = w[t - 2]!
    const w15 = w[t - 15]!
    const s1 = turned(w2, 17) ^ turned(w2, 19) ^ (w2 >>> 10)
    const s0 = turned(w15, 7) ^ turned(w15, 18) ^ (w15 >>> 3)
    w[t] = s1 + w[t - 7]! + s0 + w[t - 16]!
  }
  let [a, b, c, d, e, f, g, h] = state as unknown as [number, number, number, number, number, number, number, number]
  for (let t = 0; t < 64; t++) {
    const S1 = turned(e, 6) ^ turned(e, 11) ^ turned(e, 25)
    const T1 = (h + S1 + ((e & f) ^ (~e & g)) + K[t]! + w[t]!) | 0
    const S0 = turned(a, 2) ^ turned(a, 13) ^ turned(a, 22)
    const T2 = (S0 + ((a & b) ^ (a & c) ^ (b & c))) | 0
    h = g
    g = f
    f = e
    e = (d + T1) | 0
    d = c
    c = b
    b = a
    a = (T1 + T2) | 0
  }
  const end = [a, b, c, d, e, f, g, h]
  for (let i = 0; i < 8; i++) state[i] = state[i]! + end[i]!
}

function turned(word: number, by: number): number {
  return (word >>> by) | (word << (32 - by))
}

function primes(count: number): number[] {
  const found: number[] = []
  for (let n = 2; found.length < count; n++) if (found.every((prime) => n % prime !== 0)) found.push(n)
  return found
}

/** floor(2³² · root) without its whole part, exactly: the greatest r with r^degree ≤ n · 2^(32·degree), by halving. */
function fraction(n: number, degree: 2 | 3): number {
  const target = BigInt(n) << BigInt(32 * degree)
  let low = 0n
  let high = 1n << 40n
  while (high - low > 1n) {
    const middle = (low + high) / 2n
    if (middle ** BigInt(degree) <= target) low = middle
    else high = middle
  }
  return Number(low & 0xffffffffn)
}

function utf8(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length * 3)
  let used = 0
  for (let i = 0; i < text.length; i++) {
    const point = text.codePointAt(i)!
    if (point < 0x80) bytes[used++] = point
    else if (point < 0x800) {
      bytes[used++] = 0xc0 | (point >> 6)
      bytes[used++] = 0x80 | (point & 63)
    } else if (point < 0x10000) {
      bytes[used++] = 0xe0 | (point >> 12)
      bytes[used++] = 0x80 | ((point >> 6) & 63)
      bytes[used++] = 0x80 | (point & 63)
    } else {
      i++ // the other half of the pair
      bytes[used++] = 0xf0 | (point >> 18)
      bytes[used++] = 0x80 | ((point >> 12) & 63)
      bytes[used++] = 0x80 | ((point >> 6) & 63)
      bytes[used++] = 0x80 | (point & 63)
    }
  }
  return bytes.subarray(0, used)
}
