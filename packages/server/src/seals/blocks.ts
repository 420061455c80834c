/**
 * Where a file was changed: short hashes of its blocks. They only tell the place; that it was changed at all is told by the hash of the whole.
 * The first 64 blocks have 1 KiB, the next 64 twice as much, and so on, so that a small file is told closely and a large one in little room.
 */
import { createHash } from 'node:crypto'

const FIRST = 1_024
const ALIKE = 64
/** Hex digits kept of each block's SHA-256. */
const DIGITS = 8

/** The bytes `from` up to, but not with, `to`. */
export type Stretch = { from: number; to: number }

export type Marked = { bytes: number; sha256: string; blocks: string }

const sizeOf = (block: number): number => FIRST * 2 ** Math.floor(block / ALIKE)

/** Takes a file in pieces as they come. */
export function marking(): { take(piece: Uint8Array): void; end(): Marked } {
  const whole = createHash('sha256')
  let [bytes, blocks, left] = [0, '', sizeOf(0)]
  let block = createHash('sha256')
  const close = () => {
    blocks += block.digest('hex').slice(0, DIGITS)
    block = createHash('sha256')
    left = sizeOf(blocks.length / DIGITS)
  }
  return {
    take(piece) {
      whole.update(piece)
      bytes += piece.length
      for (let at = 0; at < piece.length; ) {
        const part = piece.subarray(at, at + left)
        block.update(part)
        at += part.length
        left -= part.length
        if (left === 0) close()
      }
    },
    end() {
      if (left < sizeOf(blocks.length / DIGITS)) close()
      return { bytes, sha256: whole.digest('hex'), blocks }
    },
  }
}

export function marksOf(bytes: Uint8Array): Marked {
  const marks = marking()
  marks.take(bytes)
  return marks.end()
}

/** Where the two differ, neighbours joined. */
export function differing(one: Marked, other: Marked): Stretch[] {
  const end = Math.max(one.bytes, other.bytes)
  const stretches: Stretch[] = []
  for (let i = 0, from = 0; from < end; i++) {
    const to = Math.min(from + sizeOf(i), end)
    const [a, b] = [one, other].map(({ blocks }) => blocks.slice(i * DIGITS, (i + 1) * DIGITS))
    const last = stretches.at(-1)
    if (a !== b) {
      if (last?.to === from) last.to = to
      else stretches.push({ from, to })
    }
    from = to
  }
  return stretches
}

/** `bytes 0 to 1023`, both ends counted from 0. */
export function stretchWords({ from, to }: Stretch): string {
  return to - from === 1 ? `byte ${from}` : `bytes ${from} to ${to - 1}`
}
