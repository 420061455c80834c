/**
 * How long it takes to condense a cover of 200 × 150 mm with 24 bolts to its compliance, and how far that is from what a grid four times finer gives; beside it
 * the same compliance by CalculiX, where that is there.
 */
import { type Condensed, condense } from '../packages/engine/src/tightening/plate/condense.ts'
import { byCalculix, THIN_LIMIT } from '../trials/plate/byCalculix.ts'
import { whyNoCalculix } from '../trials/plate/calculix.ts'
import { type BigCover, evenCover, oddCover } from './bigCovers.ts'
import { median, short, table } from './table.ts'

/** N/mm³: a thick soft gasket to metal on metal. */
const BEDS = [0.5, 5, 50, 500]
const REPEATS = 7
/** mm: on a still finer grid these covers take minutes and gigabytes. */
const FINEST = 0.55
/** Size of CalculiX's elements, mm. */
const SIZES = [20, 10]

type Compliance = readonly (readonly number[])[]

export async function tighteningCondense(print: (line: string) => void): Promise<void> {
  const why = whyNoCalculix()
  const own: (string | number)[][] = []
  const beside: (string | number)[][] = []
  for (const big of [evenCover, oddCover])
    for (const bed of BEDS) {
      const { times, worked, condensed } = timedCondense(big, bed)
      const fine = Math.max(condensed.grid / 4, FINEST)
      const reference = condense(big.cover, { stiffness: bed }, big.bolts, fine).compliance
      const error = apart(condensed.compliance, reference)
      const head = [big.name, bed]
      own.push([
        ...head,
        short(median(times)),
        `${short(Math.min(...times))} to ${short(Math.max(...times))}`,
        short(median(worked)),
        condensed.grid.toFixed(2),
        percent(condensed.error),
        percent(error),
        fine.toFixed(2),
      ])
      if (why !== null) continue
      for (const size of SIZES) {
        const theirs = byCalculix(big, bed, size, THIN_LIMIT)
        beside.push([
          ...head,
          size,
          theirs.elements,
          short(theirs.milliseconds),
          percent(apart(theirs.compliance, reference)),
          percent(error),
          `${short(theirs.milliseconds / median(times))} times`,
        ])
      }
    }
  print(
    table(
      [
        'cover',
        'bed, N/mm³',
        'median, ms',
        'range, ms',
        'processor, ms',
        'grid, mm',
        'own estimate of error',
        'against a finer one',
        'finer, mm',
      ],
      own,
    ),
  )
  print('')
  print(
    `200 × 150 mm, 8 mm thick, 24 bolts; the odd one has a corner cut out, a slanted side, an opening and a part 13 mm thick. Times over ${REPEATS} runs after one to warm up, ` +
      `with the search for the grid; the processor's own time is what they would be on a machine with nothing else to do. The finer grid is four times finer, but not below ${FINEST} mm. Errors are the greatest difference as a share of the greatest term.`,
  )
  print('')
  if (why !== null) {
    print(`CalculiX is not here: ${why}.`)
    return
  }
  print(
    table(
      ['cover', 'bed, N/mm³', 'element, mm', 'elements', 'CalculiX, ms', 'its error', 'own error', 'its time over own'],
      beside,
    ),
  )
  print('')
  print(
    'CalculiX: shells of eight nodes in the thin limit, one step for each bolt, one thread, one run with its start and its files; errors against the same finer grid of Gripbook. ' +
      'It is a program for every purpose and is started anew for each cover.',
  )
}

function timedCondense({ cover, bolts }: BigCover, bed: number) {
  let condensed: Condensed = condense(cover, { stiffness: bed }, bolts)
  const times: number[] = []
  const worked: number[] = []
  for (let repeat = 0; repeat < REPEATS; repeat += 1) {
    const [started, work] = [performance.now(), process.cpuUsage()]
    condensed = condense(cover, { stiffness: bed }, bolts)
    times.push(performance.now() - started)
    const { user, system } = process.cpuUsage(work)
    worked.push((user + system) / 1000)
  }
  return { times, worked, condensed }
}

/** Greatest difference as a share of the greatest term. */
function apart(one: Compliance, other: Compliance): number {
  const greatest = Math.max(...other.flat())
  return Math.max(...one.flatMap((row, i) => row.map((value, j) => Math.abs(value - other[i]![j]!)))) / greatest
}

const percent = (share: number) => `${(100 * share).toFixed(3)} %`
