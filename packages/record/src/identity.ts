/** How what identifies something is written: ids (RFC 9562, lower case) and SHA-256 in 64 lower-case hex digits. */
export const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/
export const SHA256_HEX = /^[0-9a-f]{64}$/

export function isUuid(value: unknown): value is string {
  return typeof value === 'string' && UUID.test(value)
}
