/**
 * Tokens, codes and devices' secrets are kept as their SHA-256 alone. A slow hash is for passwords, which people choose: these are made by chance, with
 * 256 bits, or 60 bits and a life of ten minutes, in which nobody tries a noticeable part of them.
 */
import { timingSafeEqual } from 'node:crypto'
import { sha256 } from '../sha256.ts'

/** SHA-256 of a secret, as 64 hex digits. */
export function hashed(secret: string): string {
  return sha256(secret)
}

/** Compares two hashes in a time that does not depend on where they differ. */
export function sameHash(one: string, other: string): boolean {
  const bytes = new TextEncoder()
  return timingSafeEqual(bytes.encode(one), bytes.encode(other))
}

/** A random UUID of version 4. */
export function newId(random: (bytes: number) => Buffer): string {
  const bytes = random(16)
  bytes[6] = (bytes[6]! & 0x0f) | 0x40
  bytes[8] = (bytes[8]! & 0x3f) | 0x80
  return bytes.toString('hex').replace(/^(.{8})(.{4})(.{4})(.{4})/, '$1-$2-$3-$4-')
}
