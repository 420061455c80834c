import { expect, test } from 'vitest'
import { nearestName } from './nearest.ts'

test.each([
  ['gripp', ['grip', 'id'], 'grip'],
  ['girp', ['grip', 'id'], 'grip'],
  ['as_found', ['asFound'], 'asFound'],
  ['plusminus', ['value', 'plusMinus'], 'plusMinus'],
  ['furlong', ['mm', 'in'], undefined],
  ['7', ['1', '2'], undefined],
  ['x'.repeat(100), ['x'], undefined],
])('%s among %j is taken for %s', (found, known, near) => {
  expect(nearestName(found, known)).toBe(near)
})
