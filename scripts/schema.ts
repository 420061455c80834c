/** Writes the published schemas under docs/ anew. Tests hold the files against what this writes. */
import { writeFileSync } from 'node:fs'
import { eventJsonSchemaText, unitJsonSchemaText } from '@gripbook/record'

writeFileSync(new URL('../docs/unit.schema.json', import.meta.url), unitJsonSchemaText())
writeFileSync(new URL('../docs/event.schema.json', import.meta.url), eventJsonSchemaText())
