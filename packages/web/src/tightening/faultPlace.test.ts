import type { Face } from '@gripbook/engine'
import { expect, test } from 'vitest'
import { placedFault } from './faultPlace.ts'

const face: Face = {
  id: 'pan',
  holes: [
    { id: 'a', thread: 'M6' },
    { id: 'b', thread: 'M6' },
  ],
}

test('a fault stands beside what it speaks of, with its spot on the picture', () => {
  const crossed = placedFault(
    { path: ['faces', 0, 'cover', 'outline', 3], code: 'outline-crosses-itself', other: 0, near: [12.4, 30] },
    face,
  )
  expect(crossed).toMatchObject({ at: 'outline', near: [12.4, 30] })
  expect(crossed.words).toContain('12 mm across, 30 mm up')
  expect(
    placedFault({ path: ['faces', 0, 'bed', 'hollows', 1], code: 'opening-leaves-cover', near: [1, 2] }, face),
  ).toMatchObject({ at: 'hollows', index: 1 })
  expect(
    placedFault({ path: ['faces', 0, 'cover', 'lines', 0], code: 'line-leaves-cover', near: [1, 2] }, face),
  ).toMatchObject({
    at: 'lines',
    index: 0,
  })
  expect(placedFault({ path: ['faces', 0, 'bed'], code: 'bed-not-above-zero' }, face).at).toBe('bed')
})

test('a fault of a hole names it', () => {
  const outside = placedFault({ path: ['faces', 0, 'holes', 1, 'at'], code: 'bolt-outside-cover', at: [90, 4] }, face)
  expect(outside).toMatchObject({ at: 'holes', hole: 'b' })
  expect(outside.words).toMatch(/^Hole b: this hole lies outside/)
})
