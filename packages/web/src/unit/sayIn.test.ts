import {
  boltPlaced,
  faceClosed,
  faceDescribed,
  fold,
  type Happening,
  holeMarked,
  kindLaidOut,
  partCameOut,
  partWentIn,
  readingTaken,
} from '@gripbook/record'
import { expect, test } from 'vitest'
import { told, UNIT } from '../bench/testing/told.ts'
import { sayIn } from './sayIn.ts'

const at = { face: 'lid', hole: '2' }
const story: Happening[] = [
  faceDescribed({ face: 'lid', name: 'Pump cover' }),
  holeMarked({ ...at, thread: 'M6' }),
  kindLaidOut({ face: 'lid', kind: 'b3', thread: 'M6', length: 45 }),
  kindLaidOut({ kind: 'b1', thread: 'M8', length: 30 }),
  partCameOut({ part: 'clip-1', what: 'clip', name: 'Clip of the sensor', face: 'lid' }),
  partCameOut({ part: 'check-ball-1', what: 'check ball', face: 'lid' }),
]
const saying = (happening: Happening) => {
  const { events } = told([...story, happening])
  return sayIn(fold(UNIT, events))(events.at(-1)!)
}

test('what entries know by an id is said by its name: faces, bolts and parts', () => {
  expect(saying(boltPlaced({ ...at, kind: 'b3' }))).toBe('A bolt of kind M6×45 put at hole 2 of Pump cover')
  expect(saying(boltPlaced({ ...at, kind: 'b1' }))).toBe('A bolt of kind M8×30 put at hole 2 of Pump cover')
  expect(saying(faceClosed({ face: 'lid' }))).toBe('Face Pump cover closed')
  expect(saying(partWentIn({ part: 'clip-1' }))).toBe('Part Clip of the sensor went in')
  expect(saying(readingTaken({ of: { ...at, quantity: 'grip' }, value: 20 }))).toBe(
    'Grip of hole 2 of Pump cover: 20 mm',
  )
})

test('what has no name, or is no longer there, keeps its id', () => {
  expect(saying(partWentIn({ part: 'check-ball-1' }))).toBe('Part check-ball-1 went in')
  expect(saying(boltPlaced({ face: 'pan', hole: '1', kind: 'b9' }))).toBe('A bolt of kind b9 put at hole 1 of pan')
})
