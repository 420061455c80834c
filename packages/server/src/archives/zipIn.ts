/**
 * Reads zip files that may have been made to harm: names are looked at, sizes are those that really come out, nothing is written to a disk. Whether the content is
 * what it was is not decided here: a zip does not notice a flipped bit, the hashes of the manifest do.
 */
import { createHash } from 'node:crypto'
import type { Readable } from 'node:stream'
import yauzl from 'yauzl'

/** What is wrong with a file as a zip, in words. */
export class BadZip extends Error {}

export type ZipLimits = { files: number; bytes: number }

export type Zip = {
  names: readonly string[]
  /** The whole of a file; refused when it is larger than `most`. */
  read(name: string, most: number): Promise<Buffer>
  /** The bytes of a file as they come out. */
  pieces(name: string): AsyncGenerator<Buffer>
  /** The hash of a file, and how many bytes it has. */
  hashOf(name: string): Promise<{ sha256: string; bytes: number }>
  close(): void
}

const NAME = /^[A-Za-z0-9][A-Za-z0-9._-]*(\/[A-Za-z0-9][A-Za-z0-9._-]*)*$/
const UNIX = 3
const KIND = 0o170000
const REGULAR = 0o100000
const IS_ENCRYPTED = 1

export async function openZip(path: string, limits: ZipLimits): Promise<Zip> {
  const file = await yauzl.openPromise(path, { strictFileNames: true, autoClose: false }).catch(refuse)
  const entries = new Map<string, yauzl.Entry>()
  let left = limits.bytes
  const close = () => file.close()
  try {
    if (file.entryCount > limits.files)
      throw new BadZip(`it holds ${file.entryCount} files, ${limits.files} at most are taken`)
    for await (const entry of file.eachEntry()) {
      const why = whyNot(entry, entries)
      if (why !== null) throw new BadZip(`${JSON.stringify(entry.fileName.slice(0, 100))} ${why}`)
      entries.set(entry.fileName, entry)
    }
  } catch (error) {
    close()
    return refuse(error)
  }

  async function* pieces(name: string): AsyncGenerator<Buffer> {
    const entry = entries.get(name)
    if (entry === undefined) throw new BadZip(`${name} is missing`)
    try {
      const stream: Readable = await file.openReadStreamPromise(entry)
      for await (const piece of stream as AsyncIterable<Buffer>) {
        left -= piece.length
        if (left < 0) throw new BadZip(`more than ${limits.bytes} bytes come out of it`)
        yield piece
      }
    } catch (error) {
      refuse(error)
    }
  }

  return {
    names: [...entries.keys()],
    close,
    pieces,
    async hashOf(name) {
      const hash = createHash('sha256')
      let bytes = 0
      for await (const piece of pieces(name)) {
        hash.update(piece)
        bytes += piece.length
      }
      return { sha256: hash.digest('hex'), bytes }
    },
    async read(name, most) {
      const read: Buffer[] = []
      let bytes = 0
      for await (const piece of pieces(name)) {
        bytes += piece.length
        if (bytes > most) throw new BadZip(`${name} holds more than ${most} bytes`)
        read.push(piece)
      }
      return Buffer.concat(read)
    },
  }
}

function whyNot(entry: yauzl.Entry, known: ReadonlyMap<string, yauzl.Entry>): string | null {
  if (!NAME.test(entry.fileName) || entry.fileName.length > 200) return 'is no name that an archive has'
  if (known.has(entry.fileName)) return 'is there twice'
  if ((entry.generalPurposeBitFlag & IS_ENCRYPTED) !== 0) return 'is encrypted'
  const kind = (entry.externalFileAttributes >>> 16) & KIND
  if (entry.versionMadeBy >> 8 === UNIX && kind !== 0 && kind !== REGULAR) return 'is no plain file'
  return null
}

/** A library's words for a file that it cannot read become ours; a disk that fails stays what it is. */
function refuse(error: unknown): never {
  if (error instanceof BadZip) throw error
  const { code, message } = error as NodeJS.ErrnoException
  if (code !== undefined && /^E[A-Z]+$/.test(code)) throw error
  // yauzl, of whatever has no end of a zip file: text, a picture, an archive that a full stick has cut
  const why = /^End of central directory record signature not found/.test(message)
    ? 'its end is not that of a zip file: cut off, or another kind of file'
    : message
  throw new BadZip(`it cannot be read as a zip file (${why})`)
}
