/** Who made a file: an Ed25519 signature over the hash in its manifest, by the shop's own key. */
import { createPrivateKey, createPublicKey, sign, verify } from 'node:crypto'
import { SHA256_HEX } from '@gripbook/record'
import type { Kysely } from 'kysely'
import * as z from 'zod/mini'
import type { Tables } from '../database/tables.ts'

/** The bytes that stand before the 32 of the key itself in its usual form (RFC 8410). */
const KEY_PREFIX = Buffer.from('302a300506032b6570032100', 'hex')

const signatureSchema = z.strictObject({
  /** The public key, 32 bytes as hex. */
  key: z.string().check(z.regex(SHA256_HEX)),
  /** Over the UTF-8 text of the manifest's hash, 64 bytes as hex. */
  signature: z.string().check(z.regex(/^[0-9a-f]{128}$/)),
})

/** The text of `signature.json`. */
export async function signedBy(db: Kysely<Tables>, manifestHash: string): Promise<string> {
  const { public_key: key, private_key } = await db.selectFrom('shop_key').selectAll().executeTakeFirstOrThrow()
  const signature = sign(null, Buffer.from(manifestHash), createPrivateKey(private_key)).toString('hex')
  return `${JSON.stringify({ key, signature }, null, 2)}\n`
}

export async function shopKey(db: Kysely<Tables>): Promise<string> {
  return (await db.selectFrom('shop_key').select('public_key').executeTakeFirstOrThrow()).public_key
}

/** `none`: nobody signed it. `wrong`: it was not signed like this. Else the key of whoever signed it: whose that is, the reader knows. */
export type Signer = 'none' | 'wrong' | { key: string }

export function signerOf(text: string | undefined, manifestHash: string): Signer {
  if (text === undefined) return 'none'
  try {
    const { key, signature } = signatureSchema.parse(JSON.parse(text))
    const publicKey = createPublicKey({
      key: Buffer.concat([KEY_PREFIX, Buffer.from(key, 'hex')]),
      format: 'der',
      type: 'spki',
    })
    return verify(null, Buffer.from(manifestHash), publicKey, Buffer.from(signature, 'hex')) ? { key } : 'wrong'
  } catch {
    return 'wrong'
  }
}
