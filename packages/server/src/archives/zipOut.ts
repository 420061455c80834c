/** Writes zip files: piece by piece, in the order given, with one date for all, so that the same content gives the same bytes. */
import { PassThrough, type Readable, Readable as Reading } from 'node:stream'
import { ZipFile } from 'yazl'
import { zipSealing } from '../seals/zipSeal.ts'

export type FileIn = { name: string; bytes: Buffer | AsyncIterable<Buffer | string> }

/** The first date that a zip can hold, in the form that has no time zone: the hour of the place where it is made. */
const date = () => ({ mtime: new Date(1980, 0, 1), forceDosTimestamp: true })
/** Regular files, readable by their user. */
const MODE = 0o100600

/**
 * Files are asked for one after the other, each when the one before has gone out, so that a slow reader does not fill the memory; what fails while they are made
 * ends the stream with that error, and a reader who goes away ends the making.
 */
export function zipOf(files: AsyncIterable<FileIn>): Readable {
  const zip = new ZipFile()
  const out = new PassThrough()
  const sealing = zipSealing()
  zip.on('error', (error: Error) => out.destroy(error))
  zip.outputStream.on('error', (error) => out.destroy(error)).pipe(sealing)
  sealing.on('error', (error) => out.destroy(error)).pipe(out)
  void add(zip, files, out).catch((error: Error) => out.destroy(error))
  return out
}

async function add(zip: ZipFile, files: AsyncIterable<FileIn>, out: PassThrough): Promise<void> {
  for await (const { name, bytes } of files) {
    if (out.destroyed) return
    // A buffer too goes as a stream: the library would queue it whatever the reader's pace.
    const stream = Reading.from(Buffer.isBuffer(bytes) ? [bytes] : bytes)
    const readerGone = () => stream.destroy()
    out.once('close', readerGone)
    const given = new Promise<void>((done, failed) =>
      stream.once('error', failed).once('close', () => (stream.errored ? failed(stream.errored) : done())),
    )
    // Pictures do not get smaller.
    zip.addReadStream(stream, name, { ...date(), mode: MODE, compress: !name.endsWith('.jpg') })
    await given
    out.off('close', readerGone)
    if (out.destroyed) return
  }
  zip.end()
}
