import { isIP } from 'node:net'

/** Whether an address is that of this machine itself. */
export function isLoopback(ip: string): boolean {
  const plain = ip.replace(/^::ffff:/, '')
  return plain === '::1' || (isIP(plain) === 4 && plain.startsWith('127.'))
}
