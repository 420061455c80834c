/** Every published figure of a plate beside what Gripbook makes of it. */
import * as easy from '../../../../published/easy-cover.ts'
import * as beams from '../../../../published/hetenyi-beams.ts'
import * as beds from '../../../../published/plates-on-beds.ts'
import * as roark from '../../../../published/roark-plates.ts'
import * as books from '../../../../published/timoshenko-plates.ts'
import { type Check, checksOf, digits, type Near, percent } from '../../../joints/testing/check.ts'
import { factored } from '../../../maths/skyline.ts'
import type { Cover, Point } from '../../../unit.ts'
import { condense, responseTo, type Seating } from '../condense.ts'
import { bendingStiffness, onBed, plateOf, valueAt } from '../plate.ts'
import { bent, deflectionAt, type HeldPlate, type Hold, heldPlate, momentsAt } from './heldPlate.ts'

type SizedCover = Cover & { young: number; poisson: number }

/** Short side, or radius, of the plates that books hold, mm, and the step of their grid. */
const SIDE = 100
const STEP = SIDE / 32
/** (D/k)^¼ of the plates on beds, mm, and the step of their grid. */
export const REACH_OF_LOAD = 10
const FINE = REACH_OF_LOAD / 4

export function plateChecks(): Check[] {
  return [...heldChecks(), ...bedChecks(), ...beamChecks(), ...easyChecks()]
}

/** A rectangle from (0, 0), thin enough that only its stiffness matters. */
export function rectangle(width: number, height: number, poisson: number): SizedCover {
  const outline: Point[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ]
  return { outline, thickness: 5, young: 70_000, poisson }
}

/** Stiffness of the bed on which a cover's load reaches so far, N/mm³. */
export function bedFor({ young, poisson, thickness }: SizedCover, reach: number): number {
  return bendingStiffness(young, poisson, thickness) / reach ** 4
}

function heldChecks(): Check[] {
  const rectangles = remembered(quarter)
  const centre = (edges: string, load: string, ratio: string) => {
    const { held, pressed, pushed } = rectangles(`${edges} ${ratio}`)
    const field = load === 'uniform' ? pressed : pushed
    const scale = load === 'uniform' ? SIDE ** 4 : SIDE ** 2
    return (deflectionAt(held, field, [0, 0]) * held.rigidity) / scale
  }
  const circles = remembered(circle)
  // Roark's factor is of E t³ instead of D
  const inRoark = 12 * (1 - 0.3 ** 2)
  return [
    ...checksOf(books.supportedUniform, digits(1), ([ratio]) => centre('supported', 'uniform', ratio!)),
    ...checksOf(books.supportedCentral, digits(2), ([ratio]) => centre('supported', 'central', ratio!)),
    ...checksOf(books.clampedUniform, digits(1), ([ratio]) => centre('clamped', 'uniform', ratio!)),
    ...checksOf(books.clampedCentral, digits(2), ([ratio]) => centre('clamped', 'central', ratio!)),
    ...checksOf(books.squaresQuoted, digits(1), ([edges]) => centre(edges!, 'uniform', '1')),
    ...checksOf(books.rectangles, percent(0.05), ([edges, load, ratio]) => centre(edges!, load!, ratio!)),
    ...checksOf(books.moments, digits(2), ([edges, ratio, where]) => {
      const { held, pressed } = rectangles(`${edges} ${ratio}`)
      const at: Point = where === 'edge' ? [SIDE / 2, 0] : [0, 0]
      return momentsAt(held, pressed, at)[where === 'centre, long span' ? 1 : 0] / SIDE ** 2
    }),
    ...checksOf(roark.central, percent(0.5), ([ratio]) => inRoark * centre('supported', 'central', ratio!)),
    ...checksOf(roark.uniform, percent(0.5), ([ratio]) => inRoark * centre('supported', 'uniform', ratio!)),
    ...checksOf(books.circles, percent(0.1), ([edge, load]) => {
      const { held, pressed, pushed } = circles(edge!)
      const [field, scale] = load === 'uniform' ? [pressed, SIDE ** 4] : [pushed, SIDE ** 2]
      return (deflectionAt(held, field, [0, 0]) * held.rigidity) / scale
    }),
    ...checksOf(books.twistedSquare, percent(0.001), ([where]) => {
      const corners: Point[] = [
        [0, 0],
        [SIDE, 0],
        [0, SIDE],
      ]
      const holds = corners.map((at): Hold => ({ from: at, to: at, deflection: true, slope: false }))
      const held = heldPlate(rectangle(SIDE, SIDE, 0.3), SIDE / 4, holds)
      const at: Point = where === 'corner' ? [SIDE, SIDE] : [SIDE / 2, SIDE / 2]
      return (deflectionAt(held, bent(held, [{ at: [SIDE, SIDE], force: 1 }]), at) * held.rigidity) / SIDE ** 2
    }),
  ]
}

type Bent = { held: HeldPlate; pressed: Float64Array; pushed: Float64Array }

/** A quarter of a rectangle: its centre is (0, 0), where the plate is level both ways; `SIDE` is the whole short side, along x. */
function quarter(named: string): Bent {
  const [edges, ratio] = named.split(' ')
  const [width, height] = [SIDE / 2, (SIDE * Number(ratio)) / 2]
  const level = { deflection: false, slope: true }
  const held = heldPlate(rectangle(width, height, 0.3), STEP, [
    { from: [0, 0], to: [width, 0], ...level },
    { from: [0, 0], to: [0, height], ...level },
    { from: [width, 0], to: [width, height], deflection: true, slope: edges === 'clamped' },
    { from: [0, height], to: [width, height], deflection: true, slope: edges === 'clamped' },
  ])
  return { held, pressed: bent(held, [{ pressure: 1 }]), pushed: bent(held, [{ at: [0, 0], force: 1 / 4 }]) }
}

/**
 * A circle of so many corners that the plate does not notice them: a simply supported polygon with corners that count is stiffer than its circle, however many it has
 * (Babuška's paradox).
 */
function circle(edge: string): Bent {
  const corners = Array.from({ length: 1440 }, (_, k): Point => {
    const turn = (2 * Math.PI * (k + 0.5)) / 1440
    return [SIDE * Math.cos(turn), SIDE * Math.sin(turn)]
  })
  const holds = corners.map(
    (from, k): Hold => ({
      from,
      to: corners[(k + 1) % corners.length]!,
      deflection: true,
      slope: edge === 'clamped',
    }),
  )
  const held = heldPlate({ ...rectangle(1, 1, 0.3), outline: corners }, SIDE / 16, holds)
  return { held, pressed: bent(held, [{ pressure: 1 }]), pushed: bent(held, [{ at: [0, 0], force: 1 }]) }
}

function bedChecks(): Check[] {
  const l = REACH_OF_LOAD
  const wide = besideLoad(rectangle(18 * l, 18 * l, 0.3), ([x, y]) => [9 * l + x, 9 * l + y])
  const edge = remembered((poisson: string) =>
    besideLoad(rectangle(16 * l, 10 * l, Number(poisson)), ([x, y]) => [8 * l + x, y]),
  )
  const corner = remembered((poisson: string) => besideLoad(rectangle(10 * l, 10 * l, Number(poisson)), (at) => at))
  return [
    ...checksOf(beds.infinite, percent(0.15), () => wide([0, 0])),
    ...checksOf(beds.infiniteShape, absolute(0.0015), ([r]) => wide([l * Number(r), 0]) / wide([0, 0])),
    ...checksOf(beds.infiniteUplift, absolute(0.015), ([what]) => uplift(wide, what!)),
    ...checksOf(beds.freeEdge, percent(0.3), ([poisson]) => edge(poisson!)([0, 0])),
    ...checksOf(beds.westergaardEdge, percent(1.2), ([poisson]) => edge(poisson!)([0, 0])),
    ...checksOf(beds.freeEdgeShape, absolute(0.003), ([direction, x]) => {
      const [far, sink] = [l * Number(x), edge('0.30')]
      return sink(direction === 'along' ? [far, 0] : [0, far]) / sink([0, 0])
    }),
    ...checksOf(beds.freeCorner, percent(1), ([poisson]) => corner(poisson!)([0, 0])),
    ...checksOf(beds.westergaardCorner, percent(15), () => corner('0.15')([0, 0])),
  ]
}

/** Deflection beside a load at (0, 0), times √(kD)/P. `place` says where that is on the cover. */
function besideLoad(cover: SizedCover, place: (at: Point) => Point): (at: Point) => number {
  const bed = bedFor(cover, REACH_OF_LOAD)
  const plate = plateOf(cover, undefined, FINE)
  const field = responseTo(plate, factored(onBed(plate, bed)), place([0, 0]))
  const scale = Math.sqrt(bed * bendingStiffness(cover.young, cover.poisson, cover.thickness))
  return (at) => scale * valueAt(plate, field, place(at))
}

/** Where the plate beside a load first lifts, where it lifts most, in l, and by what share: from the deflection along a line. */
function uplift(sink: (at: Point) => number, what: string): number {
  const share = (r: number) => sink([REACH_OF_LOAD * r, 0]) / sink([0, 0])
  const places = Array.from({ length: 400 }, (_, k) => 3 + k / 100)
  if (what === 'no deflection at') return places.find((r) => share(r) < 0)!
  const deepest = places.reduce((best, r) => (share(r) < share(best) ? r : best))
  return what === 'most uplift at' ? deepest : share(deepest)
}

/** The strip of the beam tables, a load at its middle or end: deflections on its axis. */
function stripSink(load: string, poisson: number, at = load): number {
  const cover = { ...rectangle(400, 5, poisson), thickness: 8, young: 110_000 }
  const place = (where: string): Point => [where === 'end' ? 0 : where === 'centre' ? 200 : 200 + Number(where), 2.5]
  return condense(cover, { stiffness: 5 }, [place(load), place(at)], 2.5).compliance[1]![0]!
}

function beamChecks(): Check[] {
  // λ of the strip: its bed per length is 25 N/mm², its I 5·8³/12
  const reach = ((4 * 110_000 * ((5 * 8 ** 3) / 12)) / 25) ** 0.25
  return [
    ...checksOf(beams.strip, percent(0.05), ([load]) => stripSink(load!, 0)),
    ...checksOf(beams.stripAsPlate, percent(0.05), ([load, poisson]) => stripSink(load!, Number(poisson))),
    ...checksOf(
      beams.infiniteShape,
      absolute(0.002),
      ([x]) => stripSink('centre', 0, `${Number(x) * reach}`) / stripSink('centre', 0),
    ),
  ]
}

/** The easy cover as Gripbook takes it, with its bed and the places of its bolts. */
export function easyFace(): { cover: SizedCover; bed: Seating; points: Point[] } {
  const { outline, thickness, young, poisson, bed, points } = easy.easyCover
  const copy = (list: readonly (readonly [number, number])[]) => list.map(([x, y]): Point => [x, y])
  return {
    cover: { outline: copy(outline), thickness, young, poisson },
    bed: { stiffness: bed },
    points: copy(points),
  }
}

/** Its compliance, with the modulus so many times as great. */
export function easyCompliance(stiffer = 1, grid?: number): number[][] {
  const { cover, bed, points } = easyFace()
  return condense({ ...cover, young: cover.young * stiffer }, bed, points, grid).compliance
}

function easyChecks(): Check[] {
  const largest = Math.max(...easy.thinPlate.rows.map(([, , sink]) => Number(sink)))
  const [fine, stiff] = [easyCompliance(1, 2.5), easyCompliance(1e6)]
  const at = (matrix: number[][]) => (cells: string[]) => matrix[Number(cells[0])]![Number(cells[1])]!
  return [
    ...checksOf(easy.thinPlate, absolute(0.001 * largest), at(fine)),
    // plate theory's own doubt, stated beside the table, and what the grid adds
    ...checksOf(easy.thickPlate, absolute(0.0256 * largest), at(fine)),
    ...checksOf(easy.stiffLimit, digits(1), ([bolt]) => 1e5 * stiff[Number(bolt)]![0]!),
  ]
}

function absolute(allowed: number): Near {
  return () => allowed
}

function remembered<T>(make: (key: string) => T): (key: string) => T {
  const made = new Map<string, T>()
  return (key) => {
    const known = made.get(key)
    if (known !== undefined) return known
    const fresh = make(key)
    made.set(key, fresh)
    return fresh
  }
}
