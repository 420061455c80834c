import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { factored, type Skyline } from '../../maths/skyline.ts'
import type { Cover, Point } from '../../unit.ts'
import { condense, responseTo } from './condense.ts'
import { areaOf } from './outline.ts'
import { bendingStiffness, onBed, type Plate, plateOf, REACH, valueAt } from './plate.ts'
import { momentsAt } from './testing/heldPlate.ts'
import { bedFor, rectangle } from './testing/plateChecks.ts'

const SEED = { seed: 20_260, numRuns: 12 }

/** Slanted edges, a notch, an opening; and a region of the cover's own thickness, so that lines also cut cells in its middle. */
const odd: Cover & { young: number; poisson: number } = {
  outline: [
    [0, 3],
    [97, -8],
    [121, 64],
    [70, 81],
    [63, 47],
    [41, 52],
    [33, 90],
    [-9, 77],
  ],
  openings: [
    [
      [20, 12],
      [37, 17],
      [31, 33],
      [18, 29],
    ],
  ],
  regions: [
    {
      outline: [
        [50, 5],
        [101, 20],
        [90, 51],
        [44, 40],
      ],
      thickness: 6,
    },
  ],
  thickness: 6,
  young: 70_000,
  poisson: 0.33,
}
const STEP = 5

/** Fields of up to the second degree: their values, how the plate curves (xx, yy, xy), and their unknowns in splines one `step` apart. */
const FIELDS: {
  name: string
  at: (p: Point) => number
  curves: [number, number, number]
  unknown: (p: Point) => number
}[] = [
  { name: '1', at: () => 1, curves: [0, 0, 0], unknown: () => 1 },
  { name: 'x', at: ([x]) => x, curves: [0, 0, 0], unknown: ([x]) => x },
  { name: 'y', at: ([, y]) => y, curves: [0, 0, 0], unknown: ([, y]) => y },
  { name: '½x²', at: ([x]) => x ** 2 / 2, curves: [1, 0, 0], unknown: ([x]) => (x ** 2 - STEP ** 2 / 3) / 2 },
  { name: '½y²', at: ([, y]) => y ** 2 / 2, curves: [0, 1, 0], unknown: ([, y]) => (y ** 2 - STEP ** 2 / 3) / 2 },
  { name: 'xy', at: ([x, y]) => x * y, curves: [0, 0, 1], unknown: ([x, y]) => x * y },
]

describe('[TI1] patch test: a plate that is bent evenly', () => {
  const plate = plateOf(odd, undefined, STEP)
  const rigidity = bendingStiffness(odd.young, odd.poisson, odd.thickness)
  const area = areaOf(odd.outline) - areaOf(odd.openings![0]!)
  const places: Point[] = [
    [10, 10],
    [60, 20],
    [98, 22],
    [110, 50],
    [-5, 70],
    [44, 41],
    [19, 11.8],
  ]

  test.each(FIELDS)('has exact deflections and moments everywhere: $name', ({ at, curves: [xx, yy, xy], unknown }) => {
    const field = unknownsFrom(plate, unknown)
    const nu = odd.poisson
    const exact = [xx + nu * yy, yy + nu * xx, (1 - nu) * xy].map((curve) => -rigidity * curve)
    for (const place of places) {
      expect(valueAt(plate, field, place)).toBeCloseTo(at(place), 9)
      momentsAt({ plate, rigidity, poisson: nu }, field, place).forEach((moment, k) => {
        expect(moment / rigidity).toBeCloseTo(exact[k]! / rigidity, 9)
      })
    }
  })

  test.each(FIELDS)('needs no load inside: $name', ({ unknown }) => {
    const field = unknownsFrom(plate, unknown)
    const { product, size } = times(plate.bending, field)
    const inner = wholeSplines(plate)
    expect(inner.length).toBeGreaterThan(50)
    // cells that a line cuts are filled up with a billionth of the cover's stiffness
    for (const i of inner) expect(Math.abs(product[i]!)).toBeLessThan(1e-8 * size[i]!)
  })

  test.each(FIELDS)(
    'stores just the energy of its area, cut cells and all: $name',
    ({ unknown, curves: [xx, yy, xy] }) => {
      const field = unknownsFrom(plate, unknown)
      const { product } = times(plate.bending, field)
      const energy = product.reduce((sum, value, i) => sum + value * field[i]!, 0)
      const nu = odd.poisson
      const exact = xx ** 2 + yy ** 2 + 2 * nu * xx * yy + 2 * (1 - nu) * xy ** 2
      expect(energy / (rigidity * area)).toBeCloseTo(exact, 6)
    },
  )
})

test('[TI3] the bed carries what the bolts press, at the place where they press', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.05, max: 500, noNaN: true }), place(), (bed, at) => {
      const plate = plateOf(odd, undefined, STEP)
      const field = responseTo(plate, factored(onBed(plate, bed)), at)
      let [force, alongX, alongY] = [0, 0, 0]
      for (const { where, area, sink } of seatOf(plate, field)) {
        force += bed * area * sink
        alongX += bed * area * sink * where[0]
        alongY += bed * area * sink * where[1]
      }
      expect(force).toBeCloseTo(1, 7)
      expect(alongX).toBeCloseTo(at[0], 5)
      expect(alongY).toBeCloseTo(at[1], 5)
    }),
    SEED,
  )
})

test('one bolt sinks by another as that one by it, and pressing anywhere never lifts the place that is pressed', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.05, max: 500, noNaN: true }), place(), place(), (bed, a, b) => {
      const plate = plateOf(odd, undefined, STEP)
      const factor = factored(onBed(plate, bed))
      const [fromA, fromB] = [responseTo(plate, factor, a), responseTo(plate, factor, b)]
      const [aa, ab] = [valueAt(plate, fromA, a), valueAt(plate, fromB, a)]
      const [ba, bb] = [valueAt(plate, fromA, b), valueAt(plate, fromB, b)]
      expect(aa).toBeGreaterThan(0)
      expect(bb).toBeGreaterThan(0)
      expect(Math.abs(ab - ba)).toBeLessThan(1e-9 * Math.max(aa, bb))
      expect(ab * ba).toBeLessThan(aa * bb * (1 + 1e-9))
    }),
    SEED,
  )
})

test('[TI2] bolts do not feel each other once they are far apart', () => {
  const cover = rectangle(240, 80, 0.3)
  const bed = bedFor(cover, 10)
  const apart = [20, 60, 100, 140]
  const points: Point[] = [[40, 40], ...apart.map((far): Point => [40 + far, 40])]
  const { compliance } = condense(cover, { stiffness: bed }, points, 5)
  const felt = compliance.slice(1).map((row) => Math.abs(row[0]!) / compliance[0]![0]!)
  felt.forEach((share, k) => {
    if (k > 0) expect(share).toBeLessThan(felt[k - 1]!)
  })
  expect(felt.at(-1)).toBeLessThan(1e-3)
})

test('[TI2] bolts feel each other less and less as the bed stiffens', () => {
  const felt = [0.1, 10, 1000, 10_000].map((bed) => {
    const { compliance } = condense(
      odd,
      { stiffness: bed },
      [
        [10, 10],
        [80, 30],
      ],
      2.5,
    )
    return Math.abs(compliance[0]![1]!) / Math.sqrt(compliance[0]![0]! * compliance[1]![1]!)
  })
  felt.forEach((share, k) => {
    if (k > 0) expect(share).toBeLessThan(felt[k - 1]!)
  })
  expect(felt.at(-1)).toBeLessThan(1e-3)
})

test('[TI2] a symmetric cover sinks symmetrically', () => {
  const cover = {
    ...rectangle(120, 80, 0.25),
    openings: [
      [
        [50, 30],
        [70, 30],
        [75, 50],
        [45, 50],
      ],
    ] as Point[][],
  }
  const points: Point[] = [
    [9, 9],
    [111, 9],
    [35, 66],
    [85, 66],
  ]
  const { compliance: c } = condense(cover, { stiffness: 5 }, points, 4)
  const near = (a: number, b: number) => expect(Math.abs(a - b)).toBeLessThan(1e-8 * c[0]![0]!)
  near(c[0]![0]!, c[1]![1]!)
  near(c[2]![2]!, c[3]![3]!)
  near(c[0]![2]!, c[1]![3]!)
  near(c[0]![3]!, c[1]![2]!)
})

test('moving the cover changes nothing, a quarter turn changes nothing, any other turn only what the grid allows', () => {
  const points: Point[] = [
    [5, 10],
    [90, 0],
    [110, 60],
    [60, 20],
    [10, 70],
  ]
  const home = condense(odd, { stiffness: 5 }, points, STEP / 2).compliance
  const largest = Math.max(...home.flat())
  const off = (turn: number, shift: Point) => {
    const move = ([x, y]: Point): Point => [
      shift[0] + x * Math.cos(turn) - y * Math.sin(turn),
      shift[1] + x * Math.sin(turn) + y * Math.cos(turn),
    ]
    const all = (line: Point[]) => line.map(move)
    const cover = { ...odd, outline: all(odd.outline), openings: odd.openings!.map(all), regions: [] }
    const there = condense(cover, { stiffness: 5 }, points.map(move), STEP / 2).compliance
    return Math.max(...there.flatMap((row, i) => row.map((sink, j) => Math.abs(sink - home[i]![j]!)))) / largest
  }
  expect(off(0, [1234, -567])).toBeLessThan(1e-6)
  expect(off(Math.PI / 2, [0, 0])).toBeLessThan(1e-6)
  expect(off(0.6, [30, 10])).toBeLessThan(0.004)
})

test('more metal or more bed never makes a bolt sink further, and a finer grid never less', () => {
  const points: Point[] = [
    [5, 10],
    [90, 0],
    [110, 60],
    [10, 70],
  ]
  const sinks = (cover: Cover, hollows: Point[][], step: number) =>
    condense(cover, { stiffness: 5, hollows }, points, step).compliance.map((row, i) => row[i]!)
  const patch: Point[] = [
    [52, 8],
    [88, 18],
    [80, 44],
    [50, 36],
  ]
  const base = sinks(odd, [], STEP)
  const thicker = sinks({ ...odd, regions: [{ outline: patch, thickness: 12 }] }, [], STEP)
  const opened = sinks({ ...odd, openings: [...odd.openings!, patch] }, [], STEP)
  const hollow = sinks(odd, [patch], STEP)
  base.forEach((sink, i) => {
    expect(thicker[i]!).toBeLessThan(sink)
    expect(hollow[i]!).toBeGreaterThan(sink)
    expect(opened[i]!).toBeGreaterThan(hollow[i]!)
  })
  const even = rectangle(120, 80, 0.3)
  const [coarse, fine] = [20, 10].map(
    (step) =>
      condense(
        even,
        { stiffness: 5 },
        [
          [10, 10],
          [60, 40],
        ],
        step,
      ).compliance,
  )
  expect(fine![0]![0]!).toBeGreaterThan(coarse![0]![0]!)
  expect(fine![1]![1]!).toBeGreaterThan(coarse![1]![1]!)
})

/** A frame round a hole, as a pan has; and a U, whose inner corners make the grid work hardest. */
const FRAME: Cover = {
  outline: [
    [0, 0],
    [300, 0],
    [300, 200],
    [0, 200],
  ],
  openings: [
    [
      [18, 18],
      [282, 18],
      [282, 182],
      [18, 182],
    ],
  ],
  thickness: 5,
}
const SLOTTED: Cover = {
  outline: [
    [0, 0],
    [160, 0],
    [160, 100],
    [81, 100],
    [81, 30],
    [79, 30],
    [79, 100],
    [0, 100],
  ],
  thickness: 6,
}
const U: Cover = {
  outline: [
    [0, 0],
    [200, 0],
    [200, 120],
    [180, 120],
    [180, 20],
    [20, 20],
    [20, 120],
    [0, 120],
  ],
  thickness: 6,
}

test.each<[string, Cover, Point[], number]>([
  [
    'the odd cover on a soft bed',
    odd,
    [
      [10, 10],
      [90, 0],
      [110, 60],
      [60, 20],
      [10, 70],
    ],
    0.5,
  ],
  [
    'the odd cover on a stiff bed',
    odd,
    [
      [10, 10],
      [90, 0],
      [110, 60],
      [60, 20],
      [10, 70],
    ],
    50,
  ],
  [
    'a frame',
    FRAME,
    [
      [9, 9],
      [150, 9],
      [291, 9],
      [291, 100],
      [291, 191],
      [150, 191],
      [9, 191],
      [9, 100],
    ],
    5,
  ],
  [
    'a U',
    U,
    [
      [10, 10],
      [100, 10],
      [190, 10],
      [190, 110],
      [10, 110],
    ],
    50,
  ],
  [
    'a cover with a slot narrower than a cell',
    SLOTTED,
    [
      [8, 8],
      [152, 8],
      [152, 92],
      [100, 92],
      [60, 92],
      [8, 92],
    ],
    2,
  ],
])('a grid four times finer finds no more than what the grid is said to be off by: %s', (_, cover, points, bed) => {
  const chosen = condense(cover, { stiffness: bed }, points)
  const fine = condense(cover, { stiffness: bed }, points, chosen.grid / 4).compliance
  const largest = Math.max(...fine.flat())
  const apart = chosen.compliance.flatMap((row, i) => row.map((sink, j) => Math.abs(sink - fine[i]![j]!)))
  expect(Math.max(...apart) / largest).toBeLessThan(chosen.error)
})

/** A place on the odd cover, well inside its right-hand part. */
function place(): fc.Arbitrary<Point> {
  return fc.tuple(fc.double({ min: 45, max: 95, noNaN: true }), fc.double({ min: 0, max: 45, noNaN: true }))
}

/** Unknowns that make a field, spline by spline from where its middle lies. */
function unknownsFrom({ grid, splineOf }: Plate, unknown: (middle: Point) => number): Float64Array {
  return Float64Array.from(splineOf, (spline) => {
    const [i, j] = [Math.floor(spline / (grid.rows + 3)), spline % (grid.rows + 3)]
    return unknown([grid.x + (i - 1) * grid.step, grid.y + (j - 1) * grid.step])
  })
}

/** A matrix times a field, and for each row how large the terms were that may have cancelled. */
function times({ size: count, first, start, values }: Skyline, field: Float64Array) {
  const [product, size] = [new Float64Array(count), new Float64Array(count)]
  const add = (i: number, term: number) => {
    product[i]! += term
    size[i]! += Math.abs(term)
  }
  for (let i = 0; i < count; i++)
    for (let j = first[i]!; j <= i; j++) {
      const value = values[start[i]! + j - first[i]!]!
      add(i, value * field[j]!)
      if (j < i) add(j, value * field[i]!)
    }
  return { product, size }
}

/** Splines that lie wholly on the cover: their integral is that of a whole one, the area of a cell. */
function wholeSplines(plate: Plate): number[] {
  const { seat, size, grid } = plate
  const integral = new Float64Array(size)
  for (let k = 0; k < seat.count; k++)
    for (let a = 0; a < REACH; a++)
      integral[seat.unknowns[seat.cell[k]! + a]!]! += seat.area[k]! * seat.shapes[seat.shape[k]! + a]!
  return [...integral.keys()].filter((i) => Math.abs(integral[i]! / grid.step ** 2 - 1) < 1e-9)
}

/** Every point of the seat: where it is, the area it stands for, how far the plate sinks there. */
function seatOf(plate: Plate, field: Float64Array): { where: Point; area: number; sink: number }[] {
  const { seat } = plate
  const [alongX, alongY] = [unknownsFrom(plate, ([x]) => x), unknownsFrom(plate, ([, y]) => y)]
  return Array.from(seat.area, (area, k) => {
    const at = (of: Float64Array) => {
      let sum = 0
      for (let a = 0; a < REACH; a++) sum += seat.shapes[seat.shape[k]! + a]! * of[seat.unknowns[seat.cell[k]! + a]!]!
      return sum
    }
    return { where: [at(alongX), at(alongY)], area, sink: at(field) }
  })
}
