import {
  boltPlaced,
  faceOpened,
  fold,
  type Happening,
  handStarted,
  noteWritten,
  runDown,
  undone,
  workPaused,
} from '@gripbook/record'
import { expect, test } from 'vitest'
import { lastTap, leftAt, otherAt } from './left.ts'
import { DEVICE, told } from './testing/told.ts'

const face = 'pan'
const OTHER = '0193a000-0000-4000-8000-0000000000d2'
const unit = (happenings: Happening[]) => {
  const { id, events } = told(happenings)
  return { folded: fold(id, events), events }
}

test('undo takes back the last thing that this device did on this face, and not a note', () => {
  const { folded, events } = unit([
    runDown({ face, hole: '1' }),
    runDown({ face: 'rear', hole: '1' }),
    noteWritten({ face, text: 'x' }),
  ])
  expect(lastTap(folded, face, DEVICE)).toEqual([events[0]])
})

test('what one tap wrote is taken back as one', () => {
  const { folded, events } = unit([
    runDown({ face, hole: '1' }),
    boltPlaced({ face, hole: '2', kind: 'a' }),
    handStarted({ face, hole: '2' }),
  ])
  const at = Date.parse(events[2]!.at)
  const close = folded.entries.map((event, i) => (i === 1 ? { ...event, at: new Date(at - 20).toISOString() } : event))
  expect(lastTap({ ...folded, entries: close }, face, DEVICE).map(({ type }) => type)).toEqual([
    'bolt-placed',
    'hand-started',
  ])
})

test('what was undone is passed over, and with nothing left there is nothing to undo', () => {
  const first = unit([runDown({ face, hole: '1' })])
  const { folded } = unit([runDown({ face, hole: '1' }), undone({ event: first.events[0]!.id })])
  expect(lastTap(folded, face, DEVICE)).toEqual([])
})

test('another device’s work is not undone from here', () => {
  const { folded } = unit([runDown({ face, hole: '1' })])
  expect(lastTap(folded, face, OTHER)).toEqual([])
})

test('a pause is told until somebody goes on', () => {
  const paused = [runDown({ face, hole: '1' }), workPaused({ face, hole: '2', step: 'Run down' })]
  expect(leftAt(unit(paused).folded, face)).toMatchObject({ hole: '2', step: 'Run down', who: 'ada' })
  expect(leftAt(unit([...paused, runDown({ face, hole: '2' })]).folded, face)).toBeNull()
  expect(leftAt(unit([]).folded, face)).toBeNull()
})

test('who else is at it: on another device, a moment ago', () => {
  const { folded, events } = unit([runDown({ face, hole: '1' })])
  const at = Date.parse(events[0]!.at)
  expect(otherAt(folded, face, OTHER, at + 60_000)).toBe('ada')
  expect(otherAt(folded, face, DEVICE, at + 60_000)).toBeNull()
  expect(otherAt(folded, face, OTHER, at + 600_000)).toBeNull()
})

test('two taps in a row that are quicker than any hand are still two', () => {
  const { folded } = unit([
    boltPlaced({ face, hole: '1', kind: 'a' }),
    handStarted({ face, hole: '1' }),
    boltPlaced({ face, hole: '2', kind: 'a' }),
    handStarted({ face, hole: '2' }),
  ])
  const entries = folded.entries.map((event) => ({ ...event, at: '2026-03-01T09:00:00.000Z' }))
  expect(lastTap({ ...folded, entries }, face, DEVICE).map(({ body }) => body.hole)).toEqual(['2', '2'])
})

test('a cover that came off by mistake is closed again by undo', () => {
  const { folded, events } = unit([runDown({ face, hole: '1' }), faceOpened({ face, holes: ['1'] })])
  expect(lastTap(folded, face, DEVICE)).toEqual([events[1]])
})
