import fc from 'fast-check'
import { expect, test } from 'vitest'
import { crosses, lineTo, placeLabels, type ToLabel } from './labels.ts'

const BOUNDS = { x: 0, y: 0, width: 260, height: 180 }

/** Holes a good way apart with labels that have room beside them. */
const roomy = fc
  .uniqueArray(fc.tuple(fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 4 })), {
    minLength: 1,
    maxLength: 14,
    selector: ([x, y]) => `${x} ${y}`,
  })
  .map((grid) => grid.map(([x, y]): ToLabel => ({ at: [x * 42, y * 36], clear: 7, width: 22, height: 9 })))

test('where there is room no label lies on a hole, on another label or off the sheet', () => {
  fc.assert(
    fc.property(roomy, (labels) => {
      const { boxes, amiss } = placeLabels(labels, BOUNDS)
      expect(amiss).toBeLessThan(0.01)
      for (const [i, box] of boxes.entries()) {
        expect(box.x).toBeGreaterThanOrEqual(BOUNDS.x - 1e-6)
        expect(box.x + box.width).toBeLessThanOrEqual(BOUNDS.x + BOUNDS.width + 1e-6)
        expect(box.y).toBeGreaterThanOrEqual(BOUNDS.y - 1e-6)
        expect(box.y + box.height).toBeLessThanOrEqual(BOUNDS.y + BOUNDS.height + 1e-6)
        for (const { at, clear } of labels) {
          const dx = Math.max(box.x - at[0], 0, at[0] - box.x - box.width)
          const dy = Math.max(box.y - at[1], 0, at[1] - box.y - box.height)
          expect(Math.hypot(dx, dy)).toBeGreaterThan(clear - 1e-3)
        }
        for (const other of boxes.slice(i + 1)) {
          const across = Math.min(box.x + box.width, other.x + other.width) - Math.max(box.x, other.x)
          const down = Math.min(box.y + box.height, other.y + other.height) - Math.max(box.y, other.y)
          expect(across > 1e-6 && down > 1e-6).toBe(false)
        }
      }
    }),
    { numRuns: 40, seed: 20260301 },
  )
})

test('what lies amiss is told where there is no room', () => {
  const labels = Array.from({ length: 6 }, (): ToLabel => ({ at: [10, 10], clear: 5, width: 30, height: 10 }))
  expect(placeLabels(labels, { x: 0, y: 0, width: 32, height: 20 }).amiss).toBeGreaterThan(10)
})

test('no line to a hole strikes through the words of another, in a ring of 60 holes on one sheet', () => {
  const labels = Array.from({ length: 60 }, (_, i): ToLabel => {
    const angle = (i * Math.PI) / 30
    return { at: [95 + 70 * Math.cos(angle), 120 + 70 * Math.sin(angle)], clear: 6.7, width: 15, height: 8 }
  })
  const { boxes, amiss } = placeLabels(labels, { x: 0, y: 0, width: 190, height: 240 })
  const struck = labels.flatMap((label, i) => {
    const line = lineTo(boxes[i]!, label)
    return line === undefined ? [] : boxes.filter((box, j) => j !== i && crosses(box, ...line))
  })
  expect(struck).toEqual([])
  expect(amiss).toBeLessThan(1)
})
