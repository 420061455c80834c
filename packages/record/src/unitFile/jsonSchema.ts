import * as z from 'zod/mini'
import { unitSchema } from './schema.ts'

/** The JSON Schema (draft 2020-12) of the unit file, made from the definitions that reading checks with. Published as docs/unit.schema.json. */
export function unitJsonSchema(): object {
  return z.toJSONSchema(unitSchema, { target: 'draft-2020-12' })
}

/** The text of docs/unit.schema.json. */
export function unitJsonSchemaText(): string {
  return `${JSON.stringify(unitJsonSchema(), null, 2)}\n`
}
