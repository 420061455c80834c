import { randomUUID } from 'node:crypto'
import { readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import sharp from 'sharp'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { connect, type Database } from '../database/connect.ts'
import { sha256 } from '../sha256.ts'
import { temporaryFolder } from '../testing/folders.ts'
import { isCleanJpeg } from './cleanJpeg.ts'
import { folderPlace } from './folderPlace.ts'
import { makePhotographs } from './makePhotographs.ts'
import type { Arrival, KeptPhotograph, Part, Photographs, Size } from './photographs.ts'
import type { Place } from './place.ts'
import { asFromCamera, noise } from './testing/pictures.ts'

let base: Awaited<ReturnType<typeof temporaryFolder>>
/** Two processes of one shop: connections and queues of their own, one database, one place. */
let databases: [Database, Database]
let place: Place
let here: Photographs
let there: Photographs
let now = Date.parse('2026-03-01T09:00:00.000Z')
const clock = () => now

beforeAll(async () => {
  base = await temporaryFolder()
  const shop = join(base.folder, 'shop')
  databases = [await connect({}, shop), await connect({}, shop)]
  place = folderPlace(join(shop, 'photographs'))
  const [one, two] = databases
  here = makePhotographs({ db: one.db, place, clock })
  there = makePhotographs({ db: two.db, place, clock })
})
afterAll(async () => {
  for (const database of databases ?? []) await database.close()
  await base?.remove()
})

let seed = 0
const aPhotograph = (width = 60, height = 40): Promise<Buffer> => asFromCamera(noise(width, height, ++seed), 6)
const partsOf = (bytes: Buffer, size: number, device: string): Part[] =>
  Array.from({ length: Math.ceil(bytes.length / size) }, (_, i) => {
    const piece = bytes.subarray(i * size, (i + 1) * size)
    const complete = i * size + piece.length === bytes.length
    return { device, photograph: sha256(bytes), offset: i * size, total: bytes.length, bytes: piece, complete }
  })

async function sent(to: Photographs, bytes: Buffer, device: string = randomUUID(), size = 4_000): Promise<Arrival> {
  let answer: Arrival = { received: 0, kept: null }
  for (const part of partsOf(bytes, size, device)) answer = await to.receive(part)
  return answer
}

async function piecesOf(photograph: string): Promise<number> {
  const pieces = databases[0].db.selectFrom('photograph_piece').select('from_byte')
  return (await pieces.where('photograph', '=', photograph).execute()).length
}

const hashOf = async (photograph: string, size: Size) => sha256((await here.read(photograph, size))!)
const fileOf = (hash: string) => join(place.where, hash.slice(0, 2), `${hash}.jpg`)

test('a photograph that came in pieces is kept clean, under the name of the file as it was sent', async () => {
  const file = await aPhotograph()
  const device = randomUUID()
  const [first, ...rest] = partsOf(file, 4_000, device)
  expect(await here.receive(first!)).toEqual({ received: 4_000, kept: null, added: false })
  expect(await here.received(device, sha256(file))).toEqual({ received: 4_000, kept: null })
  expect(await here.received(randomUUID(), sha256(file))).toEqual({ received: 0, kept: null })
  let last: Awaited<ReturnType<Photographs['receive']>> | undefined
  for (const part of rest) last = await here.receive(part)
  const kept = await here.find(sha256(file))
  expect(last).toEqual({ received: 0, kept, added: true })
  expect(kept).toMatchObject({ photograph: sha256(file), width: 40, height: 60, at: new Date(now).toISOString() })
  const bytes = (await here.read(sha256(file), 'full'))!
  expect([sha256(bytes), bytes.length]).toEqual([kept!.sha256, kept!.bytes])
  expect(isCleanJpeg(bytes)).toBe(true)
  expect(await piecesOf(sha256(file))).toBe(0)
  expect(await there.received(device, sha256(file))).toEqual({ received: 0, kept })
})

test('what was never sent is not there', async () => {
  expect(await here.find('0'.repeat(64))).toBeNull()
  expect(await here.read('0'.repeat(64), '320')).toBeNull()
})

test('three sizes are kept, none larger than the photograph', async () => {
  const file = await aPhotograph(1400, 700)
  await sent(here, file, randomUUID(), 1_000_000)
  const sides = []
  for (const size of ['full', '1280', '320'] as const) {
    const { width, height } = await sharp((await here.read(sha256(file), size))!).metadata()
    sides.push([width, height])
  }
  expect(sides).toEqual([
    [700, 1400],
    [640, 1280],
    [160, 320],
  ])
  const little = await aPhotograph()
  await sent(here, little)
  expect(await hashOf(sha256(little), '320')).toBe(await hashOf(sha256(little), 'full'))
})

test('whatever is cut off, lost or said twice on the way, the photograph arrives', async () => {
  let state = 11
  const chance = (of: number) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return (state >>> 16) % of
  }
  for (let run = 0; run < 12; run++) {
    const file = await aPhotograph()
    const device = randomUUID()
    const photograph = sha256(file)
    let kept: KeptPhotograph | null = null
    let before: Part | null = null
    while (kept === null) {
      const to = chance(2) ? here : there
      const { received } = await to.received(device, photograph)
      const size = 1 + chance(5_000)
      const bytes = file.subarray(received, received + size)
      const complete = received + bytes.length === file.length && chance(3) > 0
      const part: Part = { device, photograph, offset: received, total: file.length, bytes, complete }
      if (before !== null && chance(3) === 0) await to.receive(before)
      const answer = await to.receive(part)
      // Every other answer is lost, and the device asks.
      if (chance(2)) kept = answer.kept
      else kept = (await here.received(device, photograph)).kept
      before = part.complete ? null : part
    }
    expect(kept.photograph).toBe(photograph)
    expect(await piecesOf(photograph)).toBe(0)
  }
})

test('a piece from elsewhere is refused with how much there is, and changes nothing', async () => {
  const file = await aPhotograph()
  const device = randomUUID()
  const [first, second, third] = partsOf(file, 2_000, device) as [Part, Part, Part]
  const refusal = (received: number) => ({ code: 'other-offset', details: { received } })
  await expect(here.receive(second)).rejects.toMatchObject(refusal(0))
  await here.receive(first)
  await expect(here.receive(third)).rejects.toMatchObject(refusal(2_000))
  await expect(here.receive({ ...first, bytes: Buffer.alloc(2_000) })).rejects.toMatchObject(refusal(2_000))
  await expect(here.receive({ ...first, bytes: first.bytes.subarray(1), offset: 1 })).rejects.toMatchObject(
    refusal(2_000),
  )
  expect((await sent(here, file, device, 2_000)).kept?.photograph).toBe(sha256(file))
})

test('a length that does not fit the pieces is refused', async () => {
  const file = await aPhotograph()
  const device = randomUUID()
  const [first, second] = partsOf(file, 2_000, device) as [Part, Part]
  const wrong = { code: 'wrong-request' }
  await expect(here.receive({ ...first, total: 1_999 })).rejects.toMatchObject(wrong)
  await expect(here.receive({ ...first, total: 0, bytes: Buffer.alloc(0) })).rejects.toMatchObject(wrong)
  await expect(here.receive({ ...first, complete: true })).rejects.toMatchObject(wrong)
  await expect(here.receive({ ...first, total: 40_000_001 })).rejects.toMatchObject({ code: 'too-large' })
  await here.receive({ ...first, total: file.length + 5 })
  await expect(here.receive(second)).rejects.toMatchObject(wrong)
  expect((await sent(here, file, device)).kept?.photograph).toBe(sha256(file))
})

test('what has another hash is dropped whole, and may be sent anew', async () => {
  const file = await aPhotograph()
  const other = Buffer.from(file)
  other[other.length - 100]! ^= 1
  const device = randomUUID()
  const parts = partsOf(other, 4_000, device).map((part) => ({ ...part, photograph: sha256(file) }))
  for (const part of parts.slice(0, -1)) await here.receive(part)
  await expect(here.receive(parts.at(-1)!)).rejects.toMatchObject({ code: 'not-that-photograph' })
  expect(await here.received(device, sha256(file))).toEqual({ received: 0, kept: null })
  expect(await piecesOf(sha256(file))).toBe(0)
  expect((await sent(here, file, device)).kept?.photograph).toBe(sha256(file))
})

test('what is no photograph is refused and dropped', async () => {
  for (const file of [
    Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"/>'),
    (await aPhotograph()).subarray(0, 3_000),
  ]) {
    await expect(sent(here, file)).rejects.toMatchObject({ code: 'bad-photograph' })
    expect(await piecesOf(sha256(file))).toBe(0)
    expect(await here.find(sha256(file))).toBeNull()
  }
})

test('two devices that send one photograph to two processes at once have it kept once', async () => {
  const file = await aPhotograph()
  const [one, two] = [randomUUID(), randomUUID()]
  const answers = await Promise.all([sent(here, file, one), sent(there, file, two)])
  const kept = await here.find(sha256(file))
  for (const answer of answers) expect(answer.kept).toEqual(kept)
  expect(await piecesOf(sha256(file))).toBe(0)
  const late = await there.receive(partsOf(file, 4_000, randomUUID())[0]!)
  expect(late).toEqual({ received: 0, kept, added: false })
})

test('one device that sends the same pieces twice at once has them kept once', async () => {
  const file = await aPhotograph()
  const device = randomUUID()
  for (const part of partsOf(file, 4_000, device))
    for (const answer of await Promise.all([here.receive(part), there.receive(part), here.receive(part)]))
      if (!part.complete) expect(answer.received).toBe(part.offset + part.bytes.length)
  expect((await here.find(sha256(file)))?.photograph).toBe(sha256(file))
})

test('whoever stops between the bytes and the row has promised nothing, and the next attempt keeps the photograph', async () => {
  const file = await aPhotograph(500, 400)
  for (const puts of [0, 1, 2, 3]) {
    let left = puts
    const failing: Place = {
      ...place,
      async put(name, bytes) {
        if (left-- <= 0) throw new Error('stopped')
        await place.put(name, bytes)
        if (puts === 3 && left === 0) throw new Error('stopped after the last')
      },
    }
    const stopped = makePhotographs({ db: databases[0].db, place: failing, clock })
    const device = randomUUID()
    await expect(sent(stopped, file, device, 100_000)).rejects.toThrow('stopped')
    expect(await here.received(device, sha256(file))).toEqual({ received: file.length, kept: null })
    expect(await here.read(sha256(file), 'full')).toBeNull()
  }
  const { device } = await databases[0].db
    .selectFrom('photograph_upload')
    .select('device')
    .where('photograph', '=', sha256(file))
    .executeTakeFirstOrThrow()
  const end: Part = {
    device,
    photograph: sha256(file),
    offset: file.length,
    total: file.length,
    bytes: Buffer.alloc(0),
    complete: true,
  }
  expect((await here.receive(end)).kept?.photograph).toBe(sha256(file))
})

test('what was begun and not ended within seven days is swept when something else is begun', async () => {
  const [file, next] = [await aPhotograph(), await aPhotograph()]
  const device = randomUUID()
  await here.receive(partsOf(file, 2_000, device)[0]!)
  now += 7 * 24 * 3_600_000
  await here.receive(partsOf(next, 2_000, randomUUID())[0]!)
  expect((await here.received(device, sha256(file))).received).toBe(2_000)
  now += 1
  await here.receive(partsOf(await aPhotograph(), 2_000, randomUUID())[0]!)
  expect(await here.received(device, sha256(file))).toEqual({ received: 0, kept: null })
  expect(await piecesOf(sha256(file))).toBe(0)
  expect((await sent(here, file, device)).kept?.photograph).toBe(sha256(file))
})

test('a device keeps sixteen unfinished ones and 160 MB; the one it left longest ago gives way', async () => {
  const device = randomUUID()
  const begin = (n: number, total: number): Part => {
    now += 1_000
    const photograph = sha256(Buffer.from(`unfinished ${n}`))
    return { device, photograph, offset: 0, total, bytes: Buffer.from('first piece'), complete: false }
  }
  const waiting = async () => {
    const uploads = databases[0].db.selectFrom('photograph_upload').select('photograph').where('device', '=', device)
    return (await uploads.execute()).map(({ photograph }) => photograph)
  }
  for (let n = 0; n < 17; n++) await here.receive(begin(n, 1_000))
  expect((await waiting()).length).toBe(16)
  expect(await waiting()).not.toContain(begin(0, 0).photograph)
  for (let n = 20; n < 25; n++) await here.receive(begin(n, 40_000_000))
  expect((await waiting()).sort()).toEqual([21, 22, 23, 24].map((n) => begin(n, 0).photograph).sort())
})

test('a kept file that was changed or taken away is told by name, never served; smaller pictures are made anew', async () => {
  const file = await aPhotograph(500, 400)
  const photograph = sha256(file)
  const { kept } = await sent(here, file, randomUUID(), 100_000)
  const small = (await here.read(photograph, '320'))!
  await rm(fileOf(sha256(small)))
  expect(await hashOf(photograph, '320')).toBe(sha256(small))
  await writeFile(fileOf(sha256(small)), 'not a picture')
  expect(await hashOf(photograph, '320')).toBe(sha256(small))

  const full = fileOf(kept!.sha256)
  const bytes = await readFile(full)
  bytes[bytes.length >> 1]! ^= 1
  await writeFile(full, bytes)
  await expect(here.read(photograph, 'full')).rejects.toMatchObject({ name: 'Damaged', photograph })
  await expect(here.read(photograph, 'full')).rejects.toThrow(new RegExp(`${photograph} is damaged in .*photographs`))
  expect(await hashOf(photograph, '320')).toBe(sha256(small))
  await rm(full)
  await rm(fileOf(sha256(small)))
  await expect(here.read(photograph, '320')).rejects.toThrow(`${photograph} is gone from`)
})

test('a kept file moves to another shop byte for byte, is known there, and puts right what was damaged', async () => {
  const file = await aPhotograph(500, 400)
  const { kept } = await sent(here, file, randomUUID(), 100_000)
  const bytes = (await here.read(kept!.photograph, 'full'))!
  await databases[0].db.deleteFrom('photograph_kept').where('photograph', '=', kept!.photograph).execute()
  now += 60_000
  expect(await there.takeIn(kept!, bytes)).toBe('added')
  expect(await here.find(kept!.photograph)).toEqual(kept)
  expect(await hashOf(kept!.photograph, 'full')).toBe(kept!.sha256)
  expect((await sharp((await here.read(kept!.photograph, '320'))!).metadata()).width).toBe(256)
  expect(await here.takeIn(kept!, bytes)).toBe('known')
  await writeFile(fileOf(kept!.sha256), 'damaged')
  expect(await here.takeIn(kept!, bytes)).toBe('known')
  expect(await hashOf(kept!.photograph, 'full')).toBe(kept!.sha256)
})

test('a file from elsewhere that is not what is said of it, or not clean, is refused by name', async () => {
  const clean = await noise(60, 40, 999).jpeg().toBuffer()
  const camera = await aPhotograph()
  const told = (bytes: Buffer): KeptPhotograph => ({
    photograph: sha256(Buffer.from('sent')),
    sha256: sha256(bytes),
    bytes: bytes.length,
    width: 60,
    height: 40,
    at: '2026-03-01T09:00:00.000Z',
  })
  const cut = Buffer.concat([clean.subarray(0, clean.length >> 1), Buffer.from([0xff, 0xd9])])
  const wrong: [KeptPhotograph, Buffer][] = [
    [{ ...told(clean), sha256: 'a'.repeat(64) }, clean],
    [{ ...told(clean), bytes: 5 }, clean],
    [{ ...told(clean), width: 40 }, clean],
    [{ ...told(clean), photograph: '../../passwords' }, clean],
    [{ ...told(clean), photograph: sha256(Buffer.from('sent')).toUpperCase() }, clean],
    [{ ...told(clean), at: 'yesterday' }, clean],
    [told(camera), camera],
    [told(cut), cut],
    [told(Buffer.alloc(0)), Buffer.alloc(0)],
  ]
  for (const [kept, bytes] of wrong)
    await expect(here.takeIn(kept, bytes)).rejects.toMatchObject({
      code: 'bad-photograph',
      details: { photograph: kept.photograph },
    })
  expect(await here.find(told(clean).photograph)).toBeNull()
  expect(await here.takeIn(told(clean), clean)).toBe('added')
})

test('all that are kept are listed once, sorted, over several pages', async () => {
  const rows = Array.from({ length: 450 }, (_, i) => sha256(Buffer.from(`listed ${i}`))).map((photograph) => ({
    photograph,
    sha256: photograph,
    bytes: 1,
    width: 1,
    height: 1,
    small_1280: photograph,
    small_320: photograph,
    at: now,
  }))
  await databases[0].db.insertInto('photograph_kept').values(rows).execute()
  const listed: string[] = []
  for await (const { photograph } of here.all()) listed.push(photograph)
  expect(listed).toEqual([...new Set(listed)].sort())
  expect(listed).toEqual(expect.arrayContaining(rows.map(({ photograph }) => photograph)))
  expect(await readdir(join(place.where, 'arriving'))).toEqual([])
})
