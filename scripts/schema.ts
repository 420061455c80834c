/** Writes docs/unit.schema.json anew. A test holds the file against what this writes. */
import { writeFileSync } from 'node:fs'
import { unitJsonSchemaText } from '@gripbook/record'

writeFileSync(new URL('../docs/unit.schema.json', import.meta.url), unitJsonSchemaText())
