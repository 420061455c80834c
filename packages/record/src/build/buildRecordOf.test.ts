import { expect, test } from 'vitest'
import { entriesText } from '../archive/pack.ts'
import { knowledgeOf, nextEntry } from '../entry.ts'
import { cameBack } from '../events/cameBack.ts'
import { clockStarted } from '../events/clockStarted.ts'
import { clockStopped } from '../events/clockStopped.ts'
import { comeBackAnswered } from '../events/comeBackAnswered.ts'
import type { Happening } from '../events/define.ts'
import type { Event } from '../events/event.ts'
import { faceOpened } from '../events/faceOpened.ts'
import { figureTaken } from '../events/figureTaken.ts'
import { gateOverridden } from '../events/gateOverridden.ts'
import { partCameOut } from '../events/partCameOut.ts'
import { unitReleased } from '../events/unitReleased.ts'
import { fold } from '../fold.ts'
import { passedStops } from '../gates/passedStops.ts'
import { recordHash } from '../proof.ts'
import { sha256OfText } from '../sha256.ts'
import { headsOf } from '../spread.ts'
import { history, shuffled, UNIT, uuid } from '../testing/bench.ts'
import { seeded } from '../unitFile/testing/random.ts'
import type { BuildRecord } from './buildRecord.ts'
import { buildRecordOf } from './buildRecordOf.ts'
import { type Ending, FINISHED, finishedUnit, PEOPLE } from './testing/finishedUnit.ts'

const made = (unit: string, events: readonly Event[]): BuildRecord =>
  buildRecordOf(fold(unit, events), { people: PEOPLE, hash: sha256OfText })
const recordOf = (ending: Ending): BuildRecord => made(FINISHED, finishedUnit(ending))
const faceOf = (record: BuildRecord, id: string) => record.faces.find((face) => face.id === id)!
const holeOf = (record: BuildRecord, face: string, id: string) =>
  faceOf(record, face).holes.find((hole) => hole.id === id)!

/** One more entry of the device that made the last one. */
function after(events: Event[], happening: Happening, unit = FINISHED): Event[] {
  const { device, who } = events.at(-1)!
  const id = uuid(0xeee_000 + events.length)
  const given = { id, at: '2026-07-01T08:00:00.000Z', who, ...happening }
  return [...events, nextEntry(knowledgeOf(unit, device, events), given, sha256OfText)]
}

test('[PR11] the same entries in any order give the same build record', () => {
  const events = finishedUnit('came back')
  const once = made(FINISHED, events)
  for (const seed of [1, 2, 3]) expect(made(FINISHED, shuffled(seeded(seed), events))).toEqual(once)
})

test('as found stands against as built for every hole, and what changed is said', () => {
  const record = recordOf('released')
  expect(
    faceOf(record, 'pan').holes.map(({ id, found, placed, changed }) => [id, found, placed?.kind, changed]),
  ).toEqual([
    ['1', 'a20', 'a20', false],
    ['2', 'a20', 'a20', false],
    ['3', 'a30', 'a20', true],
    ['4', 'a20', 'a30', true],
    ['5', 'a20', 'a20', false],
    ['6', 'a20', 'a20', false],
    ['7', 'a30', 'a30', false],
    ['8', 'a20', 'a20', false],
  ])
  expect(holeOf(record, 'pump-cover', '2').condition).toBe('stretched, waisted below the head')
})

test('each pass has its torque, its wrench with number and calibration, and a bolt by feel says so', () => {
  const record = recordOf('released')
  expect(holeOf(record, 'pan', '1').passes).toMatchObject([
    { pass: 1, torque: 5, wanted: 5, byFeel: false, inCalibration: true, final: false },
    { pass: 2, torque: 8, final: false },
    { pass: 3, torque: 10, final: true, outOfBand: false, tool: { number: 'w4', calibratedUntil: '2026-12-31' } },
  ])
  expect(holeOf(record, 'pan', '8').passes.at(-1)).toMatchObject({ byFeel: true })
  expect(holeOf(record, 'pan', '8').passes.at(-1)).not.toHaveProperty('torque')
  expect(holeOf(record, 'pan', '6').passes.at(-1)).toMatchObject({ torque: 11.8, outOfBand: true })
  expect(holeOf(record, 'pump-cover', '1').passes.at(-1)).toMatchObject({
    inCalibration: false,
    tool: { number: 'w9' },
  })
  expect(record.wrenches).toMatchObject([
    { number: 'w4', bolts: 12, outOfCalibration: false },
    { bolts: 1, name: 'ratchet wrench, no room for another' },
    { number: 'w9', bolts: 1, outOfCalibration: true },
  ])
})

test('figures before and after stand against their limit, with who waived one and why', () => {
  const [endPlay, coil] = recordOf('released').figures
  expect(endPlay).toMatchObject({
    verdict: 'inside',
    before: { value: 0.62, plusMinus: 0.02, instrument: { number: 'd1' } },
    after: { value: 0.24 },
    limit: { least: 0.1, most: 0.4, source: 'manual, table 4' },
  })
  expect(coil).toMatchObject({ verdict: 'waived', waived: { who: 'Ane Builder' }, after: { conditions: 'at 20 °C' } })
  expect(recordOf('open').figures.map(({ verdict }) => verdict)).toEqual(['not taken', 'not taken'])
})

test('a figure before teardown is held against its limit in any unit of its kind', () => {
  const taken = (value: number, unit: string) =>
    after(
      finishedUnit('released'),
      figureTaken({ reading: 'end play of the input shaft', when: 'before', value, unit }),
    )
  const wasOutside = (events: Event[]) =>
    made(FINISHED, events).figures.find(({ name }) => name === 'end play of the input shaft')!.wasOutside
  expect(wasOutside(finishedUnit('released'))).toBe(true)
  expect(wasOutside(taken(0.024, 'in'))).toBe(true)
  expect(wasOutside(taken(0.012, 'in'))).toBe(false)
  expect(wasOutside(taken(0.62, 'bar'))).toBe(false)
})

test('[GA5] the reading at the end is the one since the cover came off again; the one before it stands as history', () => {
  const reading = 'end play of the input shaft'
  const figure = (events: Event[]) => made(FINISHED, events).figures.find(({ name }) => name === reading)!
  const back = after(finishedUnit('released'), cameBack({ complaint: 'Weeps at the pan', toAnswer: true }))
  expect(figure(back)).toMatchObject({ verdict: 'inside', after: { value: 0.24 } })
  const opened = after(back, faceOpened({ face: 'pan', holes: [] }))
  expect(figure(opened)).toMatchObject({
    verdict: 'before opening',
    before: { value: 0.62 },
    earlier: [{ value: 0.24 }],
  })
  expect(figure(opened)).not.toHaveProperty('after')
  const again = after(opened, figureTaken({ reading, when: 'after', value: 0.26, unit: 'mm' }))
  expect(figure(again)).toMatchObject({ verdict: 'inside', after: { value: 0.26 }, earlier: [{ value: 0.24 }] })
})

test('[PR12] every stop that was passed is there, with the person and the reason or as passed in silence', () => {
  const released = recordOf('released')
  expect(released.stops.map(({ gate, override }) => [gate, override?.who, override?.reason])).toEqual([
    ['calibration', 'Ane Builder', 'Compared with w4 at 20 N·m this morning, both the same'],
    [
      'torque out of band',
      'Ane Builder',
      'Thread insert with a lock: 1.8 N·m of drag measured before the seat and added',
    ],
  ])
  expect(recordOf('open').stops).toMatchObject([{ gate: 'calibration', stops: [{ why: { until: '2026-02-20' } }] }])
  expect(recordOf('open').stops[0]).not.toHaveProperty('override')
  expect(recordOf('open').proof).toMatchObject({ overridden: 0, silent: 1 })
  for (const seed of [11, 12, 13, 14]) {
    const events = history(seed, 120).made
    const folded = fold(UNIT, events)
    const record = made(UNIT, events)
    const told = record.stops.flatMap(({ stops, event }) => stops.map((stop) => ({ event, stop })))
    const wanted = passedStops(folded).map(({ event, stop }) => ({ event, stop }))
    expect(told).toHaveLength(wanted.length)
    expect(told).toEqual(expect.arrayContaining(wanted))
    const undone = new Set(folded.undone.map(({ event }) => event))
    const overrides = events.filter(({ type, id }) => type === 'gate-overridden' && !undone.has(id))
    const there = record.stops.flatMap(({ override }) => override?.event ?? [])
    expect(new Set(there)).toEqual(new Set(overrides.map(({ id }) => id)))
  }
})

test('an override after which nothing was passed is on the record all the same', () => {
  const events = after(
    finishedUnit('open'),
    gateOverridden({ gate: 'closing step', face: 'pan', reason: 'in a hurry' }),
  )
  expect(made(FINISHED, events).stops).toContainEqual(
    expect.objectContaining({
      gate: 'closing step',
      stops: [],
      override: expect.objectContaining({ reason: 'in a hurry' }),
    }),
  )
})

test('a resistance is told with what was found, or stands', () => {
  expect(recordOf('released').resistances).toMatchObject([
    { hole: '5', turns: 3, cleared: { found: expect.stringContaining('Old sealant') } },
  ])
  expect(recordOf('open').resistances[0]).not.toHaveProperty('cleared')
})

test('parts, plugs, bolts and clocks are accounted for', () => {
  const record = recordOf('released')
  expect(Object.fromEntries(record.parts.map(({ id, fate, by, reason }) => [id, [fate, by, reason]]))).toEqual({
    filter: ['replaced', 'new suction filter', 'metal in the old one'],
    'ball-1': ['in', undefined, undefined],
    'spring-1': ['in', undefined, undefined],
    'clip-2': ['written off', undefined, 'broken, the loom is tied instead'],
    'seal-1': ['replaced', 'new seal, fluorocarbon', 'lip hardened'],
  })
  expect(record.fits).toMatchObject([{ place: 'input shaft', part: 'shim 2.15', thickness: { value: 2.15 } }])
  expect(record.plugs).toMatchObject([{ id: 'X1', found: 'second gear', placed: 'second gear' }])
  expect(record.bolts.map(({ what, count, reason }) => [what, count, reason])).toEqual([
    ['written off', 1, 'stretched'],
    ['added', 1, 'new, from stock'],
  ])
  expect(record.clocks).toMatchObject([{ what: 'Sealant on the pan', minutes: 20, over: expect.any(Number) }])
  expect(record.undone).toMatchObject([{ says: 'Note at pan: hole 9 leaks', by: { reason: 'there is no hole 9' } }])
})

test('a clock that another device stopped is stopped, also where that one’s clock lags', () => {
  const events = after(finishedUnit('open'), clockStarted({ clock: 'second coat', what: 'second coat', minutes: 20 }))
  const id = uuid(0xeee_fff)
  const lagging = { id, at: '2026-07-01T07:58:00.000Z', who: 'somebody', ...clockStopped({ clock: 'second coat' }) }
  const stopped = [...events, nextEntry(knowledgeOf(FINISHED, uuid(0xddd), events), lagging, sha256OfText)]
  const ofCoat = (all: Event[]) => made(FINISHED, all).clocks.find(({ what }) => what === 'second coat')
  expect(ofCoat(events)).not.toHaveProperty('ran')
  expect(ofCoat(stopped)).toMatchObject({ ran: 0, stopped: { who: 'somebody' } })
  expect(ofCoat(stopped)).not.toHaveProperty('over')
})

test('an earlier reading of the same thing is told as replaced', () => {
  const grips = recordOf('released').readings.filter(({ place }) => place[3] === '5')
  expect(grips.map(({ replaced, repeated }) => [replaced, repeated?.length])).toEqual([
    [true, undefined],
    [false, 3],
  ])
})

test('[PR13] only a release that fits, after which nothing came and with nothing open, makes a record released', () => {
  expect(recordOf('released')).toMatchObject({
    state: 'released',
    open: [],
    since: [],
    release: { who: 'Bo Checker', holds: true, onlyPerson: false },
    proof: { bolts: 14, final: 14, checkedBy: ['Bo Checker'] },
  })
  expect(recordOf('open').state).toBe('not released')
  expect(recordOf('open').open.length).toBeGreaterThan(0)
  expect(recordOf('note after')).toMatchObject({ state: 'changed since', since: [{ who: 'Ane Builder' }] })
  expect(recordOf('came back')).toMatchObject({
    state: 'came back',
    cameBack: [{ complaint: expect.stringContaining('Weeps'), answers: [] }],
  })
  const back = finishedUnit('came back')
  const answered = after(
    back,
    comeBackAnswered({ cameBack: back.at(-1)!.id, found: 'the gasket had torn', done: 'a new one', face: 'pan' }),
  )
  expect(made(FINISHED, answered).cameBack).toMatchObject([
    { answers: [{ who: 'Ane Builder', found: 'the gasket had torn', done: 'a new one', face: 'pan' }] },
  ])

  const before = finishedUnit('open')
  const heads = headsOf(before)
  const early = after(before, unitReleased({ heads, record: recordHash(before, sha256OfText) }))
  expect(made(FINISHED, early).state).toBe('released open')
  expect(made(FINISHED, after(before, unitReleased({ heads, record: 'e'.repeat(64) }))).state).toBe('does not fit')
  const wrong = after(finishedUnit('released'), partCameOut({ part: 'late', what: 'shim' }))
  expect(made(FINISHED, wrong).state).toBe('changed since')
})

test('a unit that was made from a file is a state and no story: nobody did anything, nothing is released', () => {
  const record = buildRecordOf(fold(FINISHED, finishedUnit('open')), {
    people: {},
    hash: sha256OfText,
    stateOnly: true,
  })
  expect(record).toMatchObject({ state: 'state only', entries: 0, open: [], stops: [] })
  expect(record).not.toHaveProperty('takenIn')
  expect(record).not.toHaveProperty('last')
})

test('somebody whose name is not known is called by the id that the entries carry', () => {
  const record = buildRecordOf(fold(FINISHED, finishedUnit('released')), { people: {}, hash: sha256OfText })
  expect(record.release?.who).toBe('a1f0c0de-0000-4000-8000-0000000000c2')
})

test('cautions belong to what was done', () => {
  expect(recordOf('released').cautions).toEqual([
    'battery',
    'lifting',
    'springs',
    'solvents',
    'compressed air',
    'sealant',
    'over-tightened',
    'road test',
  ])
  expect(made(UNIT, []).cautions).toEqual(['lifting', 'solvents', 'compressed air', 'road test'])
})

test('the finished unit of the demo is this story', async () => {
  await expect(entriesText(finishedUnit('released'))).toMatchFileSnapshot('../../../../demo/finished-unit.ndjson')
})
