import { expect, test } from 'vitest'
import type { Face, Hole, Kind, Unit } from '../unit.ts'
import { place } from './place.ts'
import { plainHole, plainKind } from './testing/plainFace.ts'

const WEIGH = { habit: false, asFound: false }
const face = (id: string, holes: Hole[], kinds?: Kind[], more: Partial<Face> = {}): Face => ({
  id,
  weigh: WEIGH,
  holes,
  ...(kinds ? { kinds } : {}),
  ...more,
})
const unit = (faces: Face[], kinds?: Kind[]): Unit => ({ gripbook: 'unit/1', faces, ...(kinds ? { kinds } : {}) })
const answer = async (...of: Parameters<typeof unit>) => (await place(unit(...of))).faces

// A ×30 takes grips from 18 to 24, a ×35 from 23 to 29, a ×40 from 28 to 34.
const a = (count?: number) => plainKind('a', 30, count)
const b = (count?: number) => plainKind('b', 35, count)
const c = (count?: number) => plainKind('c', 40, count)

test('faces are answered in their order, each with its own holes and pairs', async () => {
  const faces = [face('pump', [plainHole('1', 20)]), face('block', [plainHole('1', 26), plainHole('2', 20)])]
  for (const order of [faces, [...faces].reverse()]) {
    const found = await answer(order, [a(), b()])
    expect(found.map(({ face: id }) => id)).toEqual(order.map(({ id }) => id))
    const block = found.find(({ face: id }) => id === 'block')!
    expect(Object.keys(block.holes)).toEqual(['1', '2'])
    expect(block.holes['1']?.best).toBe('b')
    expect(block.pairs.map(({ hole, kind }) => hole + kind)).toEqual(['1a', '1b', '2a', '2b'])
    expect(found.find(({ face: id }) => id === 'pump')!.holes['1']?.best).toBe('a')
  }
})

test('the bolts of a shared tray are counted over all faces', async () => {
  // Two ×30 and two ×35 for four holes; block takes its ×30 for sure.
  const [block, pump] = await answer(
    [face('block', [plainHole('1', 20), plainHole('2', 23.5)]), face('pump', [plainHole('1', 20), plainHole('2', 26)])],
    [a(2), b(2)],
  )
  expect(block!.holes['2']).toMatchObject({ verdict: 'settled', best: 'b' })
  expect(block!.holes['2']?.why).toBe('a would fit too, but cannot be spared from other holes')
  expect(pump!.holes['1']).toMatchObject({ verdict: 'settled', best: 'a' })
})

test('a clash over a shared tray stands in both faces, and in no other', async () => {
  const found = await answer(
    [face('block', [plainHole('1', 20)]), face('pump', [plainHole('7', 20)]), face('bell', [plainHole('1', 26)])],
    [a(1), b()],
  )
  const [block, pump, bell] = found
  expect(block!.conflict).toMatchObject({ holes: ['1', '7'], kinds: ['a'], short: 1 })
  expect(pump!.conflict).toEqual(block!.conflict)
  expect(block!.missing + pump!.missing).toBe(1)
  expect([block!.feasible, pump!.feasible, bell!.feasible]).toEqual([false, false, true])
  expect(bell!.conflict).toBeNull()
  expect(bell!.missing).toBe(0)
})

test('a tray of the face’s own is not open to the other face', async () => {
  const [block, pump] = await answer(
    [face('block', [plainHole('1', 20)], [a()]), face('pump', [plainHole('1', 20)], [plainKind('z', 30)])],
    [b()],
  )
  expect(block!.holes['1']?.may).toEqual(['a'])
  expect(pump!.holes['1']?.may).toEqual(['z'])
  expect(pump!.pairs.map(({ kind }) => kind)).toEqual(['z', 'b'])
})

test('kinds of one name in two trays are two kinds', async () => {
  const [block, pump] = await answer([
    face('block', [plainHole('1', 20, { asFound: 'a' })], [a(1)]),
    face('pump', [plainHole('1', 26, { asFound: 'a' })], [plainKind('a', 35, 1)]),
  ])
  expect(block!.holes['1']?.asFound?.verdict).toBe('right')
  expect(pump!.holes['1']?.asFound?.verdict).toBe('right')
})

test('a change in one face is no change in the other', async () => {
  const [block, pump] = await answer(
    [
      face('block', [plainHole('1', 20, { asFound: 'b' }), plainHole('2', 26, { asFound: 'a' })]),
      face('pump', [plainHole('1', 20, { asFound: 'a' })]),
    ],
    [a(), b()],
  )
  expect(block!.changes).toEqual({
    count: 2,
    cycles: [
      [
        { hole: '1', from: 'b', to: 'a' },
        { hole: '2', from: 'a', to: 'b' },
      ],
    ],
  })
  expect(pump!.changes).toEqual({ count: 0, cycles: [] })
})

test('what is left over of a shared tray is told at each face, of a face’s own tray at that face alone', async () => {
  const [block, pump] = await answer(
    [face('block', [plainHole('1', 20)], [plainKind('own', 55, 2)]), face('pump', [plainHole('1', 26)])],
    [a(3), b(1), c()],
  )
  expect(block!.leftOver).toEqual({ own: 2, a: 2 })
  expect(pump!.leftOver).toEqual({ a: 2 })
})

test('a bolt left over is told with the other faces that it would fit', async () => {
  const found = await answer([
    face('block', [plainHole('1', 26)], [a(1), b(1), c(1)]),
    face('pump', [plainHole('1', 20)], [plainKind('z', 30, 1)]),
    face('bell', [plainHole('1', { atLeast: 10 })], [plainKind('y', 30, 1)]),
  ])
  expect(found[0]!.leftOver).toEqual({ a: 1, c: 1 })
  expect(found[0]!.leftOverFits).toEqual({ a: ['pump', 'bell'], c: ['bell'] })
  expect(found[1]).not.toHaveProperty('leftOverFits')
})

test('a bolt left over fits another face whatever that face says of its own kinds', async () => {
  const [block] = await answer([
    face('block', [plainHole('1', 26)], [a(1), b(1)]),
    face(
      'pump',
      [plainHole('1', 20, { asFound: 'y' }), plainHole('2', 20)],
      [plainKind('z', 30, 3), plainKind('y', 31, 1)],
      {
        ranks: [{ quantity: 'length', less: 'z', more: 'y' }],
        trials: [{ hole: '1', kind: 'z', stickOut: 10 }],
      },
    ),
  ])
  expect(block!.leftOverFits).toEqual({ a: ['pump'] })
})

test('the next reading is told at the face that it is of', async () => {
  const [block, pump] = await answer([face('block', [plainHole('1')]), face('pump', [plainHole('1', 20)])], [a(), c()])
  expect(block!.next?.reading).toEqual({ quantity: 'grip', of: '1', place: 'hole' })
  expect(block!.next).not.toHaveProperty('holes')
  expect(pump!.next).toBeNull()
})

test('a ring of rank lines about the kinds of a shared tray stands at every face', async () => {
  const ranks = [{ quantity: 'length' as const, less: 'b', more: 'a' }]
  const [block, pump] = await answer(
    [face('block', [plainHole('1', 20)], undefined, { ranks }), face('pump', [plainHole('1', 26)])],
    [a(1), b(1)],
  )
  expect(block!.conflict?.kinds).toEqual(['b', 'a'])
  expect(pump!.conflict).toEqual(block!.conflict)
})

test('without a shared tray a clash of one face leaves the other alone', async () => {
  const [block, pump] = await answer([
    face('block', [plainHole('1', 20), plainHole('2', 20)], [a(1)]),
    face('pump', [plainHole('1', 20)], [plainKind('z', 30, 1)]),
  ])
  expect(block!.feasible).toBe(false)
  expect(pump!.feasible).toBe(true)
})

test('a bolt left over of a shared tray is told with the other faces that it would fit', async () => {
  const [block, pump] = await answer(
    [face('block', [plainHole('1', 20)]), face('pump', [plainHole('1', 26)])],
    [a(3), b(2)],
  )
  expect(block!.leftOver).toEqual({ a: 2, b: 1 })
  expect(block!.leftOverFits).toEqual({ b: ['pump'] })
  expect(pump!.leftOverFits).toEqual({ a: ['block'] })
})
