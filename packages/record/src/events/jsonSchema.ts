import * as z from 'zod/mini'
import { CATALOGUE } from './catalogue.ts'
import { eventSchema } from './event.ts'

/**
 * The JSON Schema (draft 2020-12) of an entry in its present version, made from the definitions that reading checks with: the envelope once, and one
 * shape of `type`, `version` and `body` for each type. Published as docs/event.schema.json.
 */
export function eventJsonSchema(): object {
  const target = { target: 'draft-2020-12' } as const
  const [first, ...others] = CATALOGUE.map(({ type, version, body }) =>
    z.looseObject({ type: z.literal(type), version: z.literal(version), body }),
  )
  const { $schema: _, ...bodies } = z.toJSONSchema(z.union([first!, ...others]), target)
  return {
    title: 'Gripbook entry',
    description: 'One entry of a unit’s record',
    ...z.toJSONSchema(eventSchema, target),
    ...bodies,
  }
}

/** The text of docs/event.schema.json. */
export function eventJsonSchemaText(): string {
  return `${JSON.stringify(eventJsonSchema(), null, 2)}\n`
}
