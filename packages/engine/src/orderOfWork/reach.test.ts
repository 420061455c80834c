import { expect, test } from 'vitest'
import type { BenchTool, Face } from '../unit.ts'
import { formHasReading, reachOf } from './reach.ts'

const tools: BenchTool[] = [
  { id: 'crow', form: 'crow-foot', lever: 300, reach: 100 },
  { id: 'square', form: 'crow-foot', lever: 300, reach: 100, angle: 90 },
  { id: 'back', form: 'crow-foot', lever: 100, reach: 100, angle: 180 },
  { id: 'bare', form: 'crow-foot' },
  { id: 'joint', form: 'swivel', angle: 30 },
  { id: 'bar', form: 'straight extension' },
  { id: 'ring', form: 'ratchet wrench' },
]
const at = (...final: string[]) =>
  reachOf({ id: 'lid', torque: 20, holes: [{ id: '1', thread: 'M6', reach: { final } }] }, tools)[0]!

test('a crow-foot changes the setting, square to the wrench and a straight bar do not', () => {
  // T·L/(L + E), the same shape as 40 lb·ft, 12 in, 4 in → 30 of TM 9-254
  expect(at('crow').final[0]).toMatchObject({ setting: { lo: 15, hi: 15 }, atBolt: { lo: 20, hi: 20 }, reading: true })
  expect(at('square').final[0]!.setting).toEqual({ lo: 20, hi: 20 })
  expect(at('bar').final[0]!.setting).toEqual({ lo: 20, hi: 20 })
})

test('a swivel lets the torque at the bolt swing', () => {
  const { setting, atBolt } = at('joint').final[0]!
  expect(setting).toEqual({ lo: 20, hi: 20 })
  expect(atBolt!.lo).toBeCloseTo(20 * Math.cos(Math.PI / 6), 9)
  expect(atBolt!.hi).toBeCloseTo(20 / Math.cos(Math.PI / 6), 9)
})

test('a tool without a reading is finished with another tool, or by feel', () => {
  expect(at('ring').finding).toBe('only by feel')
  expect(at('ring', 'bar').finding).toBe('finish with another tool')
  expect(at('ring').final[0]).toEqual({ tool: 'ring', form: 'ratchet wrench', reading: false })
  expect(formHasReading('by hand')).toBe(false)
})

test('a setting that cannot be worked out is told', () => {
  expect(at('bare').finding).toBe('no setting: lever or reach not stated')
  expect(at('back').finding).toBe('no setting: it reaches the hand')
  expect(at('a tool by name')).toMatchObject({ final: [{ tool: 'a tool by name' }] })
})

test('a hole that states nothing is left out, and without a torque there is no setting', () => {
  const face: Face = {
    id: 'lid',
    holes: [
      { id: '1', thread: 'M6' },
      { id: '2', thread: 'M6', reach: { runDown: ['ring'], final: ['crow'] } },
    ],
  }
  expect(reachOf(face, tools)).toEqual([
    {
      face: 'lid',
      hole: '2',
      runDown: [{ tool: 'ring', form: 'ratchet wrench', reading: false }],
      final: [{ tool: 'crow', form: 'crow-foot', reading: true }],
    },
  ])
})
