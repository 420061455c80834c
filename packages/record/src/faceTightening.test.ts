/** What a face states about its tightening, as entries: written, taken back, and written twice apart. */
import { expect, test } from 'vitest'
import { knowledgeOf, nextEntry } from './entry.ts'
import { clashSettled } from './events/clashSettled.ts'
import type { Happening } from './events/define.ts'
import type { Event } from './events/event.ts'
import { faceDescribed } from './events/faceDescribed.ts'
import { holeMarked } from './events/holeMarked.ts'
import { fold } from './fold.ts'
import { sha256OfText } from './sha256.ts'
import { DEVICES, UNIT, uuid } from './testing/bench.ts'
import { unitFileOf } from './toUnitFile.ts'
import { FULL } from './unitFile/testing/units.ts'

const [PHONE, TABLET, DESK] = DEVICES
const AT = '2026-03-01T09:00:00.000Z'

/** The next entry of a device that knows the entries given, put after them. */
function then(known: readonly Event[], device: string, happening: Happening, n: number): Event {
  const given = { id: uuid(n), at: AT, who: 'builder', ...happening }
  return nextEntry(knowledgeOf(UNIT, device, known), given, sha256OfText)
}

/** A face with two holes. */
const first = then([], PHONE, holeMarked({ face: 'pan', hole: '1', thread: 'M6' }), 1)
const START = [first, then([first], PHONE, holeMarked({ face: 'pan', hole: '2', thread: 'M6' }), 2)]
const { cover, bed, embedment, boltStiffness, snug, clamp, order } = FULL.faces[0]!

test.each(Object.entries({ cover, bed, embedment, boltStiffness, snug, clamp, order }))(
  '%s of a face is described by an entry and becomes unknown again by another',
  (field, value) => {
    const before = unitFileOf(fold(UNIT, START)).unit!
    const described = [...START, then(START, PHONE, faceDescribed({ face: 'pan', [field]: value }), 9)]
    expect(unitFileOf(fold(UNIT, described))).toEqual({
      unit: { ...before, faces: [{ ...before.faces[0], [field]: value }] },
      leftOut: [],
    })
    const forgotten = [...described, then(described, PHONE, faceDescribed({ face: 'pan', unknown: [field] }), 10)]
    expect(unitFileOf(fold(UNIT, forgotten)).unit).toEqual(before)
  },
)

test('of two covers entered apart neither holds, and the one that a person settles on does', () => {
  const thin = then(START, PHONE, faceDescribed({ face: 'pan', cover: { ...cover!, thickness: 3 } }), 9)
  const apart = [...START, thin, then(START, TABLET, faceDescribed({ face: 'pan', cover: cover! }), 10)]
  expect(fold(UNIT, apart).unit.faces[0]!.cover).toBeUndefined()
  expect(fold(UNIT, apart).clashes.map(({ field }) => field)).toEqual(['cover'])
  const settled = then(apart, DESK, clashSettled({ at: ['face', 'pan'], field: 'cover', stands: thin.id }), 11)
  expect(fold(UNIT, [...apart, settled]).unit.faces[0]!.cover?.thickness).toBe(3)
})
