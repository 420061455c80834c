import { deflateSync } from 'node:zlib'

/** A grey PNG of one shade. @source W3C PNG specification, chunks IHDR, IDAT, IEND */
export function plainPicture(width: number, height: number): Uint8Array {
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head[8] = 8
  const rows = Buffer.alloc(height * (width + 1), 0x90)
  for (let y = 0; y < height; y++) rows[y * (width + 1)] = 0
  return new Uint8Array(
    Buffer.concat([
      Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
      chunk('IHDR', head),
      chunk('IDAT', deflateSync(rows)),
      chunk('IEND', Buffer.alloc(0)),
    ]),
  )
}

/** CRC-32 bit by bit. @source ISO 3309, polynomial 0xedb88320 */
function crc32(bytes: Uint8Array): number {
  let sum = ~0
  for (const byte of bytes) {
    sum ^= byte
    for (let bit = 0; bit < 8; bit++) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0)
  }
  return ~sum >>> 0
}

function chunk(name: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(name, 'latin1'), data])
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)]
  length.writeUInt32BE(data.length)
  sum.writeUInt32BE(crc32(body))
  return Buffer.concat([length, body, sum])
}
