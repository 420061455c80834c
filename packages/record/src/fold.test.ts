import { place } from '@gripbook/engine'
import { expect, test } from 'vitest'
import { type Given, knowledgeOf, nextEntry } from './entry.ts'
import { boltBackedOut } from './events/boltBackedOut.ts'
import { boltFound } from './events/boltFound.ts'
import { boltsAdded } from './events/boltsAdded.ts'
import { boltsWrittenOff } from './events/boltsWrittenOff.ts'
import { cameBack } from './events/cameBack.ts'
import { clashSettled } from './events/clashSettled.ts'
import type { Happening } from './events/define.ts'
import type { Event } from './events/event.ts'
import { faceDescribed } from './events/faceDescribed.ts'
import { faceOpened } from './events/faceOpened.ts'
import { faceReleased } from './events/faceReleased.ts'
import { faceStruckOut } from './events/faceStruckOut.ts'
import { handStarted } from './events/handStarted.ts'
import { holeDescribed } from './events/holeDescribed.ts'
import { holeMarked } from './events/holeMarked.ts'
import { holeStruckOut } from './events/holeStruckOut.ts'
import { kindDescribed } from './events/kindDescribed.ts'
import { kindLaidOut } from './events/kindLaidOut.ts'
import { noteWritten } from './events/noteWritten.ts'
import { partCameOut } from './events/partCameOut.ts'
import { partWentIn } from './events/partWentIn.ts'
import { passTorqued } from './events/passTorqued.ts'
import { rankStated } from './events/rankStated.ts'
import { readingTaken } from './events/readingTaken.ts'
import { resistanceCleared } from './events/resistanceCleared.ts'
import { resistanceFelt } from './events/resistanceFelt.ts'
import { runDown } from './events/runDown.ts'
import { undone } from './events/undone.ts'
import { unitReleased } from './events/unitReleased.ts'
import { unitTakenIn } from './events/unitTakenIn.ts'
import { fold, foldMore } from './fold.ts'
import { recordHash, upTo } from './proof.ts'
import { sha256OfText } from './sha256.ts'
import { DEVICES, UNIT, uuid } from './testing/bench.ts'
import { unitFileOf } from './toUnitFile.ts'

const [PHONE, TABLET, DESK] = DEVICES

/** A bench on which entries are made one after the other; each device knows only what it was told. */
function bench() {
  const onDevice = new Map<string, Event[]>(DEVICES.map((id) => [id, []]))
  const all: Event[] = []
  return {
    all,
    on(device: string, happening: Happening, clock?: string): Event {
      const n = all.length + 1
      const at = clock ?? `2026-03-01T09:00:${String(n).padStart(2, '0')}.000Z`
      const given: Given = { id: uuid(n), at, who: `on ${device.at(-1)}`, ...happening }
      const event = nextEntry(knowledgeOf(UNIT, device, onDevice.get(device)!), given, sha256OfText)
      all.push(event)
      onDevice.get(device)!.push(event)
      return event
    },
    /** Everything that was made so far comes to every device. */
    meet(): void {
      for (const id of DEVICES) onDevice.set(id, [...all])
    },
  }
}

const at = { face: 'pan', hole: '1' }
const grip = (value: number) => readingTaken({ of: { ...at, quantity: 'grip' }, value })
const first = <T>(list: readonly T[]): T => list[0]!

/** A face with one hole and one kind, known to all. */
function pan() {
  const here = bench()
  here.on(PHONE, unitTakenIn({ name: 'gearbox 12' }))
  here.on(PHONE, faceDescribed({ face: 'pan', torque: 10 }))
  here.on(PHONE, holeMarked({ ...at, mark: [10, 20], thread: 'M6', threadDepth: 14, bottomDepth: 18 }))
  here.on(PHONE, kindLaidOut({ face: 'pan', kind: 'b1', thread: 'M6', length: 45 }))
  here.meet()
  return here
}
const holeOf = (events: readonly Event[]) => fold(UNIT, events).unit.faces[0]!.holes[0]!
const workOf = (events: readonly Event[]) => fold(UNIT, events).faces.pan!.holes['1']!

test('no entries, no faces, and nothing to write', () => {
  const folded = fold(UNIT, [])
  expect(folded.unit).toEqual({ gripbook: 'unit/1', faces: [] })
  expect(unitFileOf(folded)).toEqual({ unit: null, leftOut: [] })
})

test('entries of another unit are passed over', () => {
  const { all } = pan()
  expect(fold(uuid(0xb), all).entries).toEqual([])
})

test('a reading stands in its hole as it was entered, and a later one that knew it replaces it', () => {
  const here = pan()
  here.on(PHONE, readingTaken({ of: { ...at, quantity: 'grip' }, value: { value: 1.25, plusMinus: 0.01, unit: 'in' } }))
  expect(holeOf(here.all).grip).toEqual({ value: 1.25, plusMinus: 0.01, unit: 'in' })
  here.meet()
  here.on(TABLET, grip(32))
  expect(holeOf(here.all).grip).toBe(32)
  expect(fold(UNIT, here.all).clashes).toEqual([])
})

test('[RE3] two grips, neither knowing of the other, are a clash: both are shown, and the interval that holds both stands', () => {
  const here = pan()
  const ours = here.on(PHONE, grip(31.9))
  const theirs = here.on(TABLET, grip(35))
  const folded = fold(UNIT, here.all)
  expect(folded.clashes).toEqual([
    {
      place: ['face', 'pan', 'hole', '1'],
      field: 'grip',
      entries: [
        { event: ours.id, device: PHONE, who: 'on 1', at: ours.at, value: 31.9 },
        { event: theirs.id, device: TABLET, who: 'on 2', at: theirs.at, value: 35 },
      ],
    },
  ])
  expect(holeOf(here.all).grip).toEqual({ atLeast: 31.9, atMost: 35 })
})

test('a clash is shown whichever clock is wrong, and the one who is last by the clock does not win', () => {
  for (const clock of ['2001-01-01T00:00:00.000Z', '2099-01-01T00:00:00.000Z']) {
    const here = pan()
    here.on(PHONE, grip(31.9), clock)
    here.on(TABLET, grip(35))
    expect(fold(UNIT, here.all).clashes.map(({ field }) => field)).toEqual(['grip'])
  }
})

test('the same grip twice is no clash', () => {
  const here = pan()
  here.on(PHONE, grip(31.9))
  here.on(TABLET, grip(31.9))
  expect(fold(UNIT, here.all).clashes).toEqual([])
  expect(holeOf(here.all).grip).toBe(31.9)
})

test('a third reading by one who knew both settles the clash; by one who knew one of them it does not', () => {
  const here = pan()
  here.on(PHONE, grip(31.9))
  here.on(TABLET, grip(35))
  here.on(TABLET, grip(34))
  expect(first(fold(UNIT, here.all).clashes).entries.map(({ value }) => value)).toEqual([31.9, 34])
  here.meet()
  here.on(DESK, grip(32))
  expect(fold(UNIT, here.all).clashes).toEqual([])
  expect(holeOf(here.all).grip).toBe(32)
})

test('[RE3] a person settles a clash by naming the entry that holds, or that none does', () => {
  for (const [stands, grips] of [
    [0, 31.9],
    [1, 35],
    [null, undefined],
  ] as const) {
    const here = pan()
    const both = [here.on(PHONE, grip(31.9)), here.on(TABLET, grip(35))]
    here.meet()
    const { place, field } = first(fold(UNIT, here.all).clashes)
    here.on(DESK, clashSettled({ at: [...place], field, stands: stands === null ? null : both[stands]!.id }))
    expect(fold(UNIT, here.all).clashes).toEqual([])
    expect(holeOf(here.all).grip).toBe(grips)
  }
})

test('two who settle the same clash differently are a clash again', () => {
  const here = pan()
  const both = [here.on(PHONE, grip(31.9)), here.on(TABLET, grip(35))]
  here.meet()
  here.on(PHONE, clashSettled({ at: ['face', 'pan', 'hole', '1'], field: 'grip', stands: both[0]!.id }))
  here.on(TABLET, clashSettled({ at: ['face', 'pan', 'hole', '1'], field: 'grip', stands: both[1]!.id }))
  expect(first(fold(UNIT, here.all).clashes).entries.length).toBe(2)
})

test('two final torques for one bolt are a clash, and the bolt does not count as done', () => {
  const here = pan()
  here.on(PHONE, passTorqued({ ...at, pass: 1, final: true, torque: 10 }))
  here.on(TABLET, passTorqued({ ...at, pass: 1, final: true, torque: 12 }))
  expect(fold(UNIT, here.all).clashes.map(({ field }) => field)).toEqual(['step pass 1', 'step final'])
  expect(workOf(here.all).steps).toEqual({})
})

test('stages of one bolt on two devices do not stand against each other', () => {
  const here = pan()
  here.on(PHONE, handStarted(at))
  here.on(TABLET, runDown(at))
  expect(fold(UNIT, here.all).clashes).toEqual([])
  expect(Object.keys(workOf(here.all).steps)).toEqual(['hand-started', 'run-down'])
})

test('a bolt that is backed out loses its stages, and gains them anew', () => {
  const here = pan()
  here.on(PHONE, handStarted(at))
  here.on(PHONE, passTorqued({ ...at, pass: 1, final: false, torque: 5 }))
  here.on(PHONE, boltBackedOut(at))
  expect(workOf(here.all).steps).toEqual({})
  here.on(PHONE, handStarted(at))
  expect(Object.keys(workOf(here.all).steps)).toEqual(['hand-started'])
})

test('backed out on one device and tightened on another is a clash', () => {
  const here = pan()
  here.on(PHONE, passTorqued({ ...at, pass: 1, final: true, torque: 5 }))
  here.meet()
  here.on(PHONE, boltBackedOut(at))
  here.on(TABLET, passTorqued({ ...at, pass: 2, final: true, torque: 10 }))
  expect(
    fold(UNIT, here.all)
      .clashes.map(({ field }) => field)
      .sort(),
  ).toEqual(['step final', 'step pass 2'])
})

test('resistance stops until it is cleared', () => {
  const here = pan()
  here.on(PHONE, resistanceFelt({ ...at, feel: 'gritty' }))
  expect(workOf(here.all).resistance?.value).toBe('gritty')
  here.on(PHONE, resistanceCleared({ ...at, found: 'sealant' }))
  expect(workOf(here.all).resistance).toBeUndefined()
})

test('resistance felt on one device while another cleared it stays, as a clash', () => {
  const here = pan()
  here.on(PHONE, resistanceFelt({ ...at, feel: 'gritty' }))
  here.meet()
  here.on(PHONE, resistanceFelt({ ...at, feel: 'binds' }))
  here.on(TABLET, resistanceCleared({ ...at, found: 'sealant' }))
  expect(fold(UNIT, here.all).clashes.map(({ field }) => field)).toEqual(['resistance'])
})

test('an entry undone no longer counts, the one before it counts again, and undoing the undoing brings it back', () => {
  const here = pan()
  here.on(PHONE, grip(31.9))
  const slip = here.on(PHONE, grip(319))
  const undo = here.on(PHONE, undone({ event: slip.id, reason: 'typing slip' }))
  expect(holeOf(here.all).grip).toBe(31.9)
  expect(fold(UNIT, here.all).undone).toEqual([{ event: slip.id, by: undo.id }])
  expect(fold(UNIT, here.all).entries.length).toBe(7)
  here.on(PHONE, undone({ event: undo.id }))
  expect(holeOf(here.all).grip).toBe(319)
})

test('an undoing takes effect when what it undoes has come, and not before', () => {
  const here = pan()
  const slip = here.on(PHONE, grip(319))
  const undo = here.on(PHONE, undone({ event: slip.id }))
  const before = fold(UNIT, [...here.all.filter((event) => event !== slip)])
  expect(before.undone).toEqual([])
  expect(before.missing).toEqual([{ device: PHONE, from: 5, to: 5 }])
  expect(foldMore(before, [slip]).undone).toEqual([{ event: slip.id, by: undo.id }])
})

test('what a device could not know it cannot undo', () => {
  const here = pan()
  const reading = here.on(PHONE, grip(31.9))
  here.on(TABLET, undone({ event: reading.id }))
  expect(holeOf(here.all).grip).toBe(31.9)
})

test('undoing one side of a clash ends it', () => {
  const here = pan()
  here.on(PHONE, grip(31.9))
  const slip = here.on(TABLET, grip(35))
  here.on(TABLET, undone({ event: slip.id }))
  expect(fold(UNIT, here.all).clashes).toEqual([])
  expect(holeOf(here.all).grip).toBe(31.9)
})

test('a hole struck out is gone with what was said of it; struck out while another worked on it, it stays, as a clash', () => {
  const here = pan()
  here.on(PHONE, holeMarked({ face: 'pan', hole: '2', thread: 'M6' }))
  here.meet()
  here.on(PHONE, holeStruckOut({ face: 'pan', hole: '2' }))
  expect(fold(UNIT, here.all).unit.faces[0]!.holes.map(({ id }) => id)).toEqual(['1'])
  here.on(TABLET, handStarted({ face: 'pan', hole: '2' }))
  const folded = fold(UNIT, here.all)
  expect(folded.clashes.map(({ place, field }) => [place.at(-1), field])).toEqual([['2', 'there']])
  expect(folded.unit.faces[0]!.holes.map(({ id }) => id)).toEqual(['1', '2'])
})

test('a face struck out while another reads a hole of it stays, as a clash', () => {
  const here = pan()
  here.on(PHONE, faceStruckOut({ face: 'pan' }))
  here.on(TABLET, grip(30))
  expect(fold(UNIT, here.all).clashes.map(({ place, field }) => [place, field])).toEqual([[['face', 'pan'], 'there']])
})

test('a field can be made unknown again', () => {
  const here = pan()
  here.on(PHONE, holeDescribed({ ...at, unknown: ['bottomDepth'] }))
  expect(holeOf(here.all).bottomDepth).toBeUndefined()
})

test('threads that clash are all candidates', () => {
  const here = pan()
  here.on(PHONE, holeDescribed({ ...at, thread: 'M8' }))
  here.on(TABLET, holeDescribed({ ...at, thread: ['M6', 'M8'] }))
  expect(holeOf(here.all).thread).toEqual(['M8', 'M6'])
})

test('a bracket or none, which is 0, is an interval from 0', () => {
  const here = pan()
  here.on(PHONE, holeDescribed({ ...at, bracket: 2 }))
  here.on(TABLET, holeDescribed({ ...at, unknown: ['bracket'] }))
  expect(holeOf(here.all).bracket).toEqual({ atLeast: 0, atMost: 2 })
})

test('bolts written off on two devices add up, and whoever counts the tray anew has them in the count', () => {
  const here = pan()
  const kind = { face: 'pan', kind: 'b1' }
  const countOf = () => fold(UNIT, here.all).unit.faces[0]!.kinds![0]!.count
  here.on(PHONE, boltsWrittenOff({ ...kind, count: 1, reason: 'bent' }))
  expect(countOf()).toBeUndefined()
  here.on(PHONE, kindDescribed({ ...kind, count: 6 }))
  expect(countOf()).toBe(6)
  here.meet()
  here.on(PHONE, boltsWrittenOff({ ...kind, count: 1, reason: 'stretched' }))
  const lost = here.on(TABLET, boltsWrittenOff({ ...kind, count: 1, reason: 'lost' }))
  expect(countOf()).toBe(4)
  here.meet()
  here.on(DESK, undone({ event: lost.id }))
  expect(countOf()).toBe(5)
  here.on(DESK, boltsAdded({ ...kind, count: 3 }))
  expect(countOf()).toBe(8)
  here.on(DESK, kindDescribed({ ...kind, count: 7 }))
  expect(countOf()).toBe(7)
  expect(fold(UNIT, here.all).clashes).toEqual([])
})

test('a face that is opened again is no longer released', () => {
  const here = pan()
  here.on(PHONE, faceReleased({ face: 'pan' }))
  expect(fold(UNIT, here.all).faces.pan?.released?.value).toBe(true)
  here.on(PHONE, faceOpened({ face: 'pan', holes: ['1'] }))
  expect(fold(UNIT, here.all).faces.pan?.released).toBeUndefined()
})

test('a part is out until it is in, replaced or written off', () => {
  const here = pan()
  here.on(PHONE, partCameOut({ part: 'p1', what: 'spring', face: 'pan' }))
  expect(fold(UNIT, here.all).things.part.p1!.fate!.value).toBe('out')
  here.on(PHONE, partWentIn({ part: 'p1' }))
  expect(fold(UNIT, here.all).things.part.p1!.fate!.value).toBe('in')
})

test('what a unit file cannot hold is left out of it and told', () => {
  const here = pan()
  here.on(PHONE, boltFound({ ...at, kind: 'b9' }))
  here.on(PHONE, rankStated({ face: 'pan', quantity: 'grip', less: '1', more: '7' }))
  here.on(PHONE, faceDescribed({ face: 'rear' }))
  here.on(
    PHONE,
    faceDescribed({
      face: 'pan',
      order: [{ share: 1, sequence: ['1', '5'] }],
      cover: {
        outline: [
          [0, 0],
          [9, 0],
          [0, 9],
        ],
        thickness: 3,
        lines: [
          { name: 'valve', from: [1, 1], to: [3, 1] },
          { name: 'valve', from: [1, 1], to: [1, 3] },
        ],
      },
    }),
  )
  const { unit, leftOut } = unitFileOf(fold(UNIT, here.all))
  expect(unit?.faces.map(({ id, ranks, order }) => [id, ranks, order])).toEqual([['pan', [], undefined]])
  expect(unit?.faces[0]?.cover?.lines).toEqual([{ name: 'valve', from: [1, 1], to: [3, 1] }])
  expect(leftOut.map(({ face, code }) => [face, code])).toEqual([
    ['rear', 'no-holes'],
    ['pan', 'no-such-name'],
    ['pan', 'no-such-name'],
    ['pan', 'no-such-name'],
    ['pan', 'repeated-name'],
  ])
})

test('the engine answers for the folded unit', async () => {
  const here = pan()
  here.on(PHONE, grip(32))
  const { unit } = unitFileOf(fold(UNIT, here.all))
  const answer = await place(unit!)
  expect(answer.faces[0]!.holes['1']!.may).toEqual(['b1'])
})

test('entries of a newer Gripbook are kept and told, and hinder nothing', () => {
  const here = pan()
  here.on(PHONE, { type: 'gear-ground', version: 1, body: { teeth: 31 } })
  here.on(PHONE, { ...noteWritten({ text: 'x' }), version: 2 })
  here.on(PHONE, { type: 'note-written', version: 1, body: { text: 7 } })
  const folded = fold(UNIT, here.all)
  expect(folded.notUnderstood.map(({ type, why }) => [type, why])).toEqual([
    ['gear-ground', 'unknown-type'],
    ['note-written', 'newer-version'],
    ['note-written', 'malformed'],
  ])
  expect(folded.entries.length).toBe(7)
  expect(folded.unit.faces[0]!.holes.length).toBe(1)
})

test('a hole whose marking was undone but which was measured is told as one without a thread', () => {
  const here = pan()
  here.on(PHONE, grip(32))
  here.on(PHONE, undone({ event: here.all[2]!.id }))
  const folded = fold(UNIT, here.all)
  expect(folded.withoutThread).toEqual([['face', 'pan', 'hole', '1']])
  expect(unitFileOf(folded).unit).toBeNull()
})

test('a slow clock is told', () => {
  const here = pan()
  here.on(TABLET, noteWritten({ text: 'my clock stands' }), '2026-03-01T08:00:00.000Z')
  const { clocks } = fold(UNIT, here.all)
  expect(clocks.map(({ device }) => device)).toEqual([TABLET])
  expect(clocks[0]!.behind).toBeGreaterThan(3_600_000)
})

test('a release names the record that it was given for, tells what came since, and ends with a come-back', () => {
  const here = pan()
  const { heads } = fold(UNIT, here.all)
  const record = recordHash(here.all, sha256OfText)
  here.on(DESK, unitReleased({ heads, record }))
  const released = fold(UNIT, here.all)
  expect(released.work.released?.value).toEqual({ heads, record })
  expect(released.sinceRelease).toEqual([])
  here.meet()
  const late = here.on(PHONE, grip(12))
  expect(fold(UNIT, here.all).sinceRelease).toEqual([late.id])
  expect(recordHash(upTo(heads, [...here.all].reverse()), sha256OfText)).toBe(record)
  here.meet()
  here.on(PHONE, cameBack({ complaint: 'weeps' }))
  const back = fold(UNIT, here.all)
  expect([back.work.released, back.sinceRelease, back.work.cameBack?.value]).toEqual([undefined, [], 'weeps'])
})

test('ids that an object has by itself do no harm', () => {
  const here = bench()
  here.on(PHONE, holeMarked({ face: 'valueOf', hole: 'toString', thread: 'M6' }))
  here.on(PHONE, handStarted({ face: 'valueOf', hole: 'toString' }))
  const folded = fold(UNIT, here.all)
  expect(Object.entries(folded.faces).map(([id, { holes }]) => [id, Object.keys(holes)])).toEqual([
    ['valueOf', ['toString']],
  ])
  expect(unitFileOf(folded).unit?.faces.map(({ holes }) => holes.map(({ id }) => id))).toEqual([['toString']])
})
