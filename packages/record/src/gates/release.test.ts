import { expect, test } from 'vitest'
import { boltPlaced } from '../events/boltPlaced.ts'
import { cameBack } from '../events/cameBack.ts'
import { clockStarted } from '../events/clockStarted.ts'
import { clockStopped } from '../events/clockStopped.ts'
import { comeBackAnswered } from '../events/comeBackAnswered.ts'
import { faceClosed } from '../events/faceClosed.ts'
import { faceDescribed } from '../events/faceDescribed.ts'
import { faceOpened } from '../events/faceOpened.ts'
import { faceReleased } from '../events/faceReleased.ts'
import { figureTaken } from '../events/figureTaken.ts'
import { gateOverridden } from '../events/gateOverridden.ts'
import { handStarted } from '../events/handStarted.ts'
import { holeMarked } from '../events/holeMarked.ts'
import { jobDone } from '../events/jobDone.ts'
import { jobPlanned } from '../events/jobPlanned.ts'
import { limitStated } from '../events/limitStated.ts'
import { partCameOut } from '../events/partCameOut.ts'
import { partReplaced } from '../events/partReplaced.ts'
import { partWentIn } from '../events/partWentIn.ts'
import { partWrittenOff } from '../events/partWrittenOff.ts'
import { passTorqued } from '../events/passTorqued.ts'
import { plugFound } from '../events/plugFound.ts'
import { plugPlaced } from '../events/plugPlaced.ts'
import { readingWaived } from '../events/readingWaived.ts'
import { resistanceFelt } from '../events/resistanceFelt.ts'
import { runDown } from '../events/runDown.ts'
import { stepSigned } from '../events/stepSigned.ts'
import { undone } from '../events/undone.ts'
import { unitReleased } from '../events/unitReleased.ts'
import { openBefore } from './openBefore.ts'
import { passedStops } from './passedStops.ts'
import { stopsFor } from './stopsFor.ts'
import { headsOf, type Workbench, workbench } from './testing/workbench.ts'

const face = 'pan'
const at = { face, hole: '1' }
const byFeel = { name: 'ratchet wrench', byFeel: true }
const check = stepSigned({ step: 'the unit', as: 'checker' })

/** A face with one hole, all done but the checker's signature. */
function ready(): Workbench {
  const bench = workbench()
  bench.does(0, faceDescribed({ face }))
  bench.does(0, holeMarked({ ...at, thread: 'M6' }))
  bench.does(0, boltPlaced({ ...at, kind: 'b1' }))
  bench.does(0, handStarted(at))
  bench.does(0, passTorqued({ ...at, pass: 1, final: true, tool: byFeel }))
  bench.does(0, faceClosed({ face }))
  return bench
}

const open = (bench: Workbench) => openBefore(bench.folded()).map(({ why }) => why.code)
const signed = (bench: Workbench) => bench.does(0, check, { who: 'dora' })

test('[GA2] a unit with nothing open may be released; by feel counts as a final pass', () => {
  const bench = ready()
  expect(open(bench)).toEqual(['not-checked'])
  signed(bench)
  expect(open(bench)).toEqual([])
  const release = unitReleased({ heads: headsOf(bench.knowledge(0)), record: 'c'.repeat(64) })
  expect(stopsFor(bench.folded(), release)).toEqual([])
  bench.does(0, release)
  expect(open(bench)).toEqual([])
})

test('[GA2] whatever is open keeps the unit from being released, and clearing it lets it go', () => {
  const cases: [string, Parameters<Workbench['does']>[1], Parameters<Workbench['does']>[1][]][] = [
    [
      'part-out',
      partCameOut({ part: 'ball', what: 'check ball' }),
      [
        partWentIn({ part: 'ball' }),
        partReplaced({ part: 'ball', by: 'new' }),
        partWrittenOff({ part: 'ball', reason: 'worn' }),
      ],
    ],
    ['plug-not-placed', plugFound({ plug: 'x1', socket: 's1' }), [plugPlaced({ plug: 'x1', socket: 's1' })]],
    ['job-not-done', jobPlanned({ job: 'flush', name: 'flush the cooler' }), [jobDone({ job: 'flush' })]],
    ['clock-runs', clockStarted({ clock: 'c1', what: 'sealant open', minutes: 10 }), [clockStopped({ clock: 'c1' })]],
    ['resistance-stands', resistanceFelt({ ...at, feel: 'gritty' }), []],
    ['face-not-closed', faceDescribed({ face: 'pump' }), [faceClosed({ face: 'pump' })]],
    [
      'figure-not-taken',
      limitStated({ reading: 'end play', most: 0.3, unit: 'mm', source: 'manual' }),
      [
        readingWaived({ reading: 'end play', reason: 'no gauge' }),
        figureTaken({ reading: 'end play', when: 'after', value: 0.3, unit: 'mm' }),
      ],
    ],
  ]
  for (const [code, opens, closes] of cases) {
    const bench = ready()
    bench.does(0, opens)
    signed(bench)
    expect(open(bench)).toEqual([code])
    const stop = { gate: 'release', why: expect.objectContaining({ code }) }
    const heads = headsOf(bench.knowledge(0))
    expect(stopsFor(bench.folded(), unitReleased({ heads, record: 'c'.repeat(64) }))).toEqual([stop])
    for (const close of closes) {
      const other = ready()
      other.does(0, opens)
      other.does(0, close)
      signed(other)
      expect(open(other), `${code}, ${close.type}`).toEqual([])
    }
  }
})

test('a hole without a bolt or without its final pass is open', () => {
  const bench = ready()
  bench.does(0, holeMarked({ face, hole: '2', thread: 'M6' }))
  signed(bench)
  expect(openBefore(bench.folded())).toEqual([
    { face, hole: '2', why: { code: 'hole-not-placed', face, hole: '2' } },
    { face, hole: '2', why: { code: 'hole-not-final', face, hole: '2' } },
  ])
})

test('a figure is held to its limit in whatever unit of length or torque, the last reading since teardown counts', () => {
  const read = (when: 'before' | 'during' | 'after', value: number, unit = 'mm') =>
    figureTaken({ reading: 'end play', when, value, unit })
  const told = (...readings: ReturnType<typeof read>[]) => {
    const bench = ready()
    bench.does(0, limitStated({ reading: 'end play', least: 0.1, most: 0.3, unit: 'mm', source: 'manual' }))
    for (const reading of readings) bench.does(0, reading)
    signed(bench)
    return open(bench)
  }
  expect(told(read('before', 0.2))).toEqual(['figure-not-taken'])
  expect(told(read('during', 0.2))).toEqual([])
  expect(told(read('during', 0.2), read('after', 0.4))).toEqual(['figure-outside'])
  expect(told(read('after', 0.01, 'in'))).toEqual([])
  expect(told(read('after', 0.2, 'in'))).toEqual(['figure-outside'])
  expect(told(read('after', 0.2, 'Ω'))).toEqual(['figure-in-other-unit'])
})

test('the checker is no builder, and signs after the last work', () => {
  const own = ready()
  own.does(0, check)
  expect(open(own)).toEqual(['not-checked'])
  const early = ready()
  signed(early)
  early.does(0, plugPlaced({ plug: 'x1', socket: 's1' }))
  expect(open(early)).toEqual(['signed-before'])
  signed(early)
  expect(open(early)).toEqual([])
  expect(openBefore(ready().folded(), { onlyPerson: true })).toEqual([])
})

test('a release that says the shop is one person needs no second one; one whose heads are not those of its device stops', () => {
  const bench = ready()
  const heads = headsOf(bench.knowledge(0))
  const release = { heads, record: 'c'.repeat(64), onlyPerson: true }
  expect(stopsFor(bench.folded(), unitReleased(release))).toEqual([])
  expect(stopsFor(bench.folded(), unitReleased({ ...release, heads: {} }))).toEqual([
    { gate: 'release', why: { code: 'heads', heads } },
  ])
})

test('a stop that was passed silently keeps the unit open until the entry is undone; an override with its reason does not', () => {
  const bench = ready()
  bench.does(0, holeMarked({ face, hole: '2', thread: 'M6' }))
  const early = bench.does(0, runDown({ face, hole: '2' }))
  for (const happening of [
    boltPlaced({ face, hole: '2', kind: 'b1' }),
    passTorqued({ face, hole: '2', pass: 1, final: true, tool: byFeel }),
  ])
    bench.does(0, happening)
  signed(bench)
  expect(openBefore(bench.folded())).toEqual([
    { face, hole: '2', why: { code: 'stop-passed', event: early.id, gate: 'hand-start', face, hole: '2' } },
  ])
  bench.does(0, undone({ event: early.id }))
  expect(open(bench), 'now the final pass was the first to be early').toEqual(['stop-passed'])

  const right = ready()
  right.does(0, holeMarked({ face, hole: '2', thread: 'M6' }))
  right.does(0, gateOverridden({ gate: 'hand-start', face, hole: '2', reason: 'the stud is in' }))
  for (const happening of [
    runDown({ face, hole: '2' }),
    boltPlaced({ face, hole: '2', kind: 'b1' }),
    passTorqued({ face, hole: '2', pass: 1, final: true, tool: byFeel }),
  ])
    right.does(0, happening)
  signed(right)
  expect(open(right)).toEqual([])
})

test('a contradiction, a missing entry and one that is not understood keep the unit open', () => {
  const bench = ready()
  bench.tell(1)
  bench.does(0, boltPlaced({ ...at, kind: 'b2' }))
  bench.does(1, boltPlaced({ ...at, kind: 'b3' }))
  bench.tell(0)
  signed(bench)
  expect(open(bench)).toEqual(['hole-not-placed', 'clash'])
  const newer = ready()
  newer.does(0, { type: 'part-weighed', version: 1, body: {} })
  signed(newer)
  expect(open(newer)).toEqual(['entry-not-understood'])
  const late = ready()
  late.tell(1)
  const lost = late.does(1, plugPlaced({ plug: 'x1', socket: 's1' }))
  late.tell(0)
  signed(late)
  late.made.splice(late.made.indexOf(lost), 1)
  expect(open(late)).toEqual(['entries-missing'])
})

test('a face is released when nothing at it is open, whatever the other faces do', () => {
  const bench = ready()
  bench.does(0, faceDescribed({ face: 'pump' }))
  bench.does(0, partCameOut({ part: 'gasket', what: 'gasket', face: 'pump' }))
  bench.does(0, stepSigned({ step: 'pan', as: 'checker', face }), { who: 'dora' })
  expect(stopsFor(bench.folded(), faceReleased({ face }))).toEqual([])
  expect(openBefore(bench.folded(), {}, { release: 'face', face: 'pump' }).map(({ why }) => why.code)).toEqual([
    'face-not-closed',
    'part-out',
    'not-checked',
  ])
})

const releaseBy = (bench: Workbench) => unitReleased({ heads: headsOf(bench.knowledge(0)), record: 'c'.repeat(64) })

test('[GA4] a unit that came back is released again only when what was found is told, and somebody has checked it since', () => {
  const bench = ready()
  signed(bench)
  bench.does(0, releaseBy(bench))
  const back = bench.does(0, cameBack({ complaint: 'weeps at the pan', toAnswer: true }))
  expect(open(bench)).toEqual(['come-back-not-answered', 'signed-before'])
  expect(stopsFor(bench.folded(), releaseBy(bench)).map(({ why }) => why)).toContainEqual({
    code: 'come-back-not-answered',
    event: back.id,
  })

  const answer = bench.does(0, comeBackAnswered({ cameBack: back.id, found: 'the gasket had torn', face }))
  expect(open(bench)).toEqual(['signed-before'])
  signed(bench)
  expect(stopsFor(bench.folded(), releaseBy(bench))).toEqual([])

  bench.does(0, undone({ event: answer.id }))
  expect(open(bench)).toEqual(['come-back-not-answered'])
  bench.does(0, undone({ event: back.id }))
  expect(open(bench)).toEqual([])
})

test('[GA4] of two complaints each asks for its own answer; who only tells what was found may be the checker', () => {
  const bench = ready()
  const [first, second] = ['weeps', 'whines'].map((complaint) => bench.does(0, cameBack({ complaint, toAnswer: true })))
  bench.does(0, comeBackAnswered({ cameBack: first!.id, found: 'a torn gasket' }))
  expect(open(bench)).toEqual(['come-back-not-answered', 'not-checked'])
  bench.does(0, comeBackAnswered({ cameBack: second!.id, found: 'nothing: it is the pump beside it' }), { who: 'dora' })
  signed(bench)
  expect(open(bench)).toEqual([])
})

test('[GA4] a unit that came back and was released before complaints were to be answered stays released, and passed no stop', () => {
  const bench = ready()
  signed(bench)
  bench.does(0, releaseBy(bench))
  bench.does(0, cameBack({ complaint: 'weeps at the pan' }))
  bench.does(0, releaseBy(bench))
  expect(open(bench)).toEqual([])
  expect(passedStops(bench.folded())).toEqual([])
  expect(bench.folded().work.released).toBeDefined()
})

const limit = limitStated({ reading: 'end play', most: 0.3, unit: 'mm', source: 'manual' })
const atEnd = (value: number, more: { face?: string } = {}) =>
  figureTaken({ reading: 'end play', when: 'after', value, unit: 'mm', ...more })
const opened = faceOpened({ face, holes: [] })
const back = cameBack({ complaint: 'weeps', toAnswer: true })
/** Of these codes those that are about figures and jobs. */
const proof = (bench: Workbench) =>
  openBefore(bench.folded())
    .map(({ why }) => why)
    .filter(({ code }) => code.startsWith('figure-') || code.startsWith('job-'))

test('[GA5] a figure taken at the end counts no more once its face was opened again after the unit came back, until it is taken again', () => {
  for (const at of [{ face }, {}]) {
    const bench = ready()
    for (const entry of [limit, atEnd(0.2, at), back]) bench.does(0, entry)
    expect(proof(bench)).toEqual([])
    const opening = bench.does(0, opened)
    expect(proof(bench)).toEqual([{ code: 'figure-before-opening', reading: 'end play', face }])
    bench.does(0, undone({ event: opening.id }))
    expect(proof(bench), 'a slip of the thumb').toEqual([])
    bench.does(0, opened)
    bench.does(0, atEnd(0.2, at))
    expect(proof(bench), 'the same figure, taken again').toEqual([])
    bench.does(0, opened)
    bench.does(0, atEnd(0.4, at))
    expect(proof(bench), 'the newest one is judged').toEqual([{ code: 'figure-outside', reading: 'end play' }])
  }
})

test('[GA5] the opening of another face leaves a figure of its own face as it was, and takes one of the whole unit away', () => {
  const bench = ready()
  bench.does(0, faceDescribed({ face: 'pump' }))
  bench.does(0, limit)
  bench.does(0, atEnd(0.2, { face: 'pump' }))
  bench.does(0, back)
  bench.does(0, opened)
  expect(proof(bench)).toEqual([])
  bench.does(0, atEnd(0.25))
  bench.does(0, opened)
  expect(proof(bench)).toEqual([{ code: 'figure-before-opening', reading: 'end play', face }])
})

test('[GA5] what was read while it was open stands in only where it was read since the opening', () => {
  const during = figureTaken({ reading: 'end play', when: 'during', value: 0.1, unit: 'mm' })
  const bench = ready()
  for (const entry of [limit, during, atEnd(0.2), back, opened]) bench.does(0, entry)
  expect(proof(bench)).toEqual([{ code: 'figure-before-opening', reading: 'end play', face }])
  bench.does(0, during)
  expect(proof(bench)).toEqual([])
  const alone = ready()
  for (const entry of [limit, during, back, opened]) alone.does(0, entry)
  expect(proof(alone), 'of itself it stays').toEqual([])
})

test('[GA5] a job of the face that was opened again, or of none, counts as not done until it is done again', () => {
  const bench = ready()
  bench.does(0, faceDescribed({ face: 'pump' }))
  for (const [job, at] of [
    ['pan wiped', { face }],
    ['pump tried', { face: 'pump' }],
    ['turned by hand', {}],
  ] as const) {
    bench.does(0, jobPlanned({ job, name: job, ...at }))
    bench.does(0, jobDone({ job }))
  }
  bench.does(0, back)
  bench.does(0, opened)
  expect(proof(bench)).toEqual([
    { code: 'job-before-opening', job: 'pan wiped', face },
    { code: 'job-before-opening', job: 'turned by hand', face },
  ])
  bench.does(0, jobDone({ job: 'pan wiped' }))
  bench.does(0, jobDone({ job: 'turned by hand' }))
  expect(proof(bench)).toEqual([])
})

test('[GA5] who read a figure and did not know that the cover was off has not proven it; who knew has', () => {
  const bench = ready()
  for (const entry of [limit, back]) bench.does(0, entry)
  bench.tell(1)
  bench.does(0, opened)
  bench.does(1, atEnd(0.2))
  expect(proof(bench)).toEqual([{ code: 'figure-before-opening', reading: 'end play', face }])
  bench.does(0, atEnd(0.2))
  expect(proof(bench)).toEqual([])
})

test('[GA5] an opening before it came back, or after a come-back from before complaints were to be answered, leaves all of it as it was', () => {
  const bench = ready()
  for (const entry of [limit, atEnd(0.2), opened, back]) bench.does(0, entry)
  expect(proof(bench)).toEqual([])

  const before = ready()
  for (const entry of [limit, atEnd(0.2), jobPlanned({ job: 'flush' }), jobDone({ job: 'flush' })])
    before.does(0, entry)
  signed(before)
  before.does(0, releaseBy(before))
  before.does(0, cameBack({ complaint: 'weeps' }))
  before.does(0, opened)
  before.does(0, faceClosed({ face }))
  signed(before)
  before.does(0, releaseBy(before))
  expect(open(before)).toEqual([])
  expect(passedStops(before.folded())).toEqual([])
  expect(before.folded().work.released).toBeDefined()
})

test('[GA5] a cover is not closed over a figure of its face that was taken before it came off again', () => {
  const bench = ready()
  for (const entry of [limit, atEnd(0.2, { face }), back, opened]) bench.does(0, entry)
  expect(stopsFor(bench.folded(), faceClosed({ face })).map(({ why }) => why.code)).toEqual(['figure-before-opening'])
})
