/** Pictures: decoded by libvips with everything shut that a photograph does not need, and encoded anew, so that nothing but the picture goes on. */
import { must } from '@gripbook/engine'
import sharp, { type Sharp } from 'sharp'
import { Refused } from '../app/faults.ts'
import { isCleanJpeg } from './cleanJpeg.ts'

sharp.cache(false)
sharp.concurrency(1)
sharp.block({ operation: ['VipsForeignLoad'] })
sharp.unblock({
  operation: ['VipsForeignLoadJpegBuffer', 'VipsForeignLoadPngBuffer', 'VipsForeignLoadWebpBuffer'],
})

/** Cameras of phones give 12 to 50 million pixels; 60 million decoded are 180 MB. */
const MOST_PIXELS = 60_000_000
/** Nearly no loss to the eye, the colours at full width: a witness mark is a thin line of paint. */
const FULL = { quality: 92, chromaSubsampling: '4:4:4' } as const
const SMALL = { quality: 82 } as const

const TAKEN: readonly string[] = ['jpeg', 'png', 'webp']

export type Picture = { bytes: Buffer; width: number; height: number }

/**
 * Upright, sRGB, JPEG without any data but the picture; of a picture that moves the first frame. Throws `Refused` bad-photograph for what is not whole, is
 * too large or no photograph.
 */
export function cleaned(sent: Buffer): Promise<Picture> {
  return orRefused(async () => {
    const given = opened(sent)
    const { format } = await given.metadata()
    if (!TAKEN.includes(format)) throw new Refused('bad-photograph')
    const upright = given.autoOrient().flatten({ background: '#ffffff' }).toColourspace('srgb').jpeg(FULL)
    const { data, info } = await upright.toBuffer({ resolveWithObject: true })
    must(isCleanJpeg(data), 'a picture encoded here is clean', info)
    return { bytes: data, width: info.width, height: info.height }
  })
}

/** A clean JPEG, proven by decoding it whole, as it is. Throws `Refused` bad-photograph. */
export function proven(bytes: Buffer): Promise<Picture> {
  return orRefused(async () => {
    if (!isCleanJpeg(bytes)) throw new Refused('bad-photograph')
    const { info } = await opened(bytes, 'warning').raw().toBuffer({ resolveWithObject: true })
    return { bytes, width: info.width, height: info.height }
  })
}

/** The picture with `longest` pixels on its longer side; itself when it has no more. */
export async function smaller({ bytes, width, height }: Picture, longest: number): Promise<Buffer> {
  if (Math.max(width, height) <= longest) return bytes
  return opened(bytes).resize({ width: longest, height: longest, fit: 'inside' }).jpeg(SMALL).toBuffer()
}

/** Cameras write files that a decoder warns about; what was encoded here gives no cause to. */
function opened(bytes: Buffer, failOn: 'error' | 'warning' = 'error'): Sharp {
  return sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn, page: 0, pages: 1 })
}

/** What the decoder stops at is in the file; its words are about its insides, not for the one who took the photograph. */
async function orRefused<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work()
  } catch (error) {
    if (error instanceof Refused || (error as Error).name === 'Bug') throw error
    throw new Refused('bad-photograph')
  }
}

let last: Promise<unknown> = Promise.resolve()

/** One picture at a time in this process: a decoded one takes more memory than all else that a server holds. */
export function oneAtATime<T>(work: () => Promise<T>): Promise<T> {
  const mine = last.then(work)
  last = mine.catch(() => {})
  return mine
}
