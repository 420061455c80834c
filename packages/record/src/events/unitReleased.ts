import * as z from 'zod/mini'
import { defineEvent } from './define.ts'
import { maybe, sha256Hex, uuid, whole } from './parts.ts'
import { unitPlace } from './places.ts'

/** The unit is released. `heads` says up to which entry of each device the record was before the signer. */
export const unitReleased = defineEvent({
  type: 'unit-released',
  body: z.strictObject({
    heads: z.record(uuid, whole(1, Number.MAX_SAFE_INTEGER)),
    /** Hash of the entries up to these heads (`recordHash`). */
    record: sha256Hex,
    /** Ed25519 over the text of `record`: public key and signature in hex. */
    signature: maybe(
      z.strictObject({
        key: sha256Hex,
        value: z.string().check(z.regex(/^[0-9a-f]{128}$/)),
      }),
    ),
    onlyPerson: maybe(z.boolean()),
  }),
  writes: ({ heads, record }) => [{ at: unitPlace, field: 'released', value: { heads, record } }],
  say: ({ onlyPerson }) => `The unit released${onlyPerson === true ? ' (the shop is one person)' : ''}`,
})
