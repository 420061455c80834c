import { expect, test } from 'vitest'
import { depthSlip, slipOf } from './slip.ts'

test('a slip of the point or of the unit is seen beside one other reading', () => {
  expect(slipOf(219, [22])).toEqual({ is: 'point', others: 22 })
  expect(slipOf(209.2, [11, 21, 26, 31, 41])).toMatchObject({ is: 'point' })
  expect(slipOf(2.2, [22, 21])).toEqual({ is: 'point', others: 21.5 })
  expect(slipOf(31.9 * 25.4, [31.9])).toEqual({ is: 'unit', others: 31.9, typed: 'in' })
  expect(slipOf(1.257, [31.9])).toEqual({ is: 'unit', others: 31.9, typed: 'mm' })
})

test('one that is away from all others by ten is asked for', () => {
  expect(slipOf(12, [22, 22, 21.9])).toMatchObject({ is: 'far', off: -10, tens: true })
  expect(slipOf(29, [22, 22, 21.9])).toMatchObject({ is: 'far', tens: false })
})

test('holes that differ among themselves give no reason to ask', () => {
  expect(slipOf(12.5, [22, 45, 30])).toBeNull()
  expect(slipOf(22.4, [22, 22, 21.9])).toBeNull()
  expect(slipOf(12.5, [22])).toBeNull()
  expect(slipOf(0, [0, 0, 0])).toBeNull()
})

test('nothing on a face is a foot long', () => {
  expect(slipOf(319, [])).toEqual({ is: 'long' })
})

test('mouth and thread cannot reach below the bottom', () => {
  const hole = { id: '1', thread: 'M6', mouth: 2, threadDepth: 14 }
  expect(depthSlip(hole, 'bottomDepth', 12)).toEqual({ is: 'below the bottom', bottom: 12, needed: 16 })
  expect(depthSlip(hole, 'bottomDepth', 16)).toBeNull()
  expect(depthSlip({ ...hole, bottomDepth: 17 }, 'threadDepth', 16)).toMatchObject({ needed: 18 })
  expect(depthSlip(hole, 'threadDepth', 40)).toBeNull()
  expect(depthSlip({ ...hole, bottomDepth: 17 }, 'grip', 40)).toBeNull()
  expect(depthSlip({ ...hole, bottomDepth: 17, ending: 'through' }, 'threadDepth', 40)).toBeNull()
})
