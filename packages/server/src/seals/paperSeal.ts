/**
 * The seal of a PDF: one line after its end, where readers of PDF look for nothing. It holds the hash of all bytes before it, short hashes of its blocks, which
 * unit and which entries it was made from, and where a shop made it, that shop's Ed25519 signature over all this.
 */
import { canonical, type Json } from '@gripbook/record'
import * as z from 'zod/mini'
import { type Signer, signerOf } from '../archives/signature.ts'
import { sha256 } from '../sha256.ts'
import { differing, type Marked, marksOf, type Stretch, stretchWords } from './blocks.ts'

const BEGIN = '%gripbook-seal/1 '
/** A seal has no more: 30 doublings of 64 short hashes each, and what else is in it. */
const MOST = 20_000
const hex = (digits: number) => z.string().check(z.regex(new RegExp(`^[0-9a-f]{${digits}}$`)))
const sealSchema = z.strictObject({
  bytes: z.number().check(z.int(), z.gte(0)),
  sha256: hex(64),
  blocks: z.string().check(z.regex(/^([0-9a-f]{8})*$/)),
  /** Hash of the entries (`recordHash`); of a unit file that of its text. */
  record: hex(64),
  entries: z.number().check(z.int(), z.gte(0)),
  unit: z.string(),
  /** SHA-256 of the canonical JSON of all fields above. */
  hash: hex(64),
  signed: z.nullable(z.strictObject({ key: hex(64), signature: hex(128) })),
})

type Seal = z.infer<typeof sealSchema>
export type PaperOf = Pick<Seal, 'record' | 'entries' | 'unit'>

/** The PDF with its seal. `sign` gives the text of a `signature.json` over a hash; without it nobody signs. */
export async function sealed(
  pdf: Uint8Array,
  { record, entries, unit }: PaperOf,
  sign?: (hash: string) => Promise<string>,
): Promise<Buffer> {
  const unhashed = { ...marksOf(pdf), record, entries, unit }
  const hash = sha256(canonical(unhashed as Json))
  const signed = sign === undefined ? null : (JSON.parse(await sign(hash)) as NonNullable<Seal['signed']>)
  const seal: Seal = { ...unhashed, hash, signed }
  return Buffer.concat([pdf, Buffer.from(`${BEGIN}${canonical(seal as Json)}\n`)])
}

export type CheckedPaper = PaperOf & { faults: string[]; key: string | null }

/** A PDF, or something that carries the seal of one. */
export function isPaper(bytes: Buffer): boolean {
  return bytes.subarray(0, 5).toString('latin1') === '%PDF-' || sealAt(bytes) >= 0
}

/** Every fault of a PDF in words that name the place; none when each byte is as it was made. What is said of unit and entries holds only then. */
export function checkPaper(bytes: Buffer): CheckedPaper {
  const at = sealAt(bytes)
  if (at < 0)
    return {
      ...NOTHING,
      faults: ['It carries no seal of Gripbook at its end: it was cut off, changed there, or never had one.'],
    }
  const where = `the seal, ${stretchWords({ from: at, to: bytes.length })}`
  const text = bytes.subarray(at + BEGIN.length).toString('utf8')
  const seal = readSeal(text)
  if (seal === null) return { ...NOTHING, faults: [`Changed: ${where}.`] }
  const signer = signerIn(seal)
  const { bytes: length, sha256: whole, blocks, record, entries, unit } = seal
  const marked: Marked = { bytes: length, sha256: whole, blocks }
  const found = marksOf(bytes.subarray(0, at))
  const places = differing(marked, found)
  const isSame = found.sha256 === whole && found.bytes === length
  const isOwn = seal.hash === hashIn(seal)
  const faults: string[] = []
  if (!isSame && places.length > 0 && isOwn) faults.push(...places.map((place) => placeWords(place, bytes)))
  else if (!isSame || places.length > 0 || !isOwn) faults.push(`Changed: ${where}.`)
  if (signer === 'wrong') faults.push(`The signature does not fit: ${where}, was changed, or signed by nobody.`)
  return { record, entries, unit, faults, key: typeof signer === 'object' ? signer.key : null }
}

const NOTHING = { record: '', entries: 0, unit: '', key: null }

/** Where the last line begins, if it is a seal; −1. */
function sealAt(bytes: Buffer): number {
  const from = Math.max(0, bytes.length - MOST)
  const at = bytes.subarray(from).lastIndexOf(BEGIN)
  return at < 0 ? -1 : from + at
}

/** Only a seal that is written letter by letter as Gripbook writes it is one. */
function readSeal(text: string): Seal | null {
  try {
    const read = sealSchema.safeParse(JSON.parse(text))
    return read.success && `${canonical(read.data as Json)}\n` === text ? read.data : null
  } catch {
    return null
  }
}

function hashIn({ hash: _, signed: __, ...rest }: Seal): string {
  return sha256(canonical(rest as Json))
}

function signerIn({ hash, signed }: Seal): Signer {
  return signerOf(signed === null ? undefined : JSON.stringify(signed), hash)
}

/** The place in bytes, and the object of the PDF that it begins in. */
function placeWords(place: Stretch, bytes: Buffer): string {
  const before = bytes.subarray(0, place.from + 1).toString('latin1')
  const object = [...before.matchAll(/(?:^|\n)(\d+) 0 obj/g)].at(-1)?.[1]
  return `Changed: ${stretchWords(place)} of the PDF${object === undefined ? '' : `, in or after its object ${object}`}.`
}
