import { expect, test } from 'vitest'
import * as orders from '../../../published/easy-cover-orders.ts'
import { failures } from '../../joints/testing/check.ts'
import { clampChecks, easyBolts, easyTwoWay, fullPasses } from './testing/clampChecks.ts'
import { tighten, untouched } from './tighten.ts'

test('loads, interaction and spreads of the easy cover agree with another program, and the loss by settling with VDI 2230', () => {
  const checks = clampChecks()
  expect(checks.length).toBe(
    1 + Object.values(orders).reduce((sum, value) => sum + ('rows' in value ? value.rows.length : 0), 0),
  )
  expect(failures(checks)).toEqual([])
})

test('bolts tightened once to the initial loads that the other program works out all end at the same load', () => {
  const bolts = easyBolts(orders.initialLoads.rows.map(([, load]) => Number(load)))
  const turns = tighten(fullPasses(1, orders.easyOrders.round), bolts, false, easyTwoWay(), untouched(bolts))
  for (const load of turns.at(-1)!.loads) expect(load).toBeCloseTo(1, 3)
})
