/** Writes zip files: piece by piece, in the order given, with one date for all, so that the same content gives the same bytes. */
import { PassThrough, type Readable, Readable as Reading } from 'node:stream'
import { ZipFile } from 'yazl'

export type FileIn = { name: string; bytes: Buffer | AsyncIterable<Buffer | string> }

/** The first date that a zip can hold. */
const DATE = new Date(1980, 0, 1)
/** Regular files, readable by their user. */
const MODE = 0o100600

/** Files are asked for one after the other, each when the one before has gone out; what fails while they are made ends the stream with that error. */
export function zipOf(files: AsyncIterable<FileIn>): Readable {
  const zip = new ZipFile()
  const out = new PassThrough()
  zip.on('error', (error: Error) => out.destroy(error))
  zip.outputStream.on('error', (error) => out.destroy(error)).pipe(out)
  void add(zip, files).catch((error: Error) => out.destroy(error))
  return out
}

async function add(zip: ZipFile, files: AsyncIterable<FileIn>): Promise<void> {
  for await (const { name, bytes } of files) {
    const options = { mtime: DATE, mode: MODE }
    // Pictures do not get smaller.
    const compress = !name.endsWith('.jpg')
    if (Buffer.isBuffer(bytes)) zip.addBuffer(bytes, name, { ...options, compress })
    else {
      const stream = Reading.from(bytes)
      const gone = new Promise<void>((done, failed) =>
        stream.once('close', () => (stream.errored ? failed(stream.errored) : done())),
      )
      zip.addReadStream(stream, name, { ...options, compress })
      await gone
    }
  }
  zip.end()
}
