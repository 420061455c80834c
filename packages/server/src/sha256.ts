import { hash } from 'node:crypto'

/** SHA-256 of bytes, or of a text as UTF-8, as 64 lower-case hex digits. */
export function sha256(data: string | Uint8Array): string {
  return hash('sha256', data)
}
