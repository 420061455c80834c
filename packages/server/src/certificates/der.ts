/**
 * The few forms of DER that a certificate is written in. Only writing: certificates are read by node:crypto.
 * @source ITU-T X.690 (2021), clauses 8 and 10
 */
export const TAG = {
  boolean: 0x01,
  integer: 0x02,
  bits: 0x03,
  octets: 0x04,
  oid: 0x06,
  utf8: 0x0c,
  utcTime: 0x17,
  generalizedTime: 0x18,
  sequence: 0x30,
  set: 0x31,
} as const

/** A value with its tag and its length in as few bytes as can be. */
export function der(tag: number, ...contents: Uint8Array[]): Buffer {
  const content = Buffer.concat(contents)
  return Buffer.concat([Buffer.from([tag, ...lengthOf(content.length)]), content])
}

export const sequence = (...contents: Uint8Array[]): Buffer => der(TAG.sequence, ...contents)

/** Context-specific tag: [number], primitive or holding other values. */
export const tagged = (number: number, constructed: boolean, ...contents: Uint8Array[]): Buffer =>
  der((constructed ? 0xa0 : 0x80) | number, ...contents)

/** An object identifier, "2.5.29.17". */
export function oid(dotted: string): Buffer {
  const [first, second, ...rest] = dotted.split('.').map(Number)
  return der(TAG.oid, Buffer.from([first! * 40 + second!, ...rest].flatMap(base128)))
}

/** A whole number of zero or more, given as bytes, the most significant first. */
export function integer(bytes: Uint8Array): Buffer {
  const first = bytes.findIndex((byte) => byte !== 0)
  const shortest = first === -1 ? Buffer.from([0]) : Buffer.from(bytes.subarray(first))
  return der(TAG.integer, ...(shortest[0]! >= 0x80 ? [Buffer.from([0])] : []), shortest)
}

/** Bits, the last `unused` of which do not count. */
export const bits = (content: Uint8Array, unused = 0): Buffer => der(TAG.bits, Buffer.from([unused]), content)

export const truth = (): Buffer => der(TAG.boolean, Buffer.from([0xff]))

/** A moment, to the second. @source RFC 5280, 4.1.2.5: two digits for the year up to 2049, four after */
export function time(moment: Date): Buffer {
  const digits = `${moment.toISOString().replace(/[-:T]|\..*/g, '')}Z`
  return moment.getUTCFullYear() < 2050
    ? der(TAG.utcTime, Buffer.from(digits.slice(2)))
    : der(TAG.generalizedTime, Buffer.from(digits))
}

function lengthOf(length: number): number[] {
  if (length < 0x80) return [length]
  const bytes = []
  for (let rest = length; rest > 0; rest >>>= 8) bytes.unshift(rest & 0xff)
  return [0x80 | bytes.length, ...bytes]
}

function base128(number: number): number[] {
  const bytes = [number & 0x7f]
  for (let rest = number >>> 7; rest > 0; rest >>>= 7) bytes.unshift((rest & 0x7f) | 0x80)
  return bytes
}
