import { readFileSync } from 'node:fs'
import type { Unit } from '@gripbook/engine'
import { expect, test } from 'vitest'
import type * as z from 'zod/mini'
import { unitJsonSchema, unitJsonSchemaText } from './jsonSchema.ts'
import { readUnitFile } from './read.ts'
import type { unitSchema } from './schema.ts'

/** The same type with every intersection and alias written out, so that two types compare by what they hold. */
type Plain<T> = T extends (infer E)[]
  ? T extends [infer A, infer B]
    ? [Plain<A>, Plain<B>]
    : Plain<E>[]
  : T extends object
    ? { [K in keyof T]: Plain<T[K]> }
    : T
type Same<A, B> = (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false

test('the type of the schema is the engine’s unit, field for field', () => {
  const same: Same<Plain<z.infer<typeof unitSchema>>, Plain<Unit>> = true
  expect(same).toBe(true)
})

const published = (name: string) => readFileSync(new URL(`../../../../docs/${name}`, import.meta.url), 'utf8')

test('the published schema is the one that reading checks with', () => {
  expect(published('unit.schema.json'), 'run: npm run schema').toBe(unitJsonSchemaText())
})

test('every field of the schema is told in the documentation', () => {
  const told = published('unit-file.md')
  const fields = new Set<string>()
  const collect = (value: unknown): void => {
    if (typeof value !== 'object' || value === null) return
    for (const [name, inner] of Object.entries(value)) {
      if (name === 'properties') for (const field of Object.keys(inner as object)) fields.add(field)
      collect(inner)
    }
  }
  collect(unitJsonSchema())
  expect(fields.size).toBeGreaterThan(60)
  expect([...fields].filter((field) => !told.includes(`\`${field}\``))).toEqual([])
})

test('the example of the documentation is a unit file', () => {
  const example = /```json\n([\s\S]*?)```/.exec(published('unit-file.md'))?.[1] ?? ''
  expect(readUnitFile(example)).toMatchObject({ ok: true })
})
