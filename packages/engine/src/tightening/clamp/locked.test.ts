import { expect, test } from 'vitest'
import { seededRandom } from '../../maths/random.ts'
import { lockedLoads } from './locked.ts'
import { drawnCover } from './testing/covers.ts'
import { gaussJordan } from './testing/gaussJordan.ts'

/** Every set of bolts that may hold, until one fits all conditions: the slow way. */
function byTrying(matrix: number[][], travel: (number | null)[], driven: { bolt: number; load: number }): number[] {
  const free = [...travel.keys()].filter((j) => travel[j] !== null && j !== driven.bolt)
  for (let set = 0; set < 2 ** free.length; set++) {
    const holds = free.filter((_, k) => (set >> k) & 1)
    // M·F = u over those that hold, by Gauss-Jordan.
    const rows = holds.map((i) => [
      ...holds.map((j) => matrix[i]![j]!),
      travel[i]! - matrix[i]![driven.bolt]! * driven.load,
    ])
    gaussJordan(rows)
    const loads = travel.map(() => 0)
    loads[driven.bolt] = driven.load
    holds.forEach((j, p) => {
      loads[j] = rows[p]![holds.length]!
    })
    const gap = (j: number) => matrix[j]!.reduce((sum, c, k) => sum + c * loads[k]!, 0) - travel[j]!
    if (holds.every((j) => loads[j]! >= -1e-9) && free.every((j) => holds.includes(j) || gap(j) >= -1e-12)) return loads
  }
  throw new Error('no set of bolts fits')
}

test('bolts whose nuts stand still hold what trying every set of holding bolts finds', () => {
  let loose = 0
  for (let seed = 1; seed <= 60; seed++) {
    const { compliance, bolts } = drawnCover(seed)
    const next = seededRandom(seed + 1_000)
    const matrix = compliance.map((row, i) => row.map((c, j) => (i === j ? c + bolts[i]!.compliance : c)))
    const travel = bolts.map(() => (next() < 0.2 ? null : (next() - 0.3) * 0.3))
    const driven = { bolt: Math.floor(next() * bolts.length), load: 5_000 * next() }
    const slow = byTrying(matrix, travel, driven)
    const fast = lockedLoads({ matrix, travel, driven })
    slow.forEach((load, j) => {
      expect(fast[j]!, `seed ${seed}, bolt ${j}`).toBeCloseTo(load, 4)
    })
    loose += slow.filter((load, j) => load === 0 && travel[j] !== null).length
  }
  expect(loose).toBeGreaterThan(50)
})

test('a guess of who holds changes nothing', () => {
  const { compliance, bolts } = drawnCover(3)
  const matrix = compliance.map((row, i) => row.map((c, j) => (i === j ? c + bolts[i]!.compliance : c)))
  const travel = bolts.map((_, j) => 0.05 * Math.sin(3 * j))
  const plain = lockedLoads({ matrix, travel })
  for (const guess of [new Uint8Array(bolts.length), new Uint8Array(bolts.length).fill(1)])
    expect([...lockedLoads({ matrix, travel }, guess)].map((load) => load.toFixed(6))).toEqual(
      [...plain].map((load) => load.toFixed(6)),
    )
})
