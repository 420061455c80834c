/** Printed stiffnesses of bolts and of what they clamp, beside Gripbook's. */
import * as solutions from '../../../published/shigley-solutions.ts'
import { coreM6, screwM6, seatM6 } from '../../../published/vdi-2230-bolt.ts'
import { profileOf } from '../../threads/index.ts'
import { barStiffness, frustumStiffness, inSeries } from '../index.ts'
import { type Check, checksOf, digits, percent, thread } from './check.ts'

const STEEL = 205_000
const ALUMINIUM = 70_000

export function stiffnessChecks(): Check[] {
  const series = ([, parts]: string[]) => inSeries(...parts!.split(' ').map(Number))
  const stepped = (cells: string[]) => {
    const [shankArea, threadArea, shank, threaded] = cells.map(Number)
    return inSeries(barStiffness(shankArea!, 207, shank!), barStiffness(threadArea!, 207, threaded!))
  }
  return [
    ...checksOf(solutions.inSeriesInch, percent(0.1), series),
    ...checksOf(solutions.inSeriesMetric, percent(0.1), series),
    ...checksOf(solutions.inSeries823, percent(0.1), series),
    ...checksOf(solutions.bolt820, percent(0.1), stepped),
    ...checksOf(solutions.bolt820Corrected, percent(0.1), stepped),
    ...checksOf(solutions.bolt825, percent(0.1), ([area, young, length]) =>
      barStiffness(Number(area), Number(young), Number(length)),
    ),
    ...checksOf(solutions.shares, digits(0.6), ([bolt, members]) => Number(bolt) / (Number(bolt) + Number(members))),
    ...checksOf(coreM6, digits(0.6), ([what]) => (what === 'd3' ? rootOf('M6') : circle(rootOf('M6')))),
    ...checksOf(screwM6, percent(0.02), ([part]) =>
      part === 'sum' ? 1 / inSeries(...PARTS.values()) : 1 / PARTS.get(part!)!,
    ),
    // VDI takes a cone of 26.8° here, Shigley always one of 30°
    ...checksOf(
      seatM6,
      percent(12),
      () => 1 / frustumStiffness({ thickness: 10, outer: 8.9, hole: 6.6, young: ALUMINIUM }),
    ),
  ]
}

/** The parts of the M6 screw as bars: half a diameter of head, the free thread, half a diameter engaged, a third of one in the hole's metal. */
const PARTS = new Map([
  ['head', barStiffness(circle(6), STEEL, 3)],
  ['free thread', barStiffness(circle(rootOf('M6')), STEEL, 10)],
  ['engaged core', barStiffness(circle(rootOf('M6')), STEEL, 3)],
  ['tapped hole', barStiffness(circle(6), ALUMINIUM, 0.33 * 6)],
])

function rootOf(name: string): number {
  return profileOf(thread(name)).rootDiameter
}

function circle(diameter: number): number {
  return (Math.PI / 4) * diameter ** 2
}
