/**
 * The codes that let a device in: 12 characters of Crockford's base 32, 60 bits of chance, shown as XXXX-XXXX-XXXX.
 * @source Douglas Crockford, "Base 32": the alphabet without I, L, O and U, and what is read for what
 */
const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ'
const LENGTH = 12

/** A new code. 32 divides 256, so every character is as likely as any other. */
export function newCode(random: (bytes: number) => Buffer): string {
  return shown(Array.from(random(LENGTH), (byte) => ALPHABET[byte % ALPHABET.length]).join(''))
}

/** The code as it was made, from what a person typed: small letters, spaces and hyphens do not matter, O is 0, I and L are 1. Null when it cannot be one. */
export function readCode(typed: string): string | null {
  const code = typed
    .replace(/[\s\p{Pd}]/gu, '')
    .toUpperCase()
    .replaceAll('O', '0')
    .replace(/[IL]/g, '1')
  return code.length === LENGTH && [...code].every((letter) => ALPHABET.includes(letter)) ? shown(code) : null
}

function shown(code: string): string {
  return code.match(/.{4}/g)!.join('-')
}
