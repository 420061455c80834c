import type { Hole, Point } from '@gripbook/engine'
import type { FaceWork } from '@gripbook/record'
import { expect, test } from 'vitest'
import { frameOf, holePlaces } from './frame.ts'

const hole = (id: string, at?: Point): Hole => ({ id, thread: 'M6', ...(at === undefined ? {} : { at }) })
const standing = <T>(value: T) => ({ value, event: 'e', who: 'w', at: '2026-11-25T10:00:00.000Z' })
const work = (marks: Record<string, [number, number]>, pixelsPerMillimetre?: number): FaceWork => ({
  photograph: standing({
    photograph: 'p',
    width: 1600,
    height: 1200,
    ...(pixelsPerMillimetre === undefined ? {} : { pixelsPerMillimetre }),
  }),
  holes: Object.fromEntries(Object.entries(marks).map(([id, mark]) => [id, { mark: standing(mark), steps: {} }])),
})

test('with a scale and no place in mm the corner of the photograph is the corner of the face', () => {
  const frame = frameOf({ holes: [hole('1')] }, work({ 1: [80, 400] }, 8))!
  expect(frame.toFace({ x: 80 / 1600, y: 400 / 1200 })).toEqual([10, 100])
  const back = frame.toPicture([10, 100])
  expect(back.x).toBeCloseTo(0.05, 12)
  expect(back.y).toBeCloseTo(1 / 3, 12)
})

test('holes with marks and places say where the photograph lies on the face, also without a scale', () => {
  const face = { holes: [hole('1', [0, 0]), hole('2', [100, 0]), hole('3', [100, 50])] }
  const frame = frameOf(face, work({ 1: [200, 900], 2: [700, 900], 3: [700, 650] }))!
  expect(frame.scale).toBeCloseTo(5, 9)
  expect(frame.toFace({ x: 700 / 1600, y: 650 / 1200 })).toEqual([100, 50])
})

test('a face from a file is laid out on the blank sheet by its places', () => {
  const face = { holes: [hole('1', [10, 10]), hole('2', [110, 60])] }
  const frame = frameOf(face, undefined)!
  const places = holePlaces(face, undefined, frame)
  for (const { id, at } of face.holes) expect(frame.toFace(places.get(id)!)).toEqual(at)
})

test('no scale, and nothing to take it from', () => {
  expect(frameOf({ holes: [hole('1'), hole('2')] }, work({ 1: [80, 400], 2: [500, 400] }))).toBeNull()
  expect(frameOf({ holes: [hole('1', [3, 4])] }, work({ 1: [80, 400] }))).toBeNull()
})

test('a hole without a mark lies where its place in mm says', () => {
  const face = { holes: [hole('1', [0, 0]), hole('2', [100, 0]), hole('3', [50, 20])] }
  const there = work({ 1: [200, 900], 2: [700, 900] })
  const place = holePlaces(face, there, frameOf(face, there)).get('3')!
  expect(place.x * 1600).toBeCloseTo(450, 6)
  expect(place.y * 1200).toBeCloseTo(800, 6)
})
