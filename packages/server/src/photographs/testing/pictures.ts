/** Pictures for tests, made by sharp: what a camera sends, and what somebody sends who means no good. */
import sharp, { type Sharp } from 'sharp'

export const RED = [220, 30, 30] as const
export const BLUE = [30, 30, 220] as const
export const GREEN = [30, 160, 30] as const

/** Upright it is red at its upper left, blue at its upper right, green below; pixels row by row. */
export function quarters(width: number, height: number): Buffer {
  const pixels = Buffer.alloc(width * height * 3)
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++)
      pixels.set(y >= height / 2 ? GREEN : x < width / 2 ? RED : BLUE, (y * width + x) * 3)
  return pixels
}

export function upright(width = 96, height = 64): Sharp {
  return sharp(quarters(width, height), { raw: { width, height, channels: 3 } })
}

/** A photograph whose sizes in bytes cannot be guessed: noise, always the same for the same seed. */
export function noise(width: number, height: number, seed = 1): Sharp {
  const pixels = Buffer.alloc(width * height * 3)
  let state = seed
  for (let i = 0; i < pixels.length; i++) {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    pixels[i] = state >>> 24
  }
  return sharp(pixels, { raw: { width, height, channels: 3 } })
}

/** What a camera of a phone writes beside the picture: place, time, maker, XMP, a turn, a colour profile. */
export function asFromCamera(picture: Sharp, orientation = 1): Promise<Buffer> {
  return picture
    .jpeg({ quality: 95, chromaSubsampling: '4:4:4' })
    .withExif({
      IFD0: { Make: 'SECRET-MAKER', ImageDescription: 'SECRET-DESCRIPTION', Orientation: String(orientation) },
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '51/1 30/1 3230/100',
        GPSLongitudeRef: 'W',
        GPSLongitude: '0/1 7/1 4366/100',
      },
    })
    .withXmp(
      '<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">SECRET-XMP</rdf:RDF></x:xmpmeta>',
    )
    .withMetadata({ orientation })
    .toBuffer()
}

/** One segment of a JPEG, put in behind its first two bytes. */
export function withSegment(jpeg: Buffer, marker: number, body: Buffer): Buffer {
  const head = Buffer.from([0xff, marker, (body.length + 2) >> 8, (body.length + 2) & 0xff])
  return Buffer.concat([jpeg.subarray(0, 2), head, body, jpeg.subarray(2)])
}

/** The colour of the pixel at these parts of width and height. */
export async function colourAt(picture: Buffer, x: number, y: number): Promise<number[]> {
  const { data, info } = await sharp(picture).raw().toBuffer({ resolveWithObject: true })
  const at = (Math.floor(info.height * y) * info.width + Math.floor(info.width * x)) * info.channels
  return [...data.subarray(at, at + 3)]
}
