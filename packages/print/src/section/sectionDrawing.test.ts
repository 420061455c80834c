import { describe, expect, test } from 'vitest'
import { NASTY } from '../testing/arbitrary.ts'
import { everyNode, type Node, parts, readSvg, textBoxes } from '../testing/svg.ts'
import type { DrawnBolt, SectionInput } from './input.ts'
import { sectionDrawing } from './sectionDrawing.ts'

const M6 = { diameter: 6, pitch: 1, name: 'M6' }
const M8 = { diameter: 8, pitch: 1.25, name: 'M8' }
const bolt: DrawnBolt = {
  kind: { id: 'b2', thread: 'M6', length: 51, threadLength: 24, tip: 1, head: { form: 'hex flange', acrossFlats: 10 } },
  thread: M6,
  verdict: 'cannot',
  line: 'bottom',
  why: 'bottoms out: the tip meets the bottom 3 mm before the head seats',
  margin: -3,
}
const base: SectionInput = {
  hole: { id: '9', thread: 'M6', grip: 32, threadDepth: 14, bottomDepth: 16 },
  thread: M6,
  face: { minimumEngagement: { lo: 7.5, hi: 7.5 } },
  bolt,
  title: 'Hole 9',
  look: { theme: 'light' },
}
const drawn = (change: Partial<SectionInput> = {}) => readSvg(sectionDrawing({ ...base, ...change }))
const words = (svg: Node) =>
  textBoxes(svg)
    .map(({ text }) => text)
    .join(' ')
    .replaceAll('\u00a0', ' ')
const scaleOf = (svg: Node) => Number(svg.attributes['data-pixels-per-mm'])
const mmHigh = (svg: Node, part: string) => Number(parts(svg, part)[0]!.attributes.height) / scaleOf(svg)
const mmDeep = (svg: Node, part: string) =>
  (Number(parts(svg, part)[0]!.attributes.y) - Number(svg.attributes['data-seat'])) / scaleOf(svg)

describe('the fault is drawn at its place and to scale', () => {
  test('a bolt that bottoms overlaps the case from the bottom to the tip, and the words say how far the head would stand proud', () => {
    const svg = drawn()
    expect(mmDeep(svg, 'fault')).toBeCloseTo(16, 3)
    expect(mmHigh(svg, 'fault')).toBeCloseTo(3, 3)
    expect(words(svg)).toContain('bottoms: tip 3 mm past the bottom; head would stand 3 mm proud')
  })

  test('a bolt that is too short has its shortfall bracketed from its last full thread to where the needed thread ends', () => {
    const svg = drawn({
      bolt: {
        ...bolt,
        kind: { ...bolt.kind, length: 37 },
        line: 'engagement',
        margin: -3.5,
        why: 'only 4 mm of thread, 7.5 needed',
      },
    })
    expect(mmDeep(svg, 'shortfall')).toBeCloseTo(4, 3)
    expect(mmHigh(svg, 'shortfall')).toBeCloseTo(3.5, 3)
    expect(words(svg)).toContain('too short by 3.5 mm')
    expect(words(svg)).toContain('engaged 4, needed 7.5')
  })

  test('a shank that jams is marked from the first full thread of the hole to the end of the shank', () => {
    const svg = drawn({
      hole: { ...base.hole, bottomDepth: 30 },
      bolt: { ...bolt, kind: { ...bolt.kind, threadLength: 15 }, line: 'shank', margin: -4 },
    })
    expect(mmDeep(svg, 'fault')).toBeCloseTo(0, 3)
    expect(mmHigh(svg, 'fault')).toBeCloseTo(4, 3)
  })

  test('full thread in the run-out is marked from the end of the full thread of the hole', () => {
    const svg = drawn({
      hole: { ...base.hole, bottomDepth: 22 },
      bolt: { ...bolt, line: 'run-out', margin: -4 },
    })
    expect(mmDeep(svg, 'fault')).toBeCloseTo(14, 3)
    expect(mmHigh(svg, 'fault')).toBeCloseTo(4, 3)
  })

  test('a tip that stands too far out behind runs into the wall behind', () => {
    const svg = drawn({
      hole: { id: '9', thread: 'M6', ending: 'through', grip: 32, threadDepth: 12, behind: 5 },
      bolt: { ...bolt, line: 'behind', margin: -2 },
    })
    expect(mmDeep(svg, 'fault')).toBeCloseTo(17, 3)
    expect(mmHigh(svg, 'fault')).toBeCloseTo(2, 3)
  })

  test('a bolt of another thread stands beside the hole in its own diameter', () => {
    const svg = drawn({ bolt: { ...bolt, thread: M8, line: 'thread', margin: null } })
    expect(parts(svg, 'engaged')).toHaveLength(0)
    const shank = parts(svg, 'shank')[0]!.attributes
    expect(Number(shank.width) / scaleOf(svg)).toBeCloseTo(8, 2)
    const section = parts(svg, 'case')[0]!.attributes
    expect(Number(shank.x)).toBeGreaterThan(Number(section.x) + Number(section.width))
    expect(words(svg)).toContain('M8 does not go into M6')
  })

  test('a missing feature is named, and a missing stud end outlined on the head', () => {
    const svg = drawn({
      hole: { ...base.hole, needs: ['stud end'] },
      bolt: { ...bolt, line: 'feature', margin: null },
    })
    expect(words(svg)).toContain('missing: stud end')
    expect(parts(svg, 'missing')).toHaveLength(1)
  })
})

describe('what is not known is broken off, never invented', () => {
  test('a bottom that is not known: a break line and words, no bottom', () => {
    const svg = drawn({ hole: { id: '9', thread: 'M6', grip: 32, threadDepth: 14 } })
    expect(parts(svg, 'bottom').filter(({ name }) => name === 'line')).toHaveLength(1)
    expect(parts(svg, 'break')).toHaveLength(1)
    expect(words(svg)).toContain('? bottom not known')
  })

  test('a grip that is not known: no tip, no engaged thread', () => {
    const svg = drawn({ hole: { id: '9', thread: 'M6', threadDepth: 14, bottomDepth: 16 } })
    expect(parts(svg, 'engaged')).toHaveLength(0)
    expect(parts(svg, 'fault')).toHaveLength(0)
    expect(words(svg)).toContain('? grip not known')
  })

  test('a length that is not known: the bolt is broken off above the seat', () => {
    const svg = drawn({ bolt: { ...bolt, kind: { id: 'b2', thread: 'M6' }, verdict: 'may', margin: null } })
    expect(parts(svg, 'break').length).toBeGreaterThan(0)
    expect(words(svg)).toContain('? length not known')
  })

  test('the ends of an uncertain stick-out are drawn at their mm', () => {
    const svg = drawn({ hole: { ...base.hole, grip: { value: 32, plusMinus: 0.5 } } })
    const ends = parts(svg, 'tip end').map(
      ({ attributes }) => (Number(attributes.y1) - Number(svg.attributes['data-seat'])) / scaleOf(svg),
    )
    expect(ends.map((mm) => Math.round(mm * 100) / 100)).toEqual([18.5, 19.5])
  })
})

describe('the sheet', () => {
  test('the scale bar is as long as it says, at the scale that is stated', () => {
    const svg = drawn()
    const bar = parts(svg, 'scale bar')[0]!.attributes
    expect(Number(bar.width)).toBeCloseTo(Number(bar['data-mm']) * scaleOf(svg), 2)
    expect(scaleOf(svg)).toBeCloseTo((2 * 96) / 25.4, 2)
    expect(words(svg)).toContain('Scale 2 : 1')
  })

  test('printed, it is true size where that fits, and its size is stated in mm', () => {
    const svg = drawn({ look: { theme: 'print' } })
    expect(scaleOf(svg)).toBeCloseTo(96 / 25.4, 2)
    expect(svg.attributes.width).toBe('111.125mm')
    expect(words(svg)).toContain('true size at 100 %')
  })

  test('inches are told in inches', () => {
    expect(words(drawn({ look: { theme: 'light', unit: 'in' } }))).toContain('1.26')
  })

  test('it says in words what it shows', () => {
    const svg = drawn()
    const desc = [...everyNode(svg)].find(({ name }) => name === 'desc')!.text
    expect(svg.attributes.role).toBe('img')
    expect(desc).toContain('hole 9, M6, blind')
    expect(desc).toContain('cannot fit. bottoms out: the tip meets the bottom 3 mm before the head seats.')
  })

  test('the verdict is told by a word, never by colour alone', () => {
    expect(words(drawn())).toContain('cannot fit')
    expect(words(drawn({ bolt: { ...bolt, verdict: 'may', margin: [-1, 2] } }))).toContain(
      'may bottom by up to 1 mm, or hold by 2 mm',
    )
    expect(words(drawn({ bolt: { ...bolt, verdict: 'fits', margin: 1.5 } }))).toContain(
      'tip 1.5 mm clear of the bottom',
    )
  })

  test.each(NASTY)('the name %j is shown as text', (name) => {
    const svg = drawn({ title: name, hole: { ...base.hole, id: name, material: name } })
    expect([...everyNode(svg)].filter((node) => node.name === 'script')).toHaveLength(0)
  })
})
