import fc from 'fast-check'
import { expect, test } from 'vitest'
import { anyKind, anyLook, anyThread, NASTY } from '../testing/arbitrary.ts'
import { collisions, everyNode, parts, readSvg, textBoxes } from '../testing/svg.ts'
import { trayDrawing } from './trayDrawing.ts'

const M6 = { diameter: 6, pitch: 1, name: 'M6' }
const bolt = (id: string, length: number, more = {}) => ({
  kind: { id, thread: 'M6', length, threadLength: 18, ...more },
  thread: M6,
})

test('shanks are as long as they are, to one scale', () => {
  const svg = readSvg(trayDrawing({ title: 'Tray', bolts: [bolt('b1', 45), bolt('b2', 30)], look: { theme: 'light' } }))
  const pixels = Number(svg.attributes['data-pixels-per-mm'])
  const shanks = parts(svg, 'shank').map(({ attributes }) => Number(attributes.height) / pixels)
  expect(shanks.map((mm) => Math.round(mm * 100) / 100)).toEqual([27, 12])
})

test('the rule counts from the undersides of the heads', () => {
  const svg = readSvg(trayDrawing({ title: 'Tray', bolts: [bolt('b1', 45)], look: { theme: 'light' } }))
  const pixels = Number(svg.attributes['data-pixels-per-mm'])
  const seat = Number(parts(svg, 'shank')[0]!.attributes.y)
  const ticks = parts(svg, 'rule')
  expect(ticks.length).toBeGreaterThanOrEqual(5)
  for (const { attributes } of ticks) {
    expect(Number(attributes.y1)).toBeCloseTo(seat + Number(attributes['data-mm']) * pixels, 1)
  }
})

test('left over and missing are told in words', () => {
  const bolts = [
    { ...bolt('b1', 45, { count: 4 }), leftOver: 2 },
    { ...bolt('b2', 40, { count: 0 }), missing: 1 },
  ]
  const svg = readSvg(trayDrawing({ title: 'Tray', bolts, look: { theme: 'light' } }))
  const words = textBoxes(svg).map(({ text }) => text)
  expect(words).toEqual(expect.arrayContaining(['2 left', 'over', '1 missing', '4 pieces']))
})

test('an empty tray is a sheet with its title', () => {
  const svg = readSvg(trayDrawing({ title: 'Tray', bolts: [], look: { theme: 'print' } }))
  expect(textBoxes(svg)[0]!.text).toBe('Tray')
})

test('any tray is well-formed, no texts overlap or leave the sheet, no figure is none', () => {
  const item = fc.record(
    {
      kind: anyKind,
      thread: anyThread,
      leftOver: fc.integer({ min: 0, max: 40 }),
      missing: fc.integer({ min: 0, max: 12 }),
    },
    { requiredKeys: ['kind', 'thread'] },
  )
  const tray = fc.record({ title: fc.constantFrom(...NASTY), bolts: fc.array(item, { maxLength: 9 }), look: anyLook })
  fc.assert(
    fc.property(tray, (input) => {
      const svg = readSvg(trayDrawing(input))
      const [, , width, height] = svg.attributes.viewBox!.split(' ').map(Number) as [number, number, number, number]
      const boxes = textBoxes(svg)
      expect(collisions(boxes)).toEqual([])
      for (const { left, right, foot } of boxes) {
        expect(left).toBeGreaterThanOrEqual(0)
        expect(right).toBeLessThanOrEqual(width)
        expect(foot).toBeLessThanOrEqual(height)
      }
      for (const { attributes } of everyNode(svg)) {
        for (const key of ['x', 'y', 'x1', 'y1', 'd']) expect(attributes[key] ?? '').not.toMatch(/NaN|Infinity/)
      }
    }),
    { seed: 888, numRuns: 300 },
  )
})
