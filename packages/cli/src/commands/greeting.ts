import type { Running } from '@gripbook/server'

/** What the server says when it serves: where it is reached, and how the owner comes in. Ends with an empty line. */
export function greeting(running: Omit<Running, 'stop'>, hasPage: boolean): string {
  const { addresses, where, trust, ownerCode } = running
  const lines = [`Gripbook serves at ${addresses[0]}`]
  if (addresses.length > 1) lines.push(`  also ${addresses.slice(1).join(', ')}`)
  lines.push(`The record is kept at ${where}`)
  if (!hasPage) lines.push('The page is not built: npm run build, then start again.')
  if (trust !== null)
    lines.push(
      '',
      `A new device first has to trust this shop: open ${trust.address} on it.`,
      'The certificate’s fingerprint (SHA-256) must be:',
      ...fingerprintLines(trust.fingerprint),
    )
  const link = pairingLink(running, hasPage)
  if (link !== null) lines.push('', 'Open this to pair the owner’s device at once:', link)
  if (ownerCode !== null)
    lines.push(
      '',
      `${hasPage ? 'Or pair' : 'Pair'} the owner’s device with the code  ${ownerCode}`,
      'It counts once, until the next start.',
    )
  return `${lines.join('\n')}\n\n`
}

/** What pairs the owner's device when it is opened there; null when there is an owner, or no page to open. What stands after # is never sent to a server, so no log holds it. */
export function pairingLink(
  { addresses, ownerCode }: Pick<Running, 'addresses' | 'ownerCode'>,
  hasPage: boolean,
): string | null {
  return ownerCode === null || !hasPage ? null : `${addresses[0]}/#pair=${ownerCode}`
}

/** In two lines, as a phone shows it. */
function fingerprintLines(fingerprint: string): string[] {
  const pairs = fingerprint.split(':')
  return [pairs.slice(0, 16), pairs.slice(16)].map((half) => `  ${half.join(' ')}`)
}
