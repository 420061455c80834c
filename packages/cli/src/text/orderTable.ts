import type { OrderAnswer, TighteningAnswer } from '@gripbook/engine'
import { wrap } from './jointFigures.ts'
import { ORDER_NAMES } from './orderWords.ts'
import { percentOf } from './spreadWords.ts'
import { padded, width } from './width.ts'

type Cells = { passes: string; 'over bed'?: string; rounds: string; 'bow mm': string; 'way m': string }

/** Columns of a figure beside the one before it. */
const GAP = 3

/**
 * All orders side by side: how uneven the clamp is after the passes, over the whole range of the bed where it is one, and after the last rounds; the bow
 * in mm; the way of the hand in m. The advised one has an arrow. Where the screen is too narrow for columns each order is a line of its own.
 */
export function orderTable({ orders, advice }: TighteningAnswer, wide: number): string[] {
  const ranged = isRanged({ orders })
  const rows = orders.map((order, i) => ({
    name: `${i === advice.order ? '→' : ' '} ${ORDER_NAMES[order.kind]}`,
    cells: Object.entries(cellsOf(order, ranged)),
  }))
  const heads = rows[0]?.cells.map(([head]) => head) ?? []
  const first = Math.max('All orders'.length, ...rows.map(({ name }) => width(name)))
  const columns = heads.map((head, i) => Math.max(width(head), ...rows.map(({ cells }) => width(cells[i]![1]))) + GAP)
  if (first + columns.reduce((sum, one) => sum + one, 0) > wide)
    return [
      'All orders',
      ...rows.flatMap(({ name, cells }) =>
        wrap(cells.map(([head, figure]) => `${head} ${figure}`).join(', '), wide, `${name}: `),
      ),
    ]
  const line = (name: string, cells: readonly string[]): string =>
    padded(name, first) + cells.map((cell, i) => cell.padStart(columns[i]!)).join('')
  return [
    line('All orders', heads),
    ...rows.map(({ name, cells }) =>
      line(
        name,
        cells.map(([, figure]) => figure),
      ),
    ),
  ]
}

/** Whether the bed is a range, so that the table has a column for it. */
export function isRanged({ orders }: Pick<TighteningAnswer, 'orders'>): boolean {
  return orders.some(({ overBed }) => overBed.length > 1)
}

function cellsOf({ spread, overBed, lastRounds, bow, travel }: OrderAnswer, ranged: boolean): Cells {
  return {
    passes: percentOf(spread),
    ...(ranged ? { 'over bed': overTheBed(overBed) } : {}),
    rounds: percentOf(lastRounds.spread),
    'bow mm': bow.toFixed(3),
    'way m': (travel / 1000).toFixed(1),
  }
}

function overTheBed(overBed: readonly number[]): string {
  const least = percentOf(Math.min(...overBed))
  const most = percentOf(Math.max(...overBed))
  return least === most ? most : `${least.replace(/ %$/, '')} to ${most}`
}
