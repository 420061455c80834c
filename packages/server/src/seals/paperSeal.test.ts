import { generateKeyPairSync, sign } from 'node:crypto'
import { expect, test } from 'vitest'
import { checkPaper, isPaper, sealed } from './paperSeal.ts'

const { privateKey, publicKey } = generateKeyPairSync('ed25519')
const KEY = publicKey.export({ format: 'der', type: 'spki' }).subarray(-32).toString('hex')
const signs = async (hash: string): Promise<string> =>
  JSON.stringify({ key: KEY, signature: sign(null, Buffer.from(hash), privateKey).toString('hex') })

const OF = { record: 'c'.repeat(64), entries: 12, unit: '00000000-0000-4000-8000-00000000000a' }
/** What stands in it does not matter to the seal: three objects and an end. */
const PDF = Buffer.from(
  `%PDF-1.7\n${[1, 2, 3].map((n) => `${n} 0 obj\n(${'x'.repeat(700)})\nendobj\n`).join('')}startxref\n9\n%%EOF\n`,
)

test('a sealed PDF is whole, and says what it was made from and whose key signed it', async () => {
  expect(checkPaper(await sealed(PDF, OF, signs))).toEqual({ ...OF, key: KEY, faults: [] })
  expect(checkPaper(await sealed(PDF, OF))).toEqual({ ...OF, key: null, faults: [] })
  expect((await sealed(PDF, OF, signs)).subarray(0, PDF.length).equals(PDF)).toBe(true)
})

test('[PR15] every changed byte of a sealed PDF is found, and the place that is named holds it', async () => {
  for (const bytes of [await sealed(PDF, OF, signs), await sealed(PDF, OF)]) {
    for (let at = 0; at < bytes.length; at++) {
      const changed = Buffer.from(bytes)
      changed[at]! ^= 1 + (at % 255)
      expect(isPaper(changed), `byte ${at}`).toBe(true)
      const { faults } = checkPaper(changed)
      expect(faults.length, `byte ${at}`).toBeGreaterThan(0)
      if (at < PDF.length) expect(holds(faults, at), `byte ${at}: ${faults}`).toBe(true)
      else expect(faults.join(' '), `byte ${at}`).toMatch(/seal/)
    }
  }
})

function holds(faults: readonly string[], at: number): boolean {
  return faults.some((words) => {
    const [, from, to] = /bytes (\d+) to (\d+) of the PDF/.exec(words) ?? []
    return Number(from) <= at && at <= Number(to)
  })
}

test('the object of the PDF that a change lies in is named', async () => {
  const bytes = await sealed(PDF, OF, signs)
  bytes[1_500]! ^= 1
  expect(checkPaper(bytes).faults).toEqual(['Changed: bytes 1024 to 2047 of the PDF, in or after its object 2.'])
})

test('what is cut off, taken out or put behind is found', async () => {
  const bytes = await sealed(PDF, OF, signs)
  const some: Buffer[] = [
    bytes.subarray(0, PDF.length),
    bytes.subarray(0, -1),
    Buffer.concat([bytes, Buffer.from('\n')]),
    Buffer.concat([bytes.subarray(0, 100), bytes.subarray(101)]),
    Buffer.concat([bytes.subarray(0, 100), Buffer.from('x'), bytes.subarray(100)]),
    Buffer.concat([PDF, Buffer.from('more\n'), bytes.subarray(PDF.length)]),
  ]
  for (const changed of some) expect(checkPaper(changed).faults.length).toBeGreaterThan(0)
})

test('a seal that was taken from another record, or signed over something else, does not fit', async () => {
  const bytes = await sealed(PDF, OF, signs)
  const text = bytes.toString('latin1')
  const other = Buffer.from(text.replace('"entries":12', '"entries":13'), 'latin1')
  expect(checkPaper(other).faults).toEqual([expect.stringMatching(/^Changed: the seal/)])
  const forged = await sealed(PDF, OF, async () => JSON.stringify({ key: KEY, signature: '0'.repeat(128) }))
  expect(checkPaper(forged).faults).toEqual([expect.stringMatching(/The signature does not fit/)])
})
