import type { Hole, Interval, Kind, Line, Pair, Quantity } from '@gripbook/engine'
import fc from 'fast-check'
import type { SectionInput } from '../section/input.ts'

const THREADS = [
  { diameter: 3, pitch: 0.5, name: 'M3' },
  { diameter: 6, pitch: 1, name: 'M6' },
  { diameter: 8, pitch: 1.25, name: 'M8' },
  { diameter: 6.35, pitch: 1.27, name: '1/4-20 UNC' },
  { diameter: 16, pitch: 2, name: 'M16' },
]
const LINES: Line[] = [
  'thread',
  'feature',
  'engagement',
  'bolt thread',
  'hole thread',
  'bottom',
  'run-out',
  'behind',
  'shank',
  'hole',
  'kind',
  'together',
]
const FORMS = ['hex flange', 'hexagon', 'socket cap', 'button', 'countersunk', 'stud', 'something else']
export const NASTY = [
  'سلام',
  '日本語の長い名前です',
  '<script>alert("1")</script>',
  '🔩👩‍🔧',
  "a&b'c",
  '\u0000\ud800x',
  ']]>',
  'x'.repeat(70),
]

const name = fc.oneof(fc.constantFrom(...NASTY), fc.string({ minLength: 1, maxLength: 12 }), fc.constantFrom('1', 'b2'))
const mm = (least: number, most: number) =>
  fc.integer({ min: Math.round(least * 100), max: Math.round(most * 100) }).map((n) => n / 100)

function quantity(least: number, most: number): fc.Arbitrary<Quantity> {
  return fc.oneof(
    mm(least, most),
    fc.record({ value: mm(least, most), plusMinus: mm(0, 1.5) }),
    mm(least, most).map((atLeast) => ({ atLeast })),
    mm(least, most).map((atMost) => ({ atMost })),
    fc.tuple(mm(least, most), mm(0, 4)).map(([atLeast, off]) => ({ atLeast, atMost: atLeast + off })),
  )
}

/** A record whose fields may each be absent. */
function some<T>(fields: { [K in keyof T]?: fc.Arbitrary<NonNullable<T[K]>> }): fc.Arbitrary<Partial<T>> {
  return fc.record(fields as Record<string, fc.Arbitrary<unknown>>, { requiredKeys: [] }) as fc.Arbitrary<Partial<T>>
}

const hole: fc.Arbitrary<Hole> = fc
  .tuple(
    name,
    some<Hole>({
      ending: fc.constantFrom('blind', 'through'),
      grip: quantity(3, 120),
      bracket: quantity(0, 8),
      gasket: quantity(0, 2),
      mouth: quantity(0, 6),
      threadDepth: quantity(3, 40),
      bottomDepth: quantity(3, 50),
      behind: quantity(0, 20),
      material: name,
      needs: fc.array(fc.oneof(fc.constant('stud end'), name), { maxLength: 2 }),
      minimumEngagement: quantity(1, 20),
    }),
  )
  .map(([id, rest]) => ({ id, thread: 'M6', ...rest }))

export const anyKind: fc.Arbitrary<Kind> = fc
  .tuple(
    name,
    some<Kind>({
      length: fc.oneof(
        quantity(4, 140),
        fc.constantFrom(20, 45, 100).map((nominal) => ({ nominal })),
      ),
      threadLength: quantity(2, 40),
      tip: quantity(0, 4),
      count: fc.integer({ min: 0, max: 30 }),
      class: fc.constantFrom('8.8', '10.9'),
      head: fc.record({ form: fc.constantFrom(...FORMS), acrossFlats: quantity(5, 26) }, { requiredKeys: ['form'] }),
      features: fc.array(fc.oneof(fc.constant('stud end'), name), { maxLength: 2 }),
      washer: fc.oneof(quantity(0, 3), fc.record({ thickness: quantity(0, 3) })),
    }),
  )
  .map(([id, rest]) => ({ id, thread: 'M6', ...rest }))

export const anyThread = fc.constantFrom(...THREADS)
const end = fc.option(mm(-20, 20))
const margin: fc.Arbitrary<Pair['margin']> = fc.oneof(end, fc.tuple(end, end))
const least: fc.Arbitrary<Interval> = fc.tuple(mm(0, 20), mm(0, 5)).map(([lo, off]) => ({ lo, hi: lo + off }))

export const anyLook = fc.record({
  theme: fc.constantFrom('light' as const, 'dark' as const, 'print' as const, 'high-contrast' as const),
  unit: fc.constantFrom('mm' as const, 'in' as const),
})

export const anySection: fc.Arbitrary<SectionInput> = fc
  .record({
    hole,
    thread: anyThread,
    otherThread: fc.option(anyThread),
    face: some<NonNullable<SectionInput['face']>>({ gasket: quantity(0, 2), minimumEngagement: least }),
    kind: fc.option(anyKind),
    verdict: fc.constantFrom('fits' as const, 'may' as const, 'cannot' as const),
    line: fc.constantFrom(...LINES),
    why: fc.oneof(name, fc.lorem({ maxCount: 25 })),
    role: fc.option(name),
    margin,
    title: name,
    look: anyLook,
  })
  .map(({ hole, thread, otherThread, face, kind, verdict, line, why, role, margin, title, look }) => ({
    hole,
    thread,
    face,
    title,
    look,
    ...(kind && {
      bolt: { kind, thread: otherThread ?? thread, verdict, line, why, margin, ...(role !== null && { role }) },
    }),
  }))
