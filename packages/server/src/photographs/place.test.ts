import { chmod, mkdir, readdir, readFile, rm, stat, utimes, writeFile } from 'node:fs/promises'
import { createServer, type IncomingMessage } from 'node:http'
import type { AddressInfo } from 'node:net'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { temporaryFolder } from '../testing/folders.ts'
import { folderPlace } from './folderPlace.ts'
import { PlaceError, type PlaceFault } from './place.ts'
import { s3Place } from './s3Place.ts'
import { nameOf, namesIn, placeSuite } from './testing/placeSuite.ts'
import { type S3Server, s3Server } from './testing/s3Server.ts'

let base: Awaited<ReturnType<typeof temporaryFolder>>
let server: S3Server
let opened = 0
beforeAll(async () => {
  base = await temporaryFolder()
  server = await s3Server()
})
afterAll(async () => {
  await server?.close()
  await base?.remove()
})

const freshFolder = () => join(base.folder, `place-${++opened}`)

async function faultOf(work: Promise<unknown>): Promise<PlaceFault & { words: string }> {
  const error = await work.then(
    () => null,
    (error: unknown) => error,
  )
  if (!(error instanceof PlaceError)) throw new Error(`expected a fault of the place, not ${error}`)
  return { ...error.fault, words: error.message }
}

describe('a folder', () => {
  for (const { title, run } of placeSuite(async () => folderPlace(freshFolder()))) test(title, run)

  test('files lie under the first two letters of their names, for their user alone', async () => {
    const folder = freshFolder()
    await folderPlace(folder).put(nameOf(1), Buffer.from('picture'))
    const file = join(folder, nameOf(1).slice(0, 2), nameOf(1))
    expect(String(await readFile(file))).toBe('picture')
    expect((await stat(file)).mode & 0o777).toBe(0o600)
    expect((await stat(folder)).mode & 0o777).toBe(0o700)
    expect(await readdir(join(folder, 'arriving'))).toEqual([])
  })

  test('what a killed process left half written is not listed, and swept when it is old', async () => {
    const folder = freshFolder()
    await mkdir(join(folder, 'arriving'), { recursive: true })
    const [old, young] = [join(folder, 'arriving', 'old'), join(folder, 'arriving', 'young')]
    for (const file of [old, young]) await writeFile(file, 'half')
    await utimes(old, 1_000, 1_000)
    const place = folderPlace(folder)
    await place.put(nameOf(1), Buffer.from('whole'))
    expect(await readdir(join(folder, 'arriving'))).toEqual(['young'])
    expect(await namesIn(place)).toEqual([nameOf(1)])
  })

  test('a folder that cannot be used is told with its name, and used once it can be', async () => {
    const folder = freshFolder()
    await writeFile(folder, 'a file where the folder should be')
    const place = folderPlace(folder)
    const fault = await faultOf(place.put(nameOf(1), Buffer.from('x')))
    expect(fault.code).toBe('folder-unusable')
    expect(fault.words).toContain(folder)
    await rm(folder)
    await place.put(nameOf(1), Buffer.from('x'))
    expect(await place.has(nameOf(1))).toBe(true)
  })

  test('files that somebody else put there are left out', async () => {
    const folder = freshFolder()
    const place = folderPlace(folder)
    await place.put(nameOf(1), Buffer.from('x'))
    await writeFile(join(folder, 'README'), 'a note')
    await mkdir(join(folder, 'zz'))
    await writeFile(join(folder, 'zz', '.DS_Store'), 'x')
    await chmod(join(folder, 'zz'), 0o755)
    expect(await namesIn(place)).toEqual([nameOf(1)])
  })
})

describe('an S3-compatible store', () => {
  const fresh = () => s3Place({ ...server.store, prefix: `fresh-${++opened}/` })
  for (const { title, run } of placeSuite(async () => fresh())) test(title, run)

  test('only names under the folder that was set are listed', async () => {
    await s3Place({ ...server.store, prefix: '' }).put(nameOf(99), Buffer.from('elsewhere'))
    const place = fresh()
    await place.put(nameOf(1), Buffer.from('here'))
    expect(await namesIn(place)).toEqual([nameOf(1)])
  })

  // The store of these tests cannot make the mark between two pages on a Node with OpenSSL 3, so these pages are written out.
  test('names are listed over several pages, whatever letters the mark between them has', async () => {
    const pages = [
      `<Key>bench/${nameOf(1)}</Key><Key>bench/notes.txt.old</Key><NextContinuationToken>1+/&amp;&#x3d;&#61;&lt;</NextContinuationToken>`,
      `<Key>bench/${nameOf(2)}</Key>`,
    ]
    const marks: (string | null)[] = []
    const paged = await answering((request) => {
      marks.push(new URL(request.url ?? '', 'http://store').searchParams.get('continuation-token'))
      return [200, `<ListBucketResult>${pages.shift()}</ListBucketResult>`]
    })
    const place = s3Place({ ...server.store, origin: paged.origin, prefix: 'bench/' })
    expect(await namesIn(place)).toEqual([nameOf(1), nameOf(2)].sort())
    expect(marks).toEqual([null, '1+/&==<'])
    await paged.close()
  })

  test('a bucket that is not there is told as such, not as a photograph that is not there', async () => {
    const place = s3Place({ ...server.store, bucket: 'nobody' })
    expect(await faultOf(place.get(nameOf(1)))).toMatchObject({
      code: 'store-refuses',
      status: 404,
      reason: 'NoSuchBucket',
    })
    expect((await faultOf(place.put(nameOf(1), Buffer.from('x')))).words).toContain('/nobody/')
  })

  test('a store that does not answer is told by its address', async () => {
    const place = s3Place({ ...server.store, origin: 'http://127.0.0.1:1' })
    expect(await faultOf(place.get(nameOf(1)))).toMatchObject({ code: 'no-answer', reason: expect.stringMatching(/./) })
  })

  test('a store that stumbles is asked again, one that refuses is not', async () => {
    const answers = [503, 500, 200, 403]
    const asked: string[] = []
    const stumbling = await answering((request) => {
      asked.push(`${request.method} ${request.headers['x-amz-content-sha256']}`)
      const status = answers.shift() ?? 500
      return [status, status === 403 ? '<Error><Code>SignatureDoesNotMatch</Code></Error>' : '']
    })
    const place = s3Place({ ...server.store, origin: stumbling.origin, secretKey: 'hush' })
    await place.put(nameOf(1), Buffer.from('abc'))
    // SHA-256 of "abc": FIPS 180-4, example in its appendix (from memory).
    const sha256 = 'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad'
    expect(asked).toEqual(Array(3).fill(`PUT ${sha256}`))
    const fault = await faultOf(place.put(nameOf(1), Buffer.from('abc')))
    expect(fault).toMatchObject({ code: 'store-refuses', status: 403, reason: 'SignatureDoesNotMatch' })
    expect(fault.words).not.toContain('hush')
    expect(asked.length).toBe(4)
    await stumbling.close()
  })
})

/** A server that answers with what it is told to: for what a sound store does not do. */
async function answering(answer: (request: IncomingMessage) => [status: number, body: string]) {
  const stub = createServer((request, response) => {
    request.resume().on('end', () => {
      const [status, body] = answer(request)
      response.writeHead(status).end(body)
    })
  })
  await new Promise<void>((done) => stub.listen(0, '127.0.0.1', done))
  const { port } = stub.address() as AddressInfo
  return {
    origin: `http://127.0.0.1:${port}`,
    close: () => {
      stub.closeAllConnections()
      return new Promise((done) => stub.close(done))
    },
  }
}
