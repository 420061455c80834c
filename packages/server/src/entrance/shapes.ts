/** How ids, hashes, people and devices stand in requests. */
import { isPrintable, SHA256_HEX, UUID } from '@gripbook/record'
import * as z from 'zod/mini'
import { ROLES } from './entrance.ts'

export const MOST_OF_A_NAME = 80

export const uuid = z.string().check(z.regex(UUID))
export const sha256Hex = z.string().check(z.regex(SHA256_HEX))

/** A person's or a device's name: 1 to 80 characters that are seen, spaces around them left away. */
export const shownName = z.string().check(
  z.trim(),
  z.normalize('NFC'),
  z.minLength(1),
  z.refine((name) => [...name].length <= MOST_OF_A_NAME, { error: `at most ${MOST_OF_A_NAME} characters` }),
  z.refine((name) => isPrintable(name) && !/\p{Surrogate}/u.test(name) && /[^\s\p{Cf}]/u.test(name), {
    error: 'characters that can be seen',
  }),
)

export const role = z.enum(ROLES)

export const person = z.object({
  id: z.string(),
  name: z.string(),
  role,
  since: z.string(),
  left: z.nullable(z.string()),
})

export const device = z.object({ id: z.string(), name: z.string() })

export const session = z.object({
  id: z.string(),
  person,
  device,
  since: z.string(),
  lastUsed: z.string(),
  expires: z.string(),
})
