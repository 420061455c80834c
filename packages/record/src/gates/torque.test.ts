import { expect, test } from 'vitest'
import { boltPlaced } from '../events/boltPlaced.ts'
import type { BodyOf } from '../events/catalogue.ts'
import { faceDescribed } from '../events/faceDescribed.ts'
import { handStarted } from '../events/handStarted.ts'
import { holeMarked } from '../events/holeMarked.ts'
import { instrumentChecked } from '../events/instrumentChecked.ts'
import { passTorqued } from '../events/passTorqued.ts'
import type { Facts } from './stop.ts'
import { stopsFor } from './stopsFor.ts'
import { workbench } from './testing/workbench.ts'

const at = { face: 'pan', hole: '1' }
const wrench = { name: 'torque wrench', number: 'w4' }
const bench = workbench()
bench.does(0, faceDescribed({ face: 'pan', torque: 10 }))
bench.does(0, holeMarked({ ...at, thread: 'M6' }))
bench.does(0, handStarted(at))
bench.does(0, instrumentChecked({ instrument: 'w4', calibratedUntil: '2026-03-31' }))
const folded = bench.folded()

const stops = (more: Partial<BodyOf<'pass-torqued'>>, facts: Facts = {}) =>
  stopsFor(folded, passTorqued({ ...at, pass: 1, final: true, ...more }), facts).map(({ gate, why }) => [
    gate,
    why.code,
  ])
const OUT = [['torque out of band', 'out-of-band']]

test('a final torque is inside what was wanted, give or take the deviation of the wrench: 6 % unless stated', () => {
  for (const torque of [9.4, 10, 10.6, { value: 10, plusMinus: 3 }, { value: 7.5, unit: 'lbf·ft' as const }])
    expect(stops({ torque }), JSON.stringify(torque)).toEqual([])
  for (const torque of [9.39, 10.61, { value: 10, unit: 'lbf·ft' as const }, { atLeast: 9 }])
    expect(stops({ torque }), JSON.stringify(torque)).toEqual(OUT)
  expect(stops({ torque: 10.5 }, { deviation: 0.04 })).toEqual(OUT)
  expect(stopsFor(folded, passTorqued({ ...at, pass: 1, final: true, torque: 12 }))[0]!.why).toEqual({
    code: 'out-of-band',
    torque: 12,
    band: { atLeast: 9.4, atMost: 10.6 },
  })
})

test('what the entry itself wanted rules over the torque of the hole, and an interval is widened at both ends', () => {
  expect(stops({ torque: 12, wanted: 12 })).toEqual([])
  expect(stops({ torque: 7.6, wanted: { atLeast: 8, atMost: 12 } })).toEqual([])
  expect(stops({ torque: 12.8, wanted: { atLeast: 8, atMost: 12 } })).toEqual(OUT)
})

test('only the final torque is held against the band, a bolt by feel has none, and with an angle only what was wanted counts', () => {
  expect(stops({ torque: 5, final: false })).toEqual([])
  expect(stops({ tool: { name: 'hand', byFeel: true } })).toEqual([])
  expect(stops({ torque: 5, angle: 90 })).toEqual([])
  expect(stops({ torque: 5, angle: 90, wanted: 8 })).toEqual(OUT)
})

test('a wrench whose calibration ended before today stops; on its last day it may be used', () => {
  const late = [['calibration', 'out-of-calibration']]
  expect(stops({ torque: 10, tool: wrench }, { today: '2026-03-31' })).toEqual([])
  expect(stops({ torque: 10, tool: wrench }, { today: '2026-04-01' })).toEqual(late)
  expect(stops({ torque: 10, tool: { ...wrench, calibratedUntil: '2026-12-31' } }, { today: '2026-04-01' })).toEqual([])
  expect(
    stops({ torque: 5, final: false, tool: { name: 'old', calibratedUntil: '2025-01-01' } }, { today: '2026-04-01' }),
  ).toEqual(late)
  expect(stops({ torque: 10, tool: wrench })).toEqual([])
  expect(stops({ tool: { ...wrench, byFeel: true } }, { today: '2026-04-01' })).toEqual([])
})

test('a torque outside the range of the wrench stops in any pass', () => {
  const out = [['torque out of band', 'out-of-range']]
  expect(stops({ torque: 5, final: false }, { range: { atLeast: 8, atMost: 60 } })).toEqual(out)
  expect(stops({ torque: 10 }, { range: { atLeast: 8 } })).toEqual([])
})

test('a bolt that the placement says cannot go there stops; where there is no answer nothing is said', () => {
  const belongs = { pan: { 1: ['b1', 'b2'] } }
  const place = (kind: string, hole = '1') => stopsFor(folded, boltPlaced({ face: 'pan', hole, kind }), { belongs })
  expect(place('b2')).toEqual([])
  expect(place('b3', '2')).toEqual([])
  expect(place('b3')).toEqual([
    { gate: 'bolt does not belong', ...at, why: { code: 'does-not-belong', kind: 'b3', may: ['b1', 'b2'] } },
  ])
})
