import * as z from 'zod/mini'
import { CATALOGUE } from './catalogue.ts'
import { eventSchema } from './event.ts'

/** The JSON Schema (draft 2020-12) of an entry in its present version, made from the definitions that reading checks with. Published as docs/event.schema.json. */
export function eventJsonSchema(): object {
  const [first, ...others] = CATALOGUE.map(({ type, version, body }) =>
    z.strictObject({ ...eventSchema.shape, type: z.literal(type), version: z.literal(version), body }),
  )
  const meta = { title: 'Gripbook entry', description: 'One entry of a unit’s record' }
  return z.toJSONSchema(z.union([first!, ...others]).check(z.meta(meta)), { target: 'draft-2020-12' })
}

/** The text of docs/event.schema.json. */
export function eventJsonSchemaText(): string {
  return `${JSON.stringify(eventJsonSchema(), null, 2)}\n`
}
