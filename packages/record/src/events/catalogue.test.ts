import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import * as z from 'zod/mini'
import { sayEntry } from '../say.ts'
import { SAMPLES } from '../testing/samples.ts'
import { seeded } from '../unitFile/testing/random.ts'
import { CATALOGUE, readBody } from './catalogue.ts'
import { type Definition, defineEvent } from './define.ts'
import type { Event } from './event.ts'
import type { Json } from './json.ts'
import { eventJsonSchemaText } from './jsonSchema.ts'
import { noteWritten } from './noteWritten.ts'
import { passTorqued } from './passTorqued.ts'
import { THINGS } from './places.ts'
import { readingTaken } from './readingTaken.ts'

const published = (name: string) => readFileSync(new URL(`../../../../docs/${name}`, import.meta.url), 'utf8')
const types = CATALOGUE.map(({ type }) => type)

test('every type stands in the catalogue once, with one step from each version to the next', () => {
  expect(new Set(types).size).toBe(types.length)
  for (const { type, version, upgrades } of CATALOGUE) expect(upgrades.length, type).toBe(version - 1)
})

test('every type has a body that passes, a sentence, and writes only into places that are known', () => {
  const random = seeded(5)
  for (const definition of CATALOGUE as unknown as readonly Definition[]) {
    for (let i = 0; i < 20; i++) {
      const body = SAMPLES[definition.type as keyof typeof SAMPLES](random) as { [name: string]: Json }
      const event = { type: definition.type, version: 1, body }
      expect(readBody(event), definition.type).toMatchObject({ ok: true })
      expect(sayEntry(event as Event), definition.type).toMatch(/^[A-Z].*[^.]$/s)
      expect(sayEntry(event as Event), definition.type).not.toMatch(/undefined|\[object|NaN/)
      for (const { at } of definition.writes(body)) {
        const whats = at.filter((_, step) => step % 2 === 0)
        expect(['face', 'hole', 'kind', ...THINGS]).toEqual(expect.arrayContaining(whats))
      }
    }
  }
})

test('a body with an unknown, missing or wrong field is told with its path', () => {
  const read = (type: string, body: { [name: string]: Json }) => readBody({ type, version: 1, body })
  expect(read('note-written', { text: 'x', colour: 'red' })).toEqual({ ok: false, why: 'malformed', path: '' })
  expect(read('note-written', {})).toEqual({ ok: false, why: 'malformed', path: 'text' })
  expect(read('hole-marked', { face: 'pan', hole: '1', thread: 'Q7' })).toEqual({
    ok: false,
    why: 'malformed',
    path: 'thread',
  })
  expect(read('hole-marked', { face: '__proto__', hole: '1', thread: 'M6' })).toMatchObject({ ok: false, path: 'face' })
  expect(read('constructor', {})).toEqual({ ok: false, why: 'unknown-type' })
})

test('an older body is brought up step by step, and one of a newer version is left as it is', () => {
  const third = defineEvent({
    type: 'note-written',
    version: 3,
    upgrades: [
      (body) => ({ words: (body as { text: string }).text }),
      (body) => ({ ...(body as object), loud: false }),
    ],
    body: z.strictObject({ words: z.string(), loud: z.boolean() }),
    writes: () => [],
    say: ({ words }) => words,
  })
  const byType = new Map([['note-written', third as unknown as Definition]])
  const read = (version: number, body: { [name: string]: Json }) =>
    readBody({ type: 'note-written', version, body }, byType)
  expect(read(1, { text: 'x' })).toMatchObject({ ok: true, body: { words: 'x', loud: false } })
  expect(read(2, { words: 'x' })).toMatchObject({ ok: true, body: { words: 'x', loud: false } })
  expect(read(3, { words: 'x', loud: true })).toMatchObject({ ok: true, body: { words: 'x', loud: true } })
  expect(read(4, {})).toEqual({ ok: false, why: 'newer-version' })
})

test('a step that meets a body it never wrote does not throw', () => {
  const second = defineEvent({
    type: 'note-written',
    version: 2,
    upgrades: [(body) => ({ text: (body as { words: string[] }).words.join(' ') })],
    body: z.strictObject({ text: z.string() }),
    writes: () => [],
    say: ({ text }) => text,
  })
  const byType = new Map([['note-written', second as unknown as Definition]])
  expect(readBody({ type: 'note-written', version: 1, body: {} }, byType)).toEqual({
    ok: false,
    why: 'malformed',
    path: '',
  })
})

test('sentences are in the trade’s words', () => {
  const say = (happening: object) => sayEntry(happening as Event)
  expect(
    say(
      readingTaken({
        of: { face: 'pan', hole: '3', quantity: 'bottomDepth' },
        value: { value: 18, plusMinus: 0.1 },
        instrument: { name: 'depth gauge' },
      }),
    ),
  ).toBe('Bottom depth of hole 3 of pan: 18 ± 0.1 mm, by depth gauge')
  expect(say(passTorqued({ face: 'pan', hole: '3', pass: 2, final: true, torque: { value: 8, unit: 'lbf·ft' } }))).toBe(
    'Hole 3 of pan, final pass: 8 lbf·ft',
  )
  expect(say(noteWritten({ text: 'weeps', face: 'pan' }))).toBe('Note at pan: weeps')
  expect(say({ type: 'gear-ground', version: 1, body: {} })).toBe('An entry of a newer Gripbook (gear-ground 1)')
  expect(say({ type: 'note-written', version: 1, body: {} })).toBe(
    'An entry that cannot be read (note-written, at text)',
  )
})

test('the published schema is the one that reading checks with', () => {
  expect(published('event.schema.json')).toBe(eventJsonSchemaText())
})

test('every type is told in the documentation, and no other', () => {
  const told = [
    ...published('record.md')
      .split('## Every entry there is')[1]!
      .matchAll(/^\| `([a-z-]+)` \|/gm),
  ].map((match) => match[1])
  expect(told.toSorted()).toEqual(types.toSorted())
})
