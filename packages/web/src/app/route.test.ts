import { expect, test } from 'vitest'
import { outOf, pathOf, type Route, readRoute } from './route.ts'

const ROUTES: Route[] = [
  { at: 'units' },
  { at: 'take-in' },
  { at: 'settings' },
  { at: 'unit', book: 'shop', unit: 'u-1' },
  { at: 'story', book: 'practice', unit: 'u-1' },
  { at: 'parts', book: 'shop', unit: 'u-1' },
  { at: 'finish', book: 'shop', unit: 'u-1' },
  { at: 'figures', book: 'practice', unit: 'u-1' },
  { at: 'face', book: 'practice', unit: 'u-1', face: 'غطاء / 蓋 %' },
  { at: 'face', book: 'shop', unit: 'u-1', face: 'pan', hole: '7/8 #?' },
  { at: 'tray', book: 'shop', unit: 'u-1', face: 'pan' },
  { at: 'tightening', book: 'practice', unit: 'u-1', face: 'pan' },
  { at: 'bench', book: 'shop', unit: 'u-1', face: 'pan' },
  { at: 'readings', book: 'shop', unit: 'u-1', face: 'pan' },
  { at: 'readings', book: 'practice', unit: 'u-1', face: 'pan', of: 'grip' },
]

test.each(ROUTES)('%j comes back from its address', (route) => {
  expect(readRoute(pathOf(route))).toEqual(route)
})

test.each(['/nowhere', '/unit', '/unit/u/door', '/unit/u/face', '/%E0%A4%A', '/practice'])(
  'the address %s leads to a page all the same',
  (path) => {
    expect(['units', 'unit']).toContain(readRoute(path).at)
  },
)

test('out of every page one comes to the list of units', () => {
  for (const route of ROUTES) {
    let at = route
    for (let steps = 0; at.at !== 'units'; steps++) {
      expect(steps).toBeLessThan(4)
      at = outOf(at)
    }
  }
})
