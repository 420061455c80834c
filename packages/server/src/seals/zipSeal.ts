/**
 * The seal of a zip file: its comment, the last thing in it. What is in an archive is proven by the hashes of its manifest; the seal covers also what they
 * do not, names, dates and lengths that a zip holds twice or that nobody reads, so that no byte changes unseen.
 */
import { open } from 'node:fs/promises'
import { Transform } from 'node:stream'
import { differing, type Marked, marking, type Stretch } from './blocks.ts'

/** The end of a zip's directory without a comment. @source PKWARE APPNOTE 4.3.16 */
const END = { bytes: 22, signature: 0x06054b50, comment: 20 }
const MOST_COMMENT = 0xffff
const BEGIN = 'gripbook-seal/1 '
const SEAL = /^gripbook-seal\/1 (\d+) ([0-9a-f]{64}) ((?:[0-9a-f]{8})*)$/
const PIECE = 1 << 20

/** Puts the seal into a zip that goes by and has no comment. */
export function zipSealing(): Transform {
  const marks = marking()
  let held: Buffer = Buffer.alloc(0)
  return new Transform({
    transform(piece: Buffer, _encoding, done) {
      const all = Buffer.concat([held, piece])
      const out = all.subarray(0, Math.max(0, all.length - END.bytes))
      held = all.subarray(out.length)
      marks.take(out)
      done(null, out)
    },
    flush(done) {
      const end = Buffer.from(held)
      if (end.length < END.bytes || end.readUInt32LE(0) !== END.signature || end.readUInt16LE(END.comment) !== 0)
        return done(null, end)
      const before = end.subarray(0, END.comment)
      marks.take(before)
      const comment = Buffer.from(textOf(marks.end()))
      const length = Buffer.alloc(2)
      length.writeUInt16LE(comment.length)
      done(null, Buffer.concat([before, length, comment]))
    },
  })
}

function textOf({ bytes, sha256, blocks }: Marked): string {
  return `${BEGIN}${bytes} ${sha256} ${blocks}`
}

/** `none`: it has no comment, as Gripbook wrote them before there were seals, or is no zip at all. `seal`: the seal itself was changed. */
export type ZipSeal = { is: 'none' } | { is: 'whole' } | { is: 'changed'; places: Stretch[]; seal: boolean }

/** Holds a zip file against its seal. */
export async function checkZipSeal(path: string): Promise<ZipSeal> {
  const file = await open(path, 'r')
  try {
    const { size } = await file.stat()
    const tail = Buffer.alloc(Math.min(size, MOST_COMMENT + END.bytes))
    await readAll(file, tail, size - tail.length)
    const at = endIn(tail)
    if (at === null) return { is: 'none' }
    const from = size - tail.length + at
    if (from + END.bytes === size && tail.readUInt16LE(at + END.comment) === 0) return { is: 'none' }
    const comment = { from: from + END.comment, to: size }
    const inTail = tail.subarray(at + END.bytes)
    const read = SEAL.exec(inTail.toString('latin1'))
    if (read === null) return { is: 'changed', places: [comment], seal: true }
    const marks = marking()
    const piece = Buffer.alloc(Math.min(PIECE, comment.from))
    for (let done = 0; done < comment.from; ) {
      const part = piece.subarray(0, Math.min(piece.length, comment.from - done))
      await readAll(file, part, done)
      marks.take(part)
      done += part.length
    }
    const found = marks.end()
    const said: Marked = { bytes: Number(read[1]), sha256: read[2]!, blocks: read[3]! }
    const places = differing(said, found)
    const isSame = said.sha256 === found.sha256 && said.bytes === found.bytes
    const isLong = tail.readUInt16LE(at + END.comment) === inTail.length
    if (isSame && places.length === 0 && isLong) return { is: 'whole' }
    return isSame || places.length === 0
      ? { is: 'changed', places: [comment], seal: true }
      : { is: 'changed', places, seal: false }
  } finally {
    await file.close()
  }
}

/** Where the end of the directory begins: before the seal if there is one, else by its signature. */
function endIn(tail: Buffer): number | null {
  const seal = tail.lastIndexOf(BEGIN)
  if (seal >= END.bytes) return seal - END.bytes
  for (let at = tail.length - END.bytes; at >= 0; at--) if (tail.readUInt32LE(at) === END.signature) return at
  return null
}

async function readAll(file: Awaited<ReturnType<typeof open>>, into: Buffer, from: number): Promise<void> {
  for (let done = 0; done < into.length; ) {
    const { bytesRead } = await file.read(into, done, into.length - done, from + done)
    if (bytesRead === 0) throw new Error('the file became shorter while it was read')
    done += bytesRead
  }
}
