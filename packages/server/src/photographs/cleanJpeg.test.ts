import sharp from 'sharp'
import { expect, test } from 'vitest'
import { isCleanJpeg } from './cleanJpeg.ts'
import { asFromCamera, noise, upright, withSegment } from './testing/pictures.ts'

const plain = await upright().jpeg().toBuffer()
const JFIF = Buffer.from('JFIF\0\x01\x01\x00\x00\x48\x00\x48\x00\x00', 'latin1')

test('what is encoded without anything beside it is clean', async () => {
  expect(isCleanJpeg(plain)).toBe(true)
  expect(isCleanJpeg(await noise(70, 50).jpeg({ quality: 92, chromaSubsampling: '4:4:4' }).toBuffer())).toBe(true)
  expect(isCleanJpeg(await upright().jpeg({ progressive: true }).toBuffer())).toBe(true)
  expect(isCleanJpeg(await upright().toColourspace('b-w').jpeg().toBuffer())).toBe(true)
  expect(isCleanJpeg(withSegment(plain, 0xe0, JFIF))).toBe(true)
  const adobe = Buffer.from('Adobe\0\x64\0\0\0\0\x01', 'latin1')
  expect(isCleanJpeg(withSegment(plain, 0xee, adobe))).toBe(true)
})

/** The same picture, its frame called otherwise: ITU-T T.81, table B.1 (from memory). */
function withFrame(marker: number): Buffer {
  const changed = Buffer.from(plain)
  changed[changed.indexOf(Buffer.from([0xff, 0xc0])) + 1] = marker
  return changed
}

test('frames that are coded one after the other or progressively with Huffman codes are taken, no others', () => {
  for (const marker of [0xc0, 0xc1, 0xc2]) expect(isCleanJpeg(withFrame(marker)), `${marker}`).toBe(true)
  for (const marker of [0xc3, 0xc5, 0xc6, 0xc7, 0xc8, 0xc9, 0xca, 0xcb, 0xcd, 0xce, 0xcf])
    expect(isCleanJpeg(withFrame(marker)), `${marker}`).toBe(false)
})

test('anything beside the picture makes it unclean', async () => {
  expect(isCleanJpeg(await asFromCamera(upright()))).toBe(false)
  expect(isCleanJpeg(await upright().withIccProfile('p3').jpeg().toBuffer())).toBe(false)
  expect(isCleanJpeg(withSegment(plain, 0xfe, Buffer.from('a comment')))).toBe(false)
  expect(isCleanJpeg(withSegment(plain, 0xe1, Buffer.from('Exif\0\0')))).toBe(false)
  expect(isCleanJpeg(withSegment(plain, 0xed, Buffer.from('Photoshop 3.0\0')))).toBe(false)
  expect(isCleanJpeg(withSegment(plain, 0xee, Buffer.from('Adobe and more')))).toBe(false)
  expect(isCleanJpeg(withSegment(withSegment(plain, 0xe0, JFIF), 0xe0, JFIF))).toBe(false)
})

test('a thumbnail or text inside a header makes it unclean', () => {
  const thumbnail = Buffer.concat([JFIF.subarray(0, 12), Buffer.from([1, 1, 0, 0, 0])])
  expect(isCleanJpeg(withSegment(plain, 0xe0, thumbnail))).toBe(false)
  expect(isCleanJpeg(withSegment(plain, 0xe0, Buffer.concat([JFIF, Buffer.from('text')])))).toBe(false)
  expect(isCleanJpeg(withSegment(plain, 0xdb, Buffer.from('hidden')))).toBe(false)
  expect(isCleanJpeg(withSegment(plain, 0xc4, Buffer.alloc(17)))).toBe(false)
  let tables: Buffer = plain
  for (let i = 0; i < 4; i++)
    tables = withSegment(tables, 0xdb, Buffer.concat([Buffer.from([i]), Buffer.alloc(64, 65)]))
  expect(isCleanJpeg(tables)).toBe(false)
})

test('anything before or behind the picture makes it unclean, and so does an end that is missing', () => {
  expect(isCleanJpeg(Buffer.concat([plain, Buffer.from('<html>')]))).toBe(false)
  expect(isCleanJpeg(Buffer.concat([plain, plain]))).toBe(false)
  expect(isCleanJpeg(Buffer.concat([Buffer.from('GIF89a'), plain]))).toBe(false)
  for (let end = 0; end < plain.length; end++) expect(isCleanJpeg(plain.subarray(0, end)), `cut at ${end}`).toBe(false)
})

test('other kinds of picture are none', async () => {
  for (const format of ['png', 'webp', 'gif', 'tiff'] as const)
    expect(isCleanJpeg(await upright().toFormat(format).toBuffer())).toBe(false)
  expect(isCleanJpeg(await sharp(await upright().toColourspace('cmyk').jpeg().toBuffer()).toBuffer())).toBe(true)
  expect(isCleanJpeg(await upright().toColourspace('cmyk').jpeg().toBuffer())).toBe(false)
})

test('no content makes it throw or hang', () => {
  let state = 7
  const next = () => (state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0)
  for (let i = 0; i < 3_000; i++) {
    const changed = Buffer.from(plain)
    for (let j = 0; j <= i % 4; j++) changed[next() % changed.length] = next() >>> 24
    expect(typeof isCleanJpeg(changed)).toBe('boolean')
  }
})
