import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { buffer } from 'node:stream/consumers'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { zipOf } from '../archives/zipOut.ts'
import { temporaryFolder } from '../testing/folders.ts'
import { checkZipSeal, zipSealing } from './zipSeal.ts'

let folder = ''
let remove: () => Promise<void>
let zip: Buffer
beforeAll(async () => {
  ;({ folder, remove } = await temporaryFolder())
  zip = await buffer(
    zipOf(
      (async function* () {
        yield { name: 'entries.ndjson', bytes: Buffer.from('one\n'.repeat(40)) }
        yield { name: 'photographs/a.jpg', bytes: Buffer.alloc(1_500, 7) }
      })(),
    ),
  )
})
afterAll(() => remove())

async function checked(bytes: Buffer) {
  const path = join(folder, 'tried.zip')
  await writeFile(path, bytes)
  return checkZipSeal(path)
}

test('a zip that Gripbook writes carries its seal, and is whole', async () => {
  expect(await checked(zip)).toEqual({ is: 'whole' })
})

test('[PR14] every changed byte of a zip is found with its place, also where nobody reads', async () => {
  for (let at = 0; at < zip.length; at++) {
    const changed = Buffer.from(zip)
    changed[at]! ^= 1 + (at % 255)
    const seal = await checked(changed)
    expect(seal.is, `byte ${at}`).toBe('changed')
    if (seal.is === 'changed')
      expect(
        seal.places.some(({ from, to }) => from <= at && at < to),
        `byte ${at}: ${JSON.stringify(seal)}`,
      ).toBe(true)
  }
})

test('a zip without a comment, as Gripbook wrote them before, has no seal and is told so', async () => {
  const at = zip.lastIndexOf('gripbook-seal')
  const plain = Buffer.from(zip.subarray(0, at))
  plain.writeUInt16LE(0, plain.length - 2)
  expect(await checked(plain)).toEqual({ is: 'none' })
  expect(await checked(Buffer.from('no zip'))).toEqual({ is: 'none' })
})

test('what is no zip goes through as it is, however it comes in pieces', async () => {
  for (const text of ['', 'x', 'no zip file at all, but longer than the end of one']) {
    const pieces = [...text].map((letter) => Buffer.from(letter))
    expect((await buffer(Readable.from(pieces).pipe(zipSealing()))).toString()).toBe(text)
  }
})

test('the seal does not depend on how the file came in pieces', async () => {
  const at = zip.lastIndexOf('gripbook-seal')
  const plain = Buffer.from(zip.subarray(0, at))
  plain.writeUInt16LE(0, plain.length - 2)
  for (const size of [1, 7, 1_000]) {
    const pieces = Array.from({ length: Math.ceil(plain.length / size) }, (_, i) =>
      plain.subarray(i * size, (i + 1) * size),
    )
    expect((await buffer(Readable.from(pieces).pipe(zipSealing()))).equals(zip)).toBe(true)
  }
})
