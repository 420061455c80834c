/** Printed stiffnesses of bolts and of what they clamp, and what settles, beside Gripbook's. */
import * as solutions from '../../../published/shigley-solutions.ts'
import { coreM6, embedment, lossM6, screwM6, seatM6 } from '../../../published/vdi-2230-bolt.ts'
import { profileOf } from '../../threads/index.ts'
import { embedmentOf, screwCompliance, zoneCompliance } from '../boltCompliance.ts'
import { barStiffness, inSeries } from '../index.ts'
import { type Check, checksOf, digits, percent, thread } from './check.ts'

const ALUMINIUM = 70_000

export function stiffnessChecks(): Check[] {
  return [...solutionChecks(), ...screwChecks(), ...settlingChecks()]
}

function solutionChecks(): Check[] {
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
  ]
}

/** The M6 screw of the worked sum: what its parts give by is told apart by the clamped length and by the metal of the hole. */
function screwChecks(): Check[] {
  const give = (clamped: number, youngTapped: number) => screwCompliance({ thread: thread('M6'), clamped, youngTapped })
  const freeThread = give(10, ALUMINIUM) - give(0, ALUMINIUM)
  const engagedCore = freeThread * (3 / 10)
  const tappedHole = give(0, ALUMINIUM) - give(0, Infinity)
  const parts: Record<string, number> = {
    head: give(0, Infinity) - engagedCore,
    'free thread': freeThread,
    'engaged core': engagedCore,
    'tapped hole': tappedHole,
    sum: give(10, ALUMINIUM),
  }
  const root = profileOf(thread('M6')).rootDiameter
  return [
    ...checksOf(coreM6, digits(0.6), ([what]) => (what === 'd3' ? root : (Math.PI / 4) * root ** 2)),
    ...checksOf(screwM6, percent(0.02), ([part]) => parts[part!]!),
    ...checksOf(seatM6, percent(0.02), () => seat()),
  ]
}

function seat(): number {
  return zoneCompliance({ clamped: 10, bearing: 8.9, hole: 6.6, young: ALUMINIUM, outer: 20 })
}

/** Covers are pressed along their bolts: the guide values for loads across them stand in the table and are not used. */
function settlingChecks(): Check[] {
  const axial = embedment.rows.filter(([, load]) => load === 'axial')
  const roughness: Record<string, number> = { 'below 10': 6, '10 to 40': 25, '40 to 160': 80 }
  const printed = (of: string, where: string) => Number(axial.find((row) => row[0] === of && row[2] === where)![3])
  return [
    ...checksOf({ ...embedment, rows: axial }, digits(0), ([of, , where]) => {
      const [none, one] = [embedmentOf(roughness[of!]!, 0), embedmentOf(roughness[of!]!, 1)]
      if (where === 'inner interface') return one - none
      return none - printed(of!, where === 'thread' ? 'head or nut' : 'thread')
    }),
    ...checksOf(lossM6, percent(0.5), () => {
      const give = screwCompliance({ thread: thread('M6'), clamped: 10, youngTapped: ALUMINIUM }) + seat()
      return embedmentOf(6, 1) / 1000 / give / 1000
    }),
  ]
}
