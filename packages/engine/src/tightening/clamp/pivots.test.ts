import { expect, test } from 'vitest'
import { seededRandom } from '../../maths/random.ts'
import { copyOf, pivot, put, readColumn, type Stand, standAt } from './pivots.ts'
import { drawnCover } from './testing/covers.ts'
import { gaussJordan } from './testing/gaussJordan.ts'

/** A compliance of so many bolts, its greatest term from the cover 1. */
function drawnMatrix(seed: number, count: number): number[][] {
  const next = seededRandom(seed)
  const { compliance } = drawnCover(1 + (seed % 5))
  const at = Array.from({ length: count }, (_, k) => k % compliance.length)
  const greatest = Math.max(...compliance.flat())
  return at.map((i, p) => at.map((j, q) => compliance[i]![j]! / greatest + (p === q ? 0.2 + next() : 0)))
}

/** By how much loads fall and gaps open for 1 N on a loose bolt, or when the nut of one that holds comes 1 mm on: solved anew by Gauss and Jordan. */
function solvedColumn(matrix: number[][], holds: readonly boolean[], k: number): number[] {
  const active = [...holds.keys()].filter((j) => holds[j])
  const rows = active.map((i) => [...active.map((j) => matrix[i]![j]!), holds[k] ? Number(i === k) : -matrix[i]![k]!])
  gaussJordan(rows)
  const loads = holds.map((_, j) => Number(j === k && !holds[k]))
  active.forEach((j, p) => {
    loads[j] = rows[p]!.at(-1)!
  })
  return matrix.map((row, j) => (holds[j] ? -loads[j]! : row.reduce((sum, c, i) => sum + c * loads[i]!, 0)))
}

/** Goes through changes by chance; `after` each. */
function changed(seed: number, count: number, after: (stand: Stand, holds: boolean[], matrix: number[][]) => void) {
  const matrix = drawnMatrix(seed, count)
  const next = seededRandom(100 * seed + count)
  const stand = standAt(matrix)
  const holds = matrix.map(() => false)
  let room: Float64Array = new Float64Array(stand.sign.length)
  for (let change = 0; change < 30; change++) {
    const k = Math.floor(next() * count)
    readColumn(stand, k, room)
    room = pivot(stand, k, room)
    holds[k] = !holds[k]
    after(stand, holds, matrix)
  }
}

const columnsOf = (stand: Stand, count: number) =>
  Array.from({ length: count }, (_, j) => {
    const column = new Float64Array(stand.sign.length)
    readColumn(stand, j, column)
    return [...column.subarray(0, count)]
  })

test.each([1, 2, 4, 5, 8, 11])(
  'bolts: %i. After any changes of who holds, every column says what solving anew says, whether the last change is in the table or not',
  (count) => {
    let [late, back] = [0, 0]
    for (let seed = 1; seed <= 6; seed++) {
      let before = -1
      changed(seed, count, (stand, holds, matrix) => {
        const furthest = columnsOf(stand, count).flatMap((column, j) => {
          const solved = solvedColumn(matrix, holds, j)
          return column.map((value, i) => Math.abs(value - solved[i]!))
        })
        expect(Math.max(...furthest)).toBeLessThan(1e-10)
        expect([...stand.sign.subarray(0, count)]).toEqual(holds.map((held) => (held ? 1 : -1)))
        if (stand.late !== -1) late++
        else if (before !== -1) back++
        before = stand.late
      })
    }
    expect(late).toBeGreaterThan(50)
    expect(back).toBeGreaterThan(50)
  },
)

test('a stand copied or put into another goes its own way from there', () => {
  const other = standAt(drawnMatrix(9, 7))
  changed(2, 7, (stand) => {
    const told = columnsOf(stand, 7)
    const copy = copyOf(stand)
    put(stand, other)
    for (const one of [copy, other]) {
      expect(columnsOf(one, 7)).toEqual(told)
      const column = new Float64Array(one.sign.length)
      readColumn(one, 3, column)
      const room = pivot(one, 3, column)
      readColumn(one, 5, room)
      pivot(one, 5, room)
      expect(columnsOf(one, 7)).not.toEqual(told)
    }
    expect(columnsOf(stand, 7)).toEqual(told)
  })
})
