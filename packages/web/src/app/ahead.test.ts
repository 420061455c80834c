import { entriesFromUnit, fold, holeMarked, knowledgeOf, readingTaken, sha256OfText } from '@gripbook/record'
import { expect, test } from 'vitest'
import { type Ahead, dropArrived, listenAhead, sayAhead, stillAhead, withAhead } from './ahead.ts'

const UNIT = '00000000-0000-4000-8000-0000000000c1'
const DEVICE = '00000000-0000-4000-8000-0000000000d1'
const entries = entriesFromUnit(
  { gripbook: 'unit/1', faces: [{ id: 'pan', holes: [{ id: '1', thread: 'M6', grip: 20 }] }] },
  knowledgeOf(UNIT, DEVICE, []),
  (index) => ({ id: `00000000-0000-4000-8000-00000000000${index}`, at: '2026-11-25T10:00:00.000Z', who: 'w' }),
  sha256OfText,
)
const folded = fold(UNIT, entries)
const reading = readingTaken({ of: { face: 'pan', hole: '1', quantity: 'grip' }, value: 31 })

test('what is on its way to the disk is in the unit that is shown, and not among its entries', () => {
  const shown = withAhead(folded, DEVICE, [{ who: 'w', happenings: [reading], kept: [] }])
  expect(shown.unit.faces[0]!.holes[0]!.grip).toBe(31)
  expect(shown.entries).toEqual(folded.entries)
  expect(shown.clashes).toEqual([])
  expect(withAhead(folded, DEVICE, [])).toBe(folded)
})

test('what was said later holds, also before anything is on the disk', () => {
  const mark = holeMarked({ face: 'pan', hole: '2', thread: 'M6' })
  const shown = withAhead(folded, DEVICE, [
    { who: 'w', happenings: [mark, reading], kept: [] },
    { who: 'w', happenings: [readingTaken({ of: { face: 'pan', hole: '1', quantity: 'grip' }, value: 32 })], kept: [] },
  ])
  expect(shown.unit.faces[0]!.holes.map(({ id, grip }) => [id, grip])).toEqual([
    ['1', 32],
    ['2', undefined],
  ])
})

test('a mark is shown only when it is on the disk: it has no other sign that it was kept', () => {
  let seen: readonly Ahead[] = []
  const stop = listenAhead(UNIT, (ahead) => {
    seen = ahead
  })
  sayAhead(UNIT, 'w', [holeMarked({ face: 'pan', hole: '2', thread: 'M6' })])
  expect(seen).toEqual([])
  stop()
})

test('it goes when the record has its entries, and at once when it could not be written', () => {
  let seen: readonly Ahead[] = []
  const stop = listenAhead(UNIT, (ahead) => {
    seen = ahead
  })
  const kept = sayAhead(UNIT, 'w', [reading])
  const failed = sayAhead(UNIT, 'w', [reading])
  expect(seen).toHaveLength(2)
  failed(null)
  expect(seen).toHaveLength(1)
  kept([{ ...entries[0]!, id: 'not there yet' }])
  expect(stillAhead(seen, folded)).toHaveLength(1)
  dropArrived(UNIT, folded)
  expect(seen).toHaveLength(1)
  dropArrived(UNIT, { ...folded, entries: [...folded.entries, { ...entries[0]!, id: 'not there yet' }] })
  expect(seen).toHaveLength(0)
  stop()
  // nobody looks: nothing is held
  sayAhead(UNIT, 'w', [reading])
  listenAhead(UNIT, (ahead) => {
    seen = ahead
  })()
  expect(seen).toHaveLength(0)
})
