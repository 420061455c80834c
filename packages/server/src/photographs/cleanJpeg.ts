/**
 * Whether a file is a JPEG with a picture in it and nothing else: no place, no comment, no second picture, nothing before or behind.
 * The form is that of ITU-T T.81 (JPEG), annex B, and JFIF 1.02; from memory, not held beside the text of the standards.
 */
const SOI = 0xd8
const EOI = 0xd9
const SOS = 0xda
const DQT = 0xdb
const DHT = 0xc4
const DRI = 0xdd
const BASELINE = 0xc0
const EXTENDED = 0xc1
const PROGRESSIVE = 0xc2
const APP0 = 0xe0
const APP14 = 0xee

/** What a file may repeat. A picture needs four tables of quantisation at most; each scan of a progressive one may bring its own codes. */
const MOST_SCANS = 64
const MOST_TABLES = 4

type Found = { frames: number; scans: number; quantisation: number; codes: number; jfif: number; adobe: number }

/** Never throws for any content. What could be hidden inside the coded picture itself is not looked for. */
export function isCleanJpeg(bytes: Uint8Array): boolean {
  if (bytes[0] !== 0xff || bytes[1] !== SOI) return false
  const found: Found = { frames: 0, scans: 0, quantisation: 0, codes: 0, jfif: 0, adobe: 0 }
  let at = 2
  for (;;) {
    if (bytes[at] !== 0xff) return false
    const marker = bytes[at + 1]
    if (marker === EOI)
      return at + 2 === bytes.length && found.frames === 1 && found.scans > 0 && found.quantisation > 0
    const length = ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0)
    const end = at + 2 + length
    if (marker === undefined || length < 2 || end > bytes.length) return false
    if (!isPartOfPicture(marker, bytes.subarray(at + 4, end), found, at === 2)) return false
    at = marker === SOS ? endOfScan(bytes, end) : end
  }
}

function isPartOfPicture(marker: number, body: Uint8Array, found: Found, isFirst: boolean): boolean {
  switch (marker) {
    case APP0:
      return isFirst && ++found.jfif === 1 && isJfif(body)
    case APP14:
      return found.frames === 0 && ++found.adobe === 1 && body.length === 12 && begins(body, 'Adobe')
    case DQT:
      return found.frames === 0 && isQuantisation(body, found)
    case DHT:
      return isCodes(body, found)
    case DRI:
      return found.scans === 0 && body.length === 2
    case BASELINE:
    case EXTENDED:
    case PROGRESSIVE:
      return ++found.frames === 1 && isFrame(body)
    case SOS:
      return found.frames === 1 && ++found.scans <= MOST_SCANS && body.length === 4 + 2 * (body[0] ?? 0)
    default:
      return false
  }
}

/** "JFIF", version, density, and a thumbnail of 0 × 0. */
function isJfif(body: Uint8Array): boolean {
  return body.length === 14 && begins(body, 'JFIF\0') && body[12] === 0 && body[13] === 0
}

function begins(body: Uint8Array, text: string): boolean {
  return [...text].every((letter, i) => body[i] === letter.charCodeAt(0))
}

/** 8 bits, width and height, one component or three, three bytes for each. */
function isFrame(body: Uint8Array): boolean {
  const [bits, highY = 0, lowY = 0, highX = 0, lowX = 0, components = 0] = body
  if (bits !== 8 || (components !== 1 && components !== 3)) return false
  return body.length === 6 + 3 * components && highY + lowY > 0 && highX + lowX > 0
}

/** Tables of 64 figures of one byte or two. */
function isQuantisation(body: Uint8Array, found: Found): boolean {
  let at = 0
  while (at < body.length) {
    const precision = body[at]! >> 4
    if (precision > 1 || ++found.quantisation > MOST_TABLES) return false
    at += 1 + 64 * (precision + 1)
  }
  return at === body.length && at > 0
}

/** Tables of sixteen counts and as many bytes as these add up to. */
function isCodes(body: Uint8Array, found: Found): boolean {
  let at = 0
  while (at < body.length) {
    if (at + 17 > body.length || ++found.codes > MOST_SCANS * MOST_TABLES) return false
    const codes = body.subarray(at + 1, at + 17).reduce((sum, count) => sum + count, 0)
    if (codes === 0 || codes > 256) return false
    at += 17 + codes
  }
  return at === body.length && at > 0
}

/** Index of the marker behind the coded picture: a 0xff there is followed by 0, or is a restart. */
function endOfScan(bytes: Uint8Array, from: number): number {
  let at = from
  for (;;) {
    at = bytes.indexOf(0xff, at)
    if (at < 0) return bytes.length
    const next = bytes[at + 1]
    const goesOn = next === 0 || (next !== undefined && next >= 0xd0 && next <= 0xd7)
    if (!goesOn) return at
    at += 2
  }
}
