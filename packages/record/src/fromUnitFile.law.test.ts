import type { Unit } from '@gripbook/engine'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { chainFaults } from './chain.ts'
import { knowledgeOf } from './entry.ts'
import { type Event, readEvent } from './events/event.ts'
import { fold } from './fold.ts'
import { entriesFromUnit } from './fromUnitFile.ts'
import { sha256OfText } from './sha256.ts'
import { DEVICES, shuffled, UNIT, uuid } from './testing/bench.ts'
import { unitFileOf } from './toUnitFile.ts'
import { readUnitFile } from './unitFile/read.ts'
import { mutated } from './unitFile/testing/mutate.ts'
import { seeded } from './unitFile/testing/random.ts'
import { EXAMPLE, FULL } from './unitFile/testing/units.ts'
import { writeUnitFile } from './unitFile/write.ts'

const AT = '2026-03-01T09:00:00.000Z'

function imported(unit: Unit): Event[] {
  const stamp = (index: number) => ({ id: uuid(index + 1), at: AT, who: 'desk' })
  return entriesFromUnit(unit, knowledgeOf(UNIT, DEVICES[0], []), stamp, sha256OfText)
}

/** An empty list of ranks, trials, parts or jobs says nothing and is not kept. */
function withoutEmptyLines({ parts, jobs, ...unit }: Unit): Unit {
  return {
    ...unit,
    ...(parts?.length ? { parts } : {}),
    ...(jobs?.length ? { jobs } : {}),
    faces: unit.faces.map(({ ranks, trials, ...face }) => ({
      ...face,
      ...(ranks?.length ? { ranks } : {}),
      ...(trials?.length ? { trials } : {}),
    })),
  }
}

const again = (events: readonly Event[]) => unitFileOf(fold(UNIT, events))

test('a unit file with every field comes in as entries and goes out as the same file', () => {
  const { unit, leftOut } = again(imported(FULL))
  expect(leftOut).toEqual([])
  expect(writeUnitFile(unit!)).toBe(writeUnitFile(FULL))
})

test('[RE7] any readable unit file comes in as entries and goes out as the same file, whatever the order in which they came', () => {
  let readable = 0
  fc.assert(
    fc.property(fc.integer(), fc.constantFrom(EXAMPLE, JSON.stringify(FULL)), (seed, file) => {
      const random = seeded(seed)
      const read = readUnitFile(mutated(file, random))
      if (!read.ok) return
      readable++
      const events = shuffled(random, imported(read.value))
      expect(fold(UNIT, events).notUnderstood).toEqual([])
      const { unit, leftOut } = again(events)
      expect(leftOut).toEqual([])
      expect(writeUnitFile(unit!)).toBe(writeUnitFile(withoutEmptyLines(read.value)))
    }),
    { seed: 21, numRuns: 1_500 },
  )
  expect(readable).toBeGreaterThan(50)
})

test('what comes in makes whole entries in a whole chain', () => {
  const events = imported(FULL)
  for (const event of events)
    expect(readEvent(JSON.parse(JSON.stringify(event)))).toMatchObject({ ok: true, value: event })
  expect(chainFaults(events, sha256OfText)).toEqual([])
})

test('−0 in a file comes in as 0, which canonical JSON cannot tell from it', () => {
  const unit = readUnitFile(
    '{"gripbook":"unit/1","faces":[{"id":"pan","holes":[{"id":"1","thread":"M6","at":[-0,1]}]}]}',
  )
  expect(unit.ok && again(imported(unit.value)).unit?.faces[0]?.holes[0]?.at).toEqual([0, 1])
})
