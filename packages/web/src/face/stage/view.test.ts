import fc from 'fast-check'
import { expect, test } from 'vitest'
import { moved, onPicture, onScreen, pinched, roomForTools, showing, wholeView, zoomed } from './view.ts'

const stage = { width: 390, height: 500 }
const picture = { width: 4000, height: 3000 }
const point = fc.record({
  x: fc.double({ min: 0, max: 1, noNaN: true }),
  y: fc.double({ min: 0, max: 1, noNaN: true }),
})

test('the whole picture lies on the stage and touches two of its sides', () => {
  const view = wholeView(stage, picture, { top: 60, bottom: 50, right: 0 })
  expect(view.scale * picture.width).toBeCloseTo(stage.width)
  expect(view.x).toBeCloseTo(0)
  expect(view.y).toBeGreaterThanOrEqual(60)
  expect(view.y + view.scale * picture.height).toBeLessThanOrEqual(stage.height - 50)
})

test('a point on the picture comes back from the screen', () => {
  fc.assert(
    fc.property(point, fc.double({ min: 0.2, max: 9, noNaN: true }), (at, factor) => {
      const view = zoomed(wholeView(stage, picture), stage, picture, factor, { x: 100, y: 200 })
      const back = onPicture(view, picture, onScreen(view, picture, at))
      expect(back.x).toBeCloseTo(at.x, 9)
      expect(back.y).toBeCloseTo(at.y, 9)
    }),
    { seed: 1 },
  )
})

test('what lies under the finger stays there when the picture comes nearer', () => {
  const about = { x: 150, y: 250 }
  const before = wholeView(stage, picture)
  const after = zoomed(before, stage, picture, 3, about)
  const was = onPicture(before, picture, about)
  const is = onPicture(after, picture, about)
  expect(is.x).toBeCloseTo(was.x, 9)
  expect(is.y).toBeCloseTo(was.y, 9)
})

test('two fingers that spread keep the picture under them', () => {
  const view = wholeView(stage, picture)
  const from = [
    { x: 150, y: 250 },
    { x: 250, y: 250 },
  ] as const
  const to = [
    { x: 110, y: 260 },
    { x: 290, y: 260 },
  ] as const
  const after = pinched(view, stage, picture, from, to)
  for (const i of [0, 1] as const)
    expect(onPicture(after, picture, to[i]).x).toBeCloseTo(onPicture(view, picture, from[i]).x, 6)
})

test('however it is drawn, some of the picture stays on the stage', () => {
  const far = fc.integer({ min: -20_000, max: 20_000 })
  fc.assert(
    fc.property(far, far, fc.double({ min: 0.1, max: 30, noNaN: true }), (dx, dy, factor) => {
      const near = zoomed(wholeView(stage, picture), stage, picture, factor, { x: 10, y: 10 })
      const view = moved(near, stage, picture, dx, dy)
      expect(view.x).toBeLessThan(stage.width)
      expect(view.y).toBeLessThan(stage.height)
      expect(view.x + view.scale * picture.width).toBeGreaterThan(0)
      expect(view.y + view.scale * picture.height).toBeGreaterThan(0)
    }),
    { seed: 2 },
  )
})

test('a hole that is opened comes into sight, and the view stays when it is', () => {
  fc.assert(
    fc.property(point, point, (about, at) => {
      const near = zoomed(wholeView(stage, picture), stage, picture, 4, {
        x: about.x * stage.width,
        y: about.y * stage.height,
      })
      const view = showing(near, stage, picture, at)
      const there = onScreen(view, picture, at)
      expect(there.x).toBeGreaterThanOrEqual(-1)
      expect(there.x).toBeLessThanOrEqual(stage.width + 1)
      expect(there.y).toBeGreaterThanOrEqual(-1)
      expect(there.y).toBeLessThanOrEqual(stage.height + 1)
      expect(showing(view, stage, picture, at).scale).toBe(view.scale)
    }),
    { seed: 3 },
  )
})

test('buttons lie where they leave the picture larger, and never where they have no room', () => {
  const wide = { width: 400, height: 300 }
  expect(roomForTools({ width: 390, height: 380 }, wide, 60, 56, 3)).toEqual({ top: 60, bottom: 56, right: 0 })
  expect(roomForTools({ width: 390, height: 350 }, wide, 90, 80, 3)).toEqual({ top: 90, bottom: 0, right: 80 })
  // three buttons of 80 do not stand in 150
  expect(roomForTools({ width: 390, height: 240 }, wide, 90, 80, 3)).toEqual({ top: 90, bottom: 80, right: 0 })
})
