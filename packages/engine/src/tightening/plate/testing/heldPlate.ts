/**
 * A plate without a bed, held along lines or at points by very stiff springs: how books hold their plates. Covers are never held so; these sums
 * are for tests against published coefficients.
 */
import { factored, type Skyline, solveInPlace } from '../../../maths/skyline.ts'
import type { Cover, Point } from '../../../unit.ts'
import { addTo, bendingStiffness, curvaturesOf, type Plate, plateOf, REACH, shapeAt, valueAt } from '../plate.ts'
import { splineSlopes, splineValues } from '../spline.ts'

/** What is held along a line or at a point (`from` is `to`): the deflection, the slope across the line, or both. */
export type Hold = { from: Point; to: Point; deflection: boolean; slope: boolean }

export type HeldPlate = { plate: Plate; factor: Skyline; rigidity: number; poisson: number }

export type Load = { at: Point; force: number } | { from: Point; to: Point; force: number } | { pressure: number }

/** Springs so many times stiffer than the plate over one cell. Stiffer ones would only cost digits. */
const STIFFER = 1e5

/** The plate of a cover, all of one thickness, held. Each line is held at so many points per cell that splines cannot dodge them. */
export function heldPlate(cover: Cover & { young: number; poisson: number }, step: number, holds: Hold[]): HeldPlate {
  const plate = plateOf(cover, undefined, step)
  const rigidity = bendingStiffness(cover.young, cover.poisson, cover.thickness)
  const matrix: Skyline = { ...plate.bending, values: plate.bending.values.slice() }
  for (const { from, to, deflection, slope } of holds)
    for (const { at, length } of pointsAlong(from, to, step)) {
      const { unknowns, values } = shapeAt(plate, at)
      const per = length === 0 ? step : length
      if (deflection) addSpring(matrix, unknowns, values, (STIFFER * rigidity * per) / step ** 3)
      if (slope) addSpring(matrix, unknowns, slopeAcross(plate, at, from, to), (STIFFER * rigidity * per) / step)
    }
  return { plate, factor: factored(matrix), rigidity, poisson: cover.poisson }
}

/** How the held plate bends under some loads: its unknowns. Forces along a line are spread evenly. */
export function bent({ plate, factor }: HeldPlate, loads: Load[]): Float64Array {
  const load = new Float64Array(plate.size)
  const press = (unknowns: Int32Array, values: Float64Array, force: number) => {
    for (let a = 0; a < REACH; a++) load[unknowns[a]!]! += force * values[a]!
  }
  for (const one of loads)
    if ('pressure' in one) {
      const { seat } = plate
      for (let k = 0; k < seat.count; k++)
        press(
          seat.unknowns.subarray(seat.cell[k]!, seat.cell[k]! + REACH),
          seat.shapes.subarray(seat.shape[k]!, seat.shape[k]! + REACH),
          one.pressure * seat.area[k]!,
        )
    } else {
      const [from, to] = 'at' in one ? [one.at, one.at] : [one.from, one.to]
      const along = pointsAlong(from, to, plate.grid.step)
      const whole = Math.hypot(to[0] - from[0], to[1] - from[1])
      for (const { at, length } of along) {
        const { unknowns, values } = shapeAt(plate, at)
        press(unknowns, values, whole === 0 ? one.force : (one.force * length) / whole)
      }
    }
  return solveInPlace(factor, load)
}

export function deflectionAt({ plate }: HeldPlate, field: Float64Array, at: Point): number {
  return valueAt(plate, field, at)
}

/** Moments per width m_x, m_y, m_xy, N: m_x = −D(∂²w/∂x² + ν ∂²w/∂y²), m_xy = −D(1 − ν) ∂²w/∂x∂y. @source Timoshenko and Woinowsky-Krieger, art. 21 */
export function momentsAt(
  { plate, rigidity, poisson }: Pick<HeldPlate, 'plate' | 'rigidity' | 'poisson'>,
  field: Float64Array,
  at: Point,
): [number, number, number] {
  const { unknowns, u, v } = shapeAt(plate, at)
  const curvatures = curvaturesOf(u, v, plate.grid.step)
  const [xx, yy, xy] = [0, 1, 2].map((kind) => {
    let sum = 0
    for (let a = 0; a < REACH; a++) sum += curvatures[kind * REACH + a]! * field[unknowns[a]!]!
    return sum
  }) as [number, number, number]
  return [-rigidity * (xx + poisson * yy), -rigidity * (yy + poisson * xx), -rigidity * (1 - poisson) * xy]
}

function addSpring(matrix: Skyline, unknowns: Int32Array, values: Float64Array, stiffness: number): void {
  const square = new Float64Array(REACH * REACH)
  for (let a = 0; a < REACH; a++)
    for (let b = 0; b <= a; b++) square[a * REACH + b] = stiffness * values[a]! * values[b]!
  addTo(matrix, unknowns, square)
}

/** Slope of each spline across the line, 1/mm. */
function slopeAcross(plate: Plate, at: Point, from: Point, to: Point): Float64Array {
  const { u, v } = shapeAt(plate, at)
  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const [nx, ny] = [(to[1] - from[1]) / length / plate.grid.step, (from[0] - to[0]) / length / plate.grid.step]
  const four = () => new Float64Array(4)
  const [x0, x1] = [splineValues(u, four()), splineSlopes(u, four())]
  const [y0, y1] = [splineValues(v, four()), splineSlopes(v, four())]
  return Float64Array.from({ length: REACH }, (_, k) => {
    const [a, b] = [Math.floor(k / 4), k % 4]
    return nx * x1[a]! * y0[b]! + ny * x0[a]! * y1[b]!
  })
}

/** Points along a line, each with the length it stands for: three of Gauss in each half cell. A point is itself, of no length. */
function pointsAlong(from: Point, to: Point, step: number): { at: Point; length: number }[] {
  const whole = Math.hypot(to[0] - from[0], to[1] - from[1])
  if (whole === 0) return [{ at: from, length: 0 }]
  const parts = Math.ceil((2 * whole) / step - 1e-9)
  const far = Math.sqrt(0.15)
  return Array.from({ length: parts }, (_, part) =>
    (
      [
        [-far, 5 / 18],
        [0, 8 / 18],
        [far, 5 / 18],
      ] as const
    ).map(([offset, weight]) => {
      const share = (part + 0.5 + offset) / parts
      const at: Point = [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])]
      return { at, length: (weight * whole) / parts }
    }),
  ).flat()
}
