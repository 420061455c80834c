import { buffer } from 'node:stream/consumers'
import { setTimeout as pause } from 'node:timers/promises'
import { expect, test } from 'vitest'
import { type FileIn, zipOf } from './zipOut.ts'

async function* files(count: number, size: number, asked: { files: number; ended: boolean }): AsyncGenerator<FileIn> {
  try {
    for (let i = 0; i < count; i++) {
      asked.files++
      yield { name: `photographs/${i}.jpg`, bytes: Buffer.alloc(size, i) }
    }
  } finally {
    asked.ended = true
  }
}

test('the same files give the same bytes, in whatever time zone', async () => {
  const zones = ['UTC', 'Pacific/Kiritimati', 'America/Noronha']
  const usual = process.env.TZ
  const made = []
  for (const zone of zones) {
    process.env.TZ = zone
    made.push(await buffer(zipOf(files(3, 1_000, { files: 0, ended: false }))))
  }
  if (usual === undefined) delete process.env.TZ
  else process.env.TZ = usual
  expect(made[1]).toEqual(made[0])
  expect(made[2]).toEqual(made[0])
})

test('a reader who is slow is waited for, and one who goes away ends the making', async () => {
  const asked = { files: 0, ended: false }
  const zip = zipOf(files(50, 1_000_000, asked))
  await new Promise((done) => zip.once('readable', done))
  await pause(50)
  expect(asked.files, 'no more than what is on its way').toBeLessThan(5)
  zip.destroy()
  await pause(20)
  expect(asked).toEqual({ files: expect.any(Number), ended: true })
  expect(asked.files).toBeLessThan(6)
})

test('what fails while a file is made ends the stream with that error', async () => {
  const failing = (async function* (): AsyncGenerator<FileIn> {
    yield { name: 'first', bytes: Buffer.from('x') }
    yield {
      name: 'second',
      bytes: (async function* () {
        yield 'y'
        throw new Error('the disk is gone')
      })(),
    }
  })()
  await expect(buffer(zipOf(failing))).rejects.toThrow('the disk is gone')
})
