import { readFileSync } from 'node:fs'
import { place, type Unit } from '@gripbook/engine'
import { expect, test } from 'vitest'
import { calledByName, renamedAnswer } from './called.ts'

const demo = JSON.parse(readFileSync(new URL('../../../../demo/yard-loader.json', import.meta.url), 'utf8')) as Unit

/** Everything of an answer but its sentences. */
const bare = (value: unknown): unknown => JSON.parse(JSON.stringify(value, (key, item) => (key === 'why' ? '' : item)))

test('asked by names and brought back to ids, the answer is the same; only the sentences speak of names', async () => {
  const { unit, idOf } = calledByName(demo)
  const plain = (await place(demo)).faces
  const named = (await place(unit)).faces.map((face) => renamedAnswer(face, (name) => idOf(face.face, name)))
  expect(bare(named)).toEqual(bare(plain))
  expect(plain[0]!.holes['4']!.asFound!.why).toContain('c45')
  expect(named[0]!.holes['4']!.asFound!.why).toContain('M6×45')
  expect(JSON.stringify(named[2]!.conflict)).not.toMatch(/\bb\d\d\b.*why/)
})

test('two trays with the same ids, and kinds that look alike, keep apart', () => {
  const kind = (id: string, features?: string[]) => ({
    id,
    thread: 'M6',
    length: 45,
    ...(features ? { features } : {}),
  })
  const unit: Unit = {
    gripbook: 'unit/1',
    kinds: [kind('b1')],
    faces: [
      { id: 'pan', holes: [{ id: '1', thread: 'M6', asFound: 'b2' }], kinds: [kind('b2'), kind('b3')] },
      { id: 'cover', holes: [{ id: '1', thread: 'M6', asFound: 'M6×45 b2' }], kinds: [kind('b2')] },
    ],
  }
  const { unit: named, nameOf, idOf } = calledByName(unit)
  const all = [...named.kinds!, ...named.faces[0]!.kinds!].map(({ id }) => id)
  expect(new Set(all).size).toBe(3)
  for (const [face, id] of [
    ['pan', 'b1'],
    ['pan', 'b2'],
    ['pan', 'b3'],
    ['cover', 'b2'],
  ] as const)
    expect(idOf(face, nameOf(face, id))).toBe(id)
  // a name that a hole speaks of and no tray has is not given to another kind
  expect(nameOf('cover', 'b2')).not.toBe('M6×45 b2')
})
