/**
 * What the shop's authority may stand for: names and addresses that mean something in a shop's own network alone. It is written into its certificate, so
 * whoever steals its key cannot stand for a site of the world before the devices that trust it.
 * @source RFC 1918 (private IPv4), RFC 3927 and RFC 4291 2.5.6 (link local), RFC 1122 3.2.1.3 and RFC 4291 2.5.3 (loopback), RFC 4193 (unique local
 * IPv6), RFC 6762 ("local"), RFC 8375 ("home.arpa"), RFC 6761 ("localhost"); the form of the constraints: RFC 5280 4.2.1.10
 */
import { BlockList, isIP } from 'node:net'
import { sequence, tagged } from './der.ts'

type Range = readonly [address: string, prefix: number]

const RANGES: readonly Range[] = [
  ['10.0.0.0', 8],
  ['172.16.0.0', 12],
  ['192.168.0.0', 16],
  ['169.254.0.0', 16],
  ['127.0.0.0', 8],
  ['fc00::', 7],
  ['fe80::', 10],
  ['::1', 128],
]
const NAMES = ['local', 'home.arpa', 'localhost']
/** A constraint holds for all names below it too, and top-level domains are letters alone, or begin with "xn--": a machine called "dev" or "com". */
const LIKE_TOP_LEVEL = /^([a-z]+|xn--[^.]*)$/

/** The value of the extension "name constraints" for an authority on a machine of this name. One that could be a top-level domain is left to its name under "local". */
export function nameConstraints(host: string | null): Buffer {
  const own = host === null || LIKE_TOP_LEVEL.test(host) ? [] : [host]
  const names = [...new Set([...NAMES, ...own])]
  return sequence(tagged(0, true, ...names.map(nameSubtree), ...RANGES.map(rangeSubtree)))
}

/** Whether a certificate of the authority, as it was made, can hold this name (lower case); its certificate in DER. */
export function permitsName(authority: Buffer, name: string): boolean {
  const labels = name.split('.')
  return labels.some((_, i) => authority.includes(nameSubtree(labels.slice(i).join('.'))))
}

/** Whether a certificate of the authority, as it was made, can hold this address; its certificate in DER. */
export function permitsAddress(authority: Buffer, address: string): boolean {
  return RANGES.some((range) => inRange(address, range) && authority.includes(rangeSubtree(range)))
}

/** An IPv4 or IPv6 address as 4 or 16 bytes. */
export function addressBytes(address: string): Buffer {
  if (isIP(address) === 4) return Buffer.from(address.split('.').map(Number))
  // The URL parser knows every way in which an address can be written, and writes it in one: hexadecimal, with at most one "::".
  const [head, tail] = new URL(`http://[${address}]`).hostname.slice(1, -1).split('::')
  const groups = (part: string | undefined) => (part ? part.split(':').map((group) => Number.parseInt(group, 16)) : [])
  const [front, back] = [groups(head), groups(tail)]
  const between = Array<number>(8 - front.length - back.length).fill(0)
  return Buffer.from([...front, ...between, ...back].flatMap((group) => [group >> 8, group & 0xff]))
}

function nameSubtree(name: string): Buffer {
  return sequence(tagged(2, false, Buffer.from(name, 'latin1')))
}

function rangeSubtree([address, prefix]: Range): Buffer {
  const bytes = addressBytes(address)
  const mask = bytes.map((_, i) => 0xff & ~(0xff >> Math.min(8, Math.max(0, prefix - 8 * i))))
  return sequence(tagged(7, false, bytes, mask))
}

function inRange(address: string, [start, prefix]: Range): boolean {
  const family = isIP(start) === 4 ? 'ipv4' : 'ipv6'
  if (`ipv${isIP(address)}` !== family) return false
  const list = new BlockList()
  list.addSubnet(start, prefix, family)
  return list.check(address, family)
}
