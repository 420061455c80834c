import fc from 'fast-check'
import { expect, test } from 'vitest'
import { anySection } from '../testing/arbitrary.ts'
import { collisions, everyNode, parts, readSvg, textBoxes } from '../testing/svg.ts'
import { measure } from './measures.ts'
import { sectionDrawing } from './sectionDrawing.ts'
import { standsBeside } from './sheet.ts'

const runs = { numRuns: 500, seed: 4014 }

test('any hole gives well-formed XML without a figure that is none, with unique ids that are all there', () => {
  fc.assert(
    fc.property(anySection, (input) => {
      const source = sectionDrawing(input)
      const svg = readSvg(source)
      const nodes = [...everyNode(svg)]
      for (const { name, attributes } of nodes) {
        if (name === 'text' || name === 'title' || name === 'desc') continue
        const { 'data-part': _, ...figures } = attributes
        expect(Object.values(figures).join(' ')).not.toMatch(/NaN|Infinity|undefined/)
      }
      const ids = nodes.flatMap(({ attributes }) => attributes.id ?? [])
      expect(new Set(ids).size).toBe(ids.length)
      const used = [...source.matchAll(/url\(#([^)]+)\)/g)].map(([, id]) => id!)
      expect(ids).toEqual(expect.arrayContaining([...used, ...svg.attributes['aria-labelledby']!.split(' ')]))
      expect(nodes.some(({ name }) => name === 'script')).toBe(false)
    }),
    runs,
  )
})

test('no two texts of a drawing overlap, none leaves the sheet, none is smaller than 12 px', () => {
  fc.assert(
    fc.property(anySection, (input) => {
      const svg = readSvg(sectionDrawing(input))
      const [, , width, height] = svg.attributes.viewBox!.split(' ').map(Number) as [number, number, number, number]
      const boxes = textBoxes(svg)
      expect(collisions(boxes)).toEqual([])
      for (const { left, right, top, foot } of boxes) {
        expect(left).toBeGreaterThanOrEqual(0)
        expect(right).toBeLessThanOrEqual(width)
        expect(top).toBeGreaterThanOrEqual(0)
        expect(foot).toBeLessThanOrEqual(height)
      }
      for (const { name, attributes } of everyNode(svg)) {
        if (name === 'text') expect(Number(attributes['font-size'])).toBeGreaterThanOrEqual(12)
      }
    }),
    runs,
  )
})

test('all that is drawn of the section stays between the two columns of words', () => {
  fc.assert(
    fc.property(anySection, (input) => {
      const svg = readSvg(sectionDrawing(input))
      const [body] = parts(svg, 'section')
      const [words] = parts(svg, 'notes')
      const right = Math.min(420, ...textBoxes(words!).map(({ left }) => left))
      for (const { name, attributes: a } of everyNode(body!)) {
        if (name === 'rect') expect(Number(a.x) + Number(a.width)).toBeLessThanOrEqual(right)
      }
    }),
    runs,
  )
})

test('the engaged thread is as high as the overlap, and levels lie at their mm times the scale', () => {
  fc.assert(
    fc.property(anySection, (input) => {
      const svg = readSvg(sectionDrawing(input))
      const pixels = Number(svg.attributes['data-pixels-per-mm'])
      const seat = Number(svg.attributes['data-seat'])
      const measures = measure(input)
      const near = (value: number, mm: number) => expect(Math.abs(value - mm * pixels)).toBeLessThan(0.01)
      near(Number(parts(svg, 'seat')[0]!.attributes.y1) - seat, 0)
      const engaged = measures.bolt?.engaged
      expect(parts(svg, 'engaged')).toHaveLength(engaged ? 1 : 0)
      if (engaged) {
        const { y, height } = parts(svg, 'engaged')[0]!.attributes
        near(Number(y) - seat, engaged.from)
        near(Number(height), engaged.to - engaged.from)
      }
      if (measures.grip.known && measures.grip.at > 0)
        near(Number(parts(svg, 'grip')[0]!.attributes.height), measures.grip.at)
      const bottom = parts(svg, 'bottom').find(({ name }) => name === 'line')
      if (!measures.through && measures.bottom.known) near(Number(bottom!.attributes.y1) - seat, measures.bottom.at)
      for (const level of parts(svg, 'tip end')) {
        const { lo, hi } = measures.bolt!.stickOut!
        const mm = (Number(level.attributes.y1) - seat) / pixels
        expect(Math.min(Math.abs(mm - lo), Math.abs(mm - hi))).toBeLessThan(0.01)
      }
      expect(standsBeside(input) && parts(svg, 'engaged').length > 0).toBe(false)
    }),
    runs,
  )
})
