import type { EntryHere } from '@gripbook/device'
import {
  type Event,
  fold,
  type Happening,
  holeMarked,
  knowledgeOf,
  learn,
  nextEntry,
  noteWritten,
  sha256OfText,
  undone,
} from '@gripbook/record'
import { expect, test } from 'vitest'
import { byDay, ofFace, stateOf, storyOf } from './story.ts'

const uuid = (n: number) => `00000000-0000-4000-8000-${String(n).padStart(12, '0')}`
const UNIT = uuid(1)

/** Entries one after the other on one device, an hour apart. */
function entries(...happenings: Happening[]) {
  let known = knowledgeOf(UNIT, uuid(2), [])
  return happenings.map((happening, index) => {
    const at = new Date(Date.UTC(2026, 2, 1, 20 + index)).toISOString()
    const event = nextEntry(known, { id: uuid(index + 10), at, who: 'w', ...happening }, sha256OfText)
    known = learn(known, event)
    return event
  })
}

const told = (events: Event[]) => storyOf(events, fold(UNIT, events).undone)

test('the newest entry stands first, and an undone one names what undid it', () => {
  const story = told(entries(noteWritten({ text: 'a' }), noteWritten({ text: 'b' }), undone({ event: uuid(10) })))
  expect(story.map(({ event }) => event.id)).toEqual([uuid(12), uuid(11), uuid(10)])
  expect(story[2]!.undoneBy?.id).toBe(uuid(12))
  expect(story[0]!.about).toMatchObject({ does: 'took back', event: { id: uuid(10) } })
})

test('undoing an undoing is told as bringing back the first entry', () => {
  const story = told(entries(noteWritten({ text: 'a' }), undone({ event: uuid(10) }), undone({ event: uuid(11) })))
  expect(story[0]!.about).toMatchObject({ does: 'brought back', event: { id: uuid(10) } })
  expect(story[1]!.undoneBy?.id).toBe(uuid(12))
  expect(story[2]!.undoneBy).toBeNull()
})

test('an undoing of an entry that has not come yet is told all the same', () => {
  expect(told(entries(undone({ event: uuid(99) })))[0]!.about).toBeNull()
})

test('the filter keeps what is about a face, and what takes such an entry back', () => {
  const story = told(
    entries(
      holeMarked({ face: 'pan', hole: '1', thread: 'M6' }),
      holeMarked({ face: 'pump', hole: '1', thread: 'M6' }),
      undone({ event: uuid(10) }),
    ),
  )
  expect(ofFace(story, 'pan').map(({ event }) => event.id)).toEqual([uuid(12), uuid(10)])
})

test('entries of one day stand under one day', () => {
  const story = told(entries(...Array.from({ length: 6 }, (_, index) => noteWritten({ text: `${index}` }))))
  const days = byDay(story, (at) => Math.floor(Date.parse(at) / 86_400_000))
  expect(days.map(({ told: each }) => each.length)).toEqual([2, 4])
})

test('ten thousand entries are a story of as many', () => {
  const [first] = entries(noteWritten({ text: 'a' }))
  const many = Array.from({ length: 10_000 }, (_, index) => ({ ...first!, id: uuid(index + 1_000), seq: index + 1 }))
  expect(storyOf(many, [])).toHaveLength(10_000)
})

test('what is not sent from a device is here, not waiting', () => {
  const here = (state: EntryHere['state']): EntryHere => ({ event: entries(noteWritten({ text: 'a' }))[0]!, state })
  expect(stateOf(here('waiting'), false)).toBe('here')
  expect(stateOf(here('waiting'), true)).toBe('waiting')
  expect(stateOf(here('refused'), true)).toBe('refused')
  expect(stateOf(here('sent'), false)).toBe('sent')
  expect(stateOf(here('received'), true)).toBe('other')
})
