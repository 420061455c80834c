import { execFileSync } from 'node:child_process'
import { deflateSync } from 'node:zlib'
import sharp, { type Sharp } from 'sharp'
import { expect, test } from 'vitest'
import { isCleanJpeg } from './cleanJpeg.ts'
import { cleaned, oneAtATime, proven, smaller } from './pictures.ts'
import { asFromCamera, BLUE, colourAt, GREEN, noise, quarters, RED, upright, withSegment } from './testing/pictures.ts'

const [W, H] = [96, 64]
/** A program of the machine; where it is not installed, its test says so. */
const METADATA_READER = 'exiftool'

/**
 * Where the pixel in row `r` and column `c` of the file belongs upright, by orientation (TIFF 6.0, tag 274: which side the first row and the first
 * column of the file are).
 */
const BELONGS: Record<number, (r: number, c: number) => [x: number, y: number]> = {
  1: (r, c) => [c, r],
  2: (r, c) => [W - 1 - c, r],
  3: (r, c) => [W - 1 - c, H - 1 - r],
  4: (r, c) => [c, H - 1 - r],
  5: (r, c) => [r, c],
  6: (r, c) => [W - 1 - r, c],
  7: (r, c) => [W - 1 - r, H - 1 - c],
  8: (r, c) => [r, H - 1 - c],
}

/** The upright picture as a camera stores it that was held so. */
function stored(orientation: number): Sharp {
  const [width, height] = orientation < 5 ? [W, H] : [H, W]
  const source = quarters(W, H)
  const pixels = Buffer.alloc(W * H * 3)
  for (let r = 0; r < height; r++)
    for (let c = 0; c < width; c++) {
      const [x, y] = BELONGS[orientation]!(r, c)
      source.copy(pixels, (r * width + c) * 3, (y * W + x) * 3, (y * W + x) * 3 + 3)
    }
  return sharp(pixels, { raw: { width, height, channels: 3 } })
}

function near(found: number[], expected: readonly number[]): void {
  for (const [i, value] of expected.entries()) expect(Math.abs(found[i]! - value), `${found}`).toBeLessThan(20)
}

async function refused(bytes: Buffer): Promise<void> {
  await expect(cleaned(bytes)).rejects.toMatchObject({ name: 'Refused', code: 'bad-photograph' })
}

test.each([1, 2, 3, 4, 5, 6, 7, 8])('a photograph with orientation %i comes out upright', async (orientation) => {
  const sent = await asFromCamera(stored(orientation), orientation)
  expect((await sharp(sent).metadata()).orientation).toBe(orientation)
  const { bytes, width, height } = await cleaned(sent)
  expect([width, height]).toEqual([W, H])
  near(await colourAt(bytes, 0.2, 0.2), RED)
  near(await colourAt(bytes, 0.8, 0.2), BLUE)
  near(await colourAt(bytes, 0.2, 0.8), GREEN)
  near(await colourAt(bytes, 0.8, 0.8), GREEN)
  expect((await sharp(bytes).metadata()).orientation).toBeUndefined()
})

test('place, maker, XMP, IPTC, comments and colour profiles are gone, to the last byte', async () => {
  const camera = await asFromCamera(upright().withIccProfile('p3'))
  const iptc = Buffer.from('Photoshop 3.0\x008BIM\x04\x04\0\0\0\0\0\x10\x1c\x02\x78\0\x0bSECRET-IPTC', 'latin1')
  const sent = withSegment(withSegment(camera, 0xed, iptc), 0xfe, Buffer.from('SECRET-COMMENT'))
  for (const word of ['SECRET-MAKER', 'SECRET-XMP', 'SECRET-IPTC', 'SECRET-COMMENT', 'Exif', 'ICC_PROFILE'])
    expect(sent.includes(word), word).toBe(true)
  const { bytes } = await cleaned(sent)
  for (const word of ['SECRET', 'Exif', 'ICC_PROFILE', 'http', 'xmp', 'Photoshop', '8BIM', 'JFXX'])
    expect(bytes.includes(word), word).toBe(false)
  expect(isCleanJpeg(bytes)).toBe(true)
  const { exif, xmp, iptc: left, icc, comments } = await sharp(bytes).metadata()
  expect([exif, xmp, left, icc, comments]).toEqual(Array(5).fill(undefined))
})

test('exiftool finds nothing but what every JPEG tells of itself', async (context) => {
  const { bytes } = await cleaned(await asFromCamera(upright(), 6))
  let found: string
  try {
    found = execFileSync(METADATA_READER, ['-j', '-G', '-a', '-u', '-'], { input: bytes, encoding: 'utf8' })
  } catch (error) {
    if ((error as { code?: string }).code !== 'ENOENT') throw error
    return context.skip(`${METADATA_READER} is not installed`)
  }
  const groups = Object.keys(JSON.parse(found)[0]).map((name) => name.split(':')[0])
  expect(groups.filter((group) => !['File', 'ExifTool', 'Composite', 'SourceFile', 'JFIF'].includes(group!))).toEqual(
    [],
  )
})

test('colours of a wider space become the nearest of sRGB, not other ones', async () => {
  const wide = await upright().withIccProfile('p3').jpeg({ quality: 95, chromaSubsampling: '4:4:4' }).toBuffer()
  const stored = await colourAt(await sharp(wide, { ignoreIcc: true }).png().toBuffer(), 0.2, 0.2)
  expect(Math.abs(stored[0]! - RED[0])).toBeGreaterThan(10)
  near(await colourAt((await cleaned(wide)).bytes, 0.2, 0.2), RED)
})

test('PNG and WebP, grey, with sixteen bits or with transparent parts, become JPEG', async () => {
  const clear = await sharp({
    create: { width: 40, height: 30, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } },
  })
    .png()
    .toBuffer()
  const sent = [
    await upright().png().toBuffer(),
    await upright().png({ palette: true }).toBuffer(),
    await upright().toColourspace('rgb16').png().toBuffer(),
    await upright().toColourspace('b-w').png().toBuffer(),
    await upright().webp({ lossless: true }).toBuffer(),
    await upright().toColourspace('cmyk').jpeg().toBuffer(),
    clear,
  ]
  for (const bytes of sent) {
    const picture = await cleaned(bytes)
    expect(isCleanJpeg(picture.bytes)).toBe(true)
    expect(await sharp(picture.bytes).metadata()).toMatchObject({ format: 'jpeg', space: 'srgb', depth: 'uchar' })
  }
  near(await colourAt((await cleaned(sent[0]!)).bytes, 0.2, 0.2), RED)
  near(await colourAt((await cleaned(sent[2]!)).bytes, 0.8, 0.2), BLUE)
  near(await colourAt((await cleaned(sent[4]!)).bytes, 0.8, 0.8), GREEN)
  near(await colourAt((await cleaned(clear)).bytes, 0.5, 0.5), [255, 255, 255])
})

test('a photograph that was cut anywhere is refused', async () => {
  for (const format of ['jpeg', 'png', 'webp'] as const) {
    const whole = await noise(90, 60).toFormat(format).toBuffer()
    await cleaned(whole)
    for (const part of [0, 0.01, 0.1, 0.5, 0.9, 0.99]) await refused(whole.subarray(0, Math.floor(whole.length * part)))
  }
})

test('a small file that says it has 900 million pixels is refused before they are made', async () => {
  const before = process.memoryUsage().rss
  await refused(pngThatSays(30_000, 30_000))
  await refused(pngThatSays(65_000, 950))
  expect(process.memoryUsage().rss - before).toBeLessThan(150_000_000)
})

test('what is no JPEG, PNG or WebP by its content is refused, whatever it may be', async () => {
  const svg = '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><image href="file:///etc/passwd"/></svg>'
  const texts = [
    svg,
    `<?xml version="1.0"?>${svg}`,
    '<html><script>1</script></html>',
    '%PDF-1.4\n%%EOF',
    'P3 1 1 255 1 2 3',
    'GIF89a',
    '',
  ]
  for (const text of texts) await refused(Buffer.from(text))
  for (const format of ['gif', 'tiff', 'avif'] as const) await refused(await upright().toFormat(format).toBuffer())
  await refused(Buffer.concat([Buffer.from('<html>'), await upright().jpeg().toBuffer()]))
  await refused(noiseBytes(10_000))
})

test('of a picture that moves the first frame is kept', async () => {
  const frames = sharp(Buffer.concat([quarters(W, H), Buffer.alloc(W * H * 3, 99)]), {
    raw: { width: W, height: 2 * H, channels: 3, pageHeight: H },
  })
  const sent = await frames.webp({ loop: 0, delay: [100, 100], quality: 95 }).toBuffer()
  expect((await sharp(sent).metadata()).pages).toBe(2)
  const { bytes, width, height } = await cleaned(sent)
  expect([width, height]).toEqual([W, H])
  expect(isCleanJpeg(bytes)).toBe(true)
  near(await colourAt(bytes, 0.2, 0.2), RED)
  near(await colourAt(bytes, 0.8, 0.2), BLUE)
  near(await colourAt(bytes, 0.8, 0.8), GREEN)
})

test('what hangs on behind the picture, or hides in its headers, does not go on', async () => {
  const jpeg = await upright().jpeg().toBuffer()
  const zip = Buffer.from('PK\x03\x04SECRET-ZIP')
  const html = withSegment(jpeg, 0xfe, Buffer.from('<script>SECRET</script>'))
  for (const sent of [Buffer.concat([jpeg, zip]), html, Buffer.concat([await upright().png().toBuffer(), zip])]) {
    const { bytes } = await cleaned(sent)
    expect(bytes.includes('SECRET')).toBe(false)
    expect(isCleanJpeg(bytes)).toBe(true)
  }
})

test('smaller pictures have the longest side that was asked for, and are never larger than the picture', async () => {
  const wide = await proven((await cleaned(await noise(1500, 500).jpeg().toBuffer())).bytes)
  const tall = await proven((await cleaned(await noise(300, 900).jpeg().toBuffer())).bytes)
  const size = async (bytes: Buffer) => {
    const { width, height } = await sharp(bytes).metadata()
    expect(isCleanJpeg(bytes)).toBe(true)
    return [width, height]
  }
  expect(await size(await smaller(wide, 1280))).toEqual([1280, 427])
  expect(await size(await smaller(wide, 320))).toEqual([320, 107])
  expect(await smaller(tall, 1280)).toBe(tall.bytes)
  expect(await size(await smaller(tall, 320))).toEqual([107, 320])
})

test('a file from elsewhere is taken as it is when it is clean and whole, and refused otherwise', async () => {
  const { bytes } = await cleaned(await asFromCamera(upright()))
  expect(await proven(bytes)).toEqual({ bytes, width: W, height: H })
  const noisy = (await cleaned(await noise(80, 60).jpeg().toBuffer())).bytes
  const half = Buffer.concat([noisy.subarray(0, noisy.length / 2), Buffer.from([0xff, 0xd9])])
  expect(isCleanJpeg(half)).toBe(true)
  for (const bad of [half, await asFromCamera(upright()), Buffer.concat([bytes, Buffer.from('more')]), Buffer.alloc(0)])
    await expect(proven(bad)).rejects.toMatchObject({ code: 'bad-photograph' })
})

test('one picture is worked on at a time, and one that fails holds up none', async () => {
  let now = 0
  let most = 0
  const work = (fails: boolean) => async () => {
    most = Math.max(most, ++now)
    await new Promise((done) => setTimeout(done, 2))
    now--
    if (fails) throw new Error('bad')
    return 'good'
  }
  const ended = await Promise.allSettled([true, false, true, false].map((fails) => oneAtATime(work(fails))))
  expect(ended.map(({ status }) => status)).toEqual(['rejected', 'fulfilled', 'rejected', 'fulfilled'])
  expect(most).toBe(1)
})

function noiseBytes(count: number): Buffer {
  return Buffer.from(Array.from({ length: count }, (_, i) => (i * 2_654_435_761) >>> 24))
}

/** A grey PNG with all its rows, packed (PNG specification, chunks IHDR, IDAT, IEND). */
function pngThatSays(width: number, height: number): Buffer {
  const head = Buffer.alloc(13)
  head.writeUInt32BE(width, 0)
  head.writeUInt32BE(height, 4)
  head[8] = 1
  const rows = Buffer.alloc(Math.min((1 + Math.ceil(width / 8)) * height, 20_000_000))
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type), data])
  const length = Buffer.alloc(4)
  length.writeUInt32BE(data.length)
  const check = Buffer.alloc(4)
  check.writeUInt32BE(crc32(body))
  return Buffer.concat([length, body, check])
}

function crc32(bytes: Buffer): number {
  let crc = ~0
  for (const byte of bytes) {
    crc ^= byte
    for (let i = 0; i < 8; i++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0)
  }
  return ~crc >>> 0
}
