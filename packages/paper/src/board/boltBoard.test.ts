import { readFileSync } from 'node:fs'
import { type Face, type FaceAnswer, type Kind, place, type Unit } from '@gripbook/engine'
import fc from 'fast-check'
import { beforeEach, describe, expect, test } from 'vitest'
import type { PaperSize } from '../sheet.ts'
import { FONTS, MADE } from '../testing/fonts.ts'
import {
  type Circle,
  circlesOn,
  infoOf,
  otherTextOf,
  type Picture,
  pictureOf,
  structureOf,
  textOf,
  whyNoReaders,
} from '../testing/pdf.ts'
import { type BoardFace, boltBoard } from './boltBoard.ts'

const DEMO = JSON.parse(readFileSync(new URL('../../../../demo/yard-loader.json', import.meta.url), 'utf8')) as Unit

const KINDS: Kind[] = [
  { id: 'a', thread: 'M6', length: 30, head: { form: 'hex flange' }, count: 9 },
  { id: 'b', thread: 'M6', length: 45, head: { form: 'hex flange' }, features: ['stud end'], count: 9 },
]

/** Each hole of a face by its own thread, so that a single ring on a sheet tells which hole it is. None is as large as the ring of a joining cross. */
const THREADS = ['M5', 'M6', 'M8', 'M10', 'M12', 'M14', 'M16', 'M20']

function faceOf(places: readonly (readonly [number, number])[], more: Partial<Face> = {}): Face {
  const holes = places.map(([x, y], i) => ({
    id: `${i + 1}`,
    thread: 'M6',
    at: [x, y] as [number, number],
    asFound: i % 2 === 0 ? 'a' : 'b',
  }))
  return { id: 'lid', name: 'Lid', kinds: KINDS, holes, ...more }
}

async function made(
  faces: BoardFace[],
  paper: PaperSize = 'A4',
  more: { asFound?: boolean } = {},
): Promise<Uint8Array> {
  const unit: Unit = { gripbook: 'unit/1', name: 'A unit', faces: faces.map(({ face }) => face) }
  const board = await boltBoard(unit, faces, { paper, fonts: FONTS, made: MADE, ...more })
  if (!board.ok) throw new Error(board.fault.code)
  return board.bytes
}

const SQUARE = faceOf([
  [0, 0],
  [60, 0],
  [60, 40],
  [0, 40],
])

test('[PR1] the same board twice is the same bytes', async () => {
  const [first, second] = [await made([{ face: SQUARE }]), await made([{ face: SQUARE }])]
  expect(Buffer.compare(first, second)).toBe(0)
})

test('a face without holes and one of three metres are refused with their figures', async () => {
  const options = { paper: 'A4', fonts: FONTS, made: MADE } as const
  const unit: Unit = { gripbook: 'unit/1', faces: [] }
  expect(await boltBoard(unit, [{ face: { id: 'x', holes: [] } }], options)).toEqual({
    ok: false,
    fault: { code: 'no-holes', face: 'x' },
  })
  const large = faceOf([
    [0, 0],
    [3000, 3000],
  ])
  const refused = await boltBoard(unit, [{ face: large }], options)
  expect(refused).toMatchObject({ ok: false, fault: { code: 'too-large', face: 'lid' } })
  expect(
    refused.ok || (refused.fault.code === 'too-large' && refused.fault.width > 3000 && refused.fault.sheets > 36),
  ).toBe(true)
})

describe('as readers see it', () => {
  const why = whyNoReaders()
  beforeEach(({ skip }) => {
    if (why !== null) skip(why)
  })

  test.each([
    ['A4', 'poppler', 1],
    ['A4', 'mupdf', 1],
    ['Letter', 'poppler', 1],
    ['A4', 'poppler', 6],
  ] as const)('[PR3] the bar on %s in the picture of %s, page %i, is 100 ± 0.2 mm', async (paper, reader, page) => {
    const bytes = await demoBoard(paper)
    const { from, to } = longestBar(pictureOf(bytes, page, 508, reader))
    expect(Math.abs((to - from) / 20 - 100)).toBeLessThan(0.2)
  })

  test.each(['A4', 'Letter'] as const)(
    '[PR4] every hole of the demo lies within 0.2 mm of its place on %s',
    async (paper) => {
      const bytes = await demoBoard(paper)
      const pages = Number(infoOf(bytes).Pages)
      const rings = Array.from({ length: pages }, (_, i) => circlesOn(bytes, i + 1))
      for (const face of DEMO.faces) {
        const first = firstPage(bytes, pages, face.name!)
        expectInPlace(
          face,
          rings
            .slice(first - 1, first + 8)
            .filter((_, i) => textOf(bytes, first + i).includes(`${face.name}: bolts as found`)),
        )
      }
    },
  )

  test('[PR4] the cross of a hole is where the picture says, by pixels', async () => {
    const bytes = await made([{ face: SQUARE }])
    const [first, second] = circlesOn(bytes, 1)
      .filter(isThread('M6'))
      .sort((a, b) => a.y - b.y || a.x - b.x)
    const picture = pictureOf(bytes, 1, 508)
    for (const ring of [first!, second!]) {
      const seen = crossNear(picture, ring)
      expect(Math.hypot(seen.x - ring.x, seen.y - ring.y)).toBeLessThan(0.1)
    }
    expect(Math.abs(crossNear(picture, second!).x - crossNear(picture, first!).x - 60)).toBeLessThan(0.1)
  })

  test('[PR4] random faces up to nine sheets: every hole in place, whole on a sheet, and crosses that meet', async () => {
    const places = fc.uniqueArray(fc.tuple(fc.integer({ min: 0, max: 24 }), fc.integer({ min: 0, max: 30 })), {
      minLength: 3,
      maxLength: THREADS.length,
      selector: ([x, y]) => `${x} ${y}`,
    })
    await fc.assert(
      fc.asyncProperty(places, fc.constantFrom<PaperSize>('A4', 'Letter'), async (grid, paper) => {
        const plain = faceOf(grid.map(([x, y]) => [x * 22 + (y % 3) * 0.37, y * 22 + (x % 5) * 0.21]))
        const holes = plain.holes.map(({ asFound: _, ...hole }, i) => ({ ...hole, thread: THREADS[i]! }))
        const face = { ...plain, holes }
        const bytes = await made([{ face }], paper)
        const pages = sheetsOf(bytes)
        const rings = pages.map((page) => circlesOn(bytes, page))
        const shifts = expectInPlace(face, rings)
        // A joining cross has a ring of 2 mm: on the board each lies at one place, whichever sheet shows it.
        const crosses = rings.flatMap((circles, i) =>
          circles
            .filter(({ radius }) => Math.abs(radius - 2) < 0.01)
            .flatMap(({ x, y }) => (shifts[i] ? [[x - shifts[i][0], y - shifts[i][1]]] : [])),
        )
        for (const cross of crosses) {
          const met = crosses.filter((other) => Math.hypot(other[0]! - cross[0]!, other[1]! - cross[1]!) < 0.1)
          const near = crosses.filter((other) => Math.hypot(other[0]! - cross[0]!, other[1]! - cross[1]!) < 3)
          expect(near.length).toBe(met.length)
        }
      }),
      { numRuns: 6, seed: 20260301 },
    )
  })

  test('[PR5] what belongs is told from what came out, and an open hole says what may go there', async () => {
    const answer = await demoAnswer('control-block')
    const face = DEMO.faces[0]!
    const text = textOf(await made([{ face, answer }])).replace(/\s+/g, ' ')
    expect(text).toContain('as found; open: M6×35 or M6×40')
    expect(text).toContain('c35 full thread runs 4.9 mm')
    const found = textOf(await made([{ face, answer }], 'A4', { asFound: true }))
    expect(found).toContain('bolts as found')
    expect(found).not.toContain('belongs in it')
  })

  test('[PR6] marks on a photograph without a scale are said not to be to scale on every sheet', async () => {
    const holes = SQUARE.holes.map(({ at: _, ...hole }) => hole)
    const face = { ...SQUARE, holes }
    const places = { '1': [100, 900], '2': [1300, 900], '3': [1300, 100], '4': [100, 100] } as const
    const bytes = await made([{ face, marks: { places } }])
    for (const page of sheetsOf(bytes))
      expect(textOf(bytes, page)).toMatch(/NOT TO SCALE.*[\s\S]*The places of the holes are not/)
    const [a, b] = circlesOn(bytes, 1)
      .filter(isThread('M6'))
      .sort((p, q) => p.y - q.y || p.x - q.x)
    expect(Math.abs(b!.y - a!.y)).toBeLessThan(0.01)

    const scaled = await made([{ face, marks: { places, pixelsPerMillimetre: 10 } }])
    expect(textOf(scaled, 1)).toMatch(/NOT TO SCALE: the scale is only\s+estimated from the\s+photograph/)
    const [c, d] = circlesOn(scaled, 1)
      .filter(isThread('M6'))
      .sort((p, q) => p.y - q.y || p.x - q.x)
    expect(d!.x - c!.x).toBeCloseTo(120, 1)

    const row = await made([{ face }])
    expect(textOf(row, 1)).toContain('NOT TO SCALE: the places of the holes are not known')
    expect(textOf(await made([{ face: SQUARE }]), 1)).not.toContain('NOT TO SCALE')
  })

  test('a hole without a place stands under the others and says so', async () => {
    const face = { ...SQUARE, holes: [...SQUARE.holes, { id: 'lost', thread: 'M6' }] }
    const bytes = await made([{ face }])
    expect(circlesOn(bytes, 1).filter(isThread('M6'))).toHaveLength(5)
    expect(textOf(bytes, 1).replace(/\s+/g, ' ')).toContain('place not known')
  })

  test('names of a hundred characters, of Arabic and of Japanese come through', async () => {
    const long = 'a very long name '.repeat(6).slice(0, 100)
    const face: Face = {
      ...SQUARE,
      name: `${long} カバー`,
      kinds: [
        { ...KINDS[0]!, id: long },
        { ...KINDS[1]!, id: 'برغي طويل' },
      ],
      holes: SQUARE.holes.map((hole, i) => ({
        ...hole,
        id: [long, '穴の二', 'ثقب', '4'][i]!,
        asFound: i === 0 ? long : 'برغي طويل',
      })),
    }
    const bytes = await made([{ face }])
    const text = textOf(bytes).replace(/\s+/g, ' ')
    for (const name of ['穴の二', 'ثقب', 'برغي طويل', 'カバー']) expect(text).toContain(name)
    expect(infoOf(bytes).Title).toContain(long.trim())
    expect(Number(infoOf(bytes).Pages)).toBeLessThanOrEqual(3)
  })

  test('[PR2] the board opens in two readers, tagged, its words selectable, its holes told to who cannot see them', async () => {
    const bytes = await demoBoard('A4')
    expect(infoOf(bytes).Tagged).toBe('yes')
    expect(textOf(bytes, 1)).toContain('Print at actual size (100 %)')
    expect(otherTextOf(bytes)).toContain('Control block on the case: bolts as found')
    const structure = structureOf(bytes)
    expect(structure).toMatch(/Figure[\s\S]*"1"/)
    expect(structure.match(/^ {2}Table/gm)).toHaveLength(DEMO.faces.length)
  })
})

const boards = new Map<PaperSize, Promise<Uint8Array>>()
async function demoBoard(paper: PaperSize): Promise<Uint8Array> {
  const known = boards.get(paper)
  if (known) return known
  const board = boltBoard(
    DEMO,
    DEMO.faces.map((face) => ({ face })),
    { paper, fonts: FONTS, made: MADE },
  ).then((each) => {
    if (!each.ok) throw new Error(each.fault.code)
    return each.bytes
  })
  boards.set(paper, board)
  return board
}

async function demoAnswer(id: string): Promise<FaceAnswer> {
  const face = DEMO.faces.find((each) => each.id === id)!
  const { faces } = await place({ ...DEMO, faces: [face] })
  return faces[0]!
}

/** Pages that carry a part of a face, not its list. */
function sheetsOf(bytes: Uint8Array): number[] {
  const pages = Array.from({ length: Number(infoOf(bytes).Pages) }, (_, i) => i + 1)
  return pages.filter((page) => textOf(bytes, page).includes('Print at actual size'))
}

function firstPage(bytes: Uint8Array, pages: number, name: string): number {
  return Array.from({ length: pages }, (_, i) => i + 1).find((page) =>
    textOf(bytes, page).includes(`${name}: bolts as found`),
  )!
}

function isThread(thread: string): (circle: Circle) => boolean {
  const radius = Number(thread.slice(1)) / 2
  return (circle) => Math.abs(circle.radius - radius) < 0.01
}

type Shift = readonly [number, number]

/**
 * Finds for each sheet a shift that lays all its rings on holes of the face, such that together they hit every hole. Knows nothing of how the board was laid
 * out; where a pattern repeats, all shifts that fit are tried. @returns the shift of each sheet that has a ring
 */
function expectInPlace(face: Face, sheets: Circle[][]): (Shift | undefined)[] {
  const holes = face.holes.map(({ id, at, thread }) => ({ id, x: at![0], y: -at![1], thread: String(thread) }))
  const options = sheets.map((circles): { shift: Shift | undefined; ids: string[] }[] => {
    const rings = circles.filter((circle) => holes.some(({ thread }) => isThread(thread)(circle)))
    if (rings.length === 0) return [{ shift: undefined, ids: [] }]
    const laid = holes
      .filter(({ thread }) => isThread(thread)(rings[0]!))
      .map((hole) => {
        const shift: Shift = [rings[0]!.x - hole.x, rings[0]!.y - hole.y]
        const ids = rings.flatMap(
          (ring) =>
            holes.find(
              ({ x, y, thread }) =>
                isThread(thread)(ring) && Math.hypot(ring.x - shift[0] - x, ring.y - shift[1] - y) < 0.2,
            )?.id ?? [],
        )
        return { shift, ids }
      })
    const whole = laid.filter(({ ids }) => ids.length === rings.length)
    expect(whole, `the rings ${JSON.stringify(rings)} lie on no holes`).not.toEqual([])
    return whole
  })
  const all = holes.length
  const search = (i: number, hit: Set<string>, shifts: (Shift | undefined)[]): (Shift | undefined)[] | undefined => {
    if (i === options.length) return hit.size === all ? shifts : undefined
    for (const { shift, ids } of options[i]!) {
      const found = search(i + 1, new Set([...hit, ...ids]), [...shifts, shift])
      if (found) return found
    }
    return undefined
  }
  const shifts = search(0, new Set(), [])
  expect(shifts, `not every hole of ${face.id} is whole on a sheet`).toBeDefined()
  return shifts!
}

/** The longest run of black in any row, pixels. */
function longestBar({ width, height, grey }: Picture): { from: number; to: number } {
  let best = { from: 0, to: 0 }
  for (let y = Math.floor(height * 0.75); y < height; y++) {
    let from = -1
    for (let x = 0; x <= width; x++) {
      const isDark = x < width && grey[y * width + x]! < 128
      if (isDark && from < 0) from = x
      if (!isDark && from >= 0) {
        if (x - from > best.to - best.from) best = { from, to: x }
        from = -1
      }
    }
  }
  return best
}

/** The middle of the column and of the row with most black within 1 mm of a ring's middle, mm. */
function crossNear({ width, grey }: Picture, ring: Circle): { x: number; y: number } {
  const [cx, cy] = [Math.round(ring.x * 20), Math.round(ring.y * 20)]
  const dark = (x: number, y: number) => (grey[y * width + x]! < 128 ? 1 : 0)
  const middle = (count: (offset: number) => number) => {
    const counts = Array.from({ length: 41 }, (_, i) => count(i - 20))
    const most = Math.max(...counts)
    const at = counts.flatMap((each, i) => (each > most * 0.8 ? [i - 20] : []))
    return at.reduce((sum, offset) => sum + offset, 0) / at.length + 0.5
  }
  const along = Array.from({ length: 81 }, (_, i) => i - 40)
  return {
    x: (cx + middle((dx) => along.reduce((sum, dy) => sum + dark(cx + dx, cy + dy), 0))) / 20,
    y: (cy + middle((dy) => along.reduce((sum, dx) => sum + dark(cx + dx, cy + dy), 0))) / 20,
  }
}
