import { expect, test } from 'vitest'
import { lyingBolt } from './lyingBolt.ts'

const M8 = { diameter: 8, pitch: 1.25, name: 'M8' }
const bolt = (length: number, room: { width: number; height: number }, pixels = 6) =>
  lyingBolt({
    kind: { id: 'p45', thread: 'M8', length, head: { form: 'hex flange', acrossFlats: 10 } },
    thread: M8,
    title: 'M8×45',
    look: { theme: 'light', unit: 'mm' },
    pixels,
    room,
  })

test('a bolt that has the room is drawn as long as it is', () => {
  const { svg, share } = bolt(45, { width: 390, height: 180 })
  expect(share).toBe(1)
  expect(svg).toContain('data-pixels-per-mm="6"')
  expect(svg).toContain('M8×45, 45 mm')
})

test('one that is longer than the room is drawn to half its size and says so', () => {
  const { svg, share } = bolt(65, { width: 390, height: 180 })
  expect(share).toBe(0.5)
  expect(svg).toContain('data-pixels-per-mm="3"')
})

test('one that is thicker than the room is drawn smaller too', () => {
  expect(bolt(30, { width: 390, height: 100 }).share).toBe(0.5)
})

test('the rule starts at the underside of the head, where a length is measured from', () => {
  const { svg } = bolt(45, { width: 390, height: 180 })
  const seat = /translate\(([\d.]+) /.exec(svg)![1]!
  expect(svg).toContain(`<line x1="${seat}" y1=`)
})

test('a bolt of unknown length is broken off', () => {
  const { svg } = lyingBolt({
    kind: { id: 'x', thread: 'M8' },
    thread: M8,
    title: 'M8',
    look: { theme: 'dark' },
    pixels: 4,
    room: { width: 300, height: 140 },
  })
  expect(svg).toContain('M8, ?')
})
