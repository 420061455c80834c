import { readFileSync } from 'node:fs'
import type { FaceAnswer } from '@gripbook/engine'
import { place, type Unit } from '@gripbook/engine'
import type { FaceWork } from '@gripbook/record'
import { beforeAll, expect, test } from 'vitest'
import { countsOf, tasksOf } from './lead.ts'
import { marksOf, millimetresAt, nextHole, placesOf, toDoOf } from './marks.ts'

const unit = JSON.parse(readFileSync(new URL('../../../../demo/yard-loader.json', import.meta.url), 'utf8')) as Unit
const [block, , bell] = unit.faces as [Unit['faces'][0], Unit['faces'][0], Unit['faces'][0]]
let answers: FaceAnswer[]

beforeAll(async () => {
  answers = (await place(unit)).faces
})

test('what came out is shown without any answer', () => {
  const marks = marksOf(block, undefined, null, 'came out')
  expect(marks).toHaveLength(18)
  expect(marks.find(({ hole }) => hole === '4')).toMatchObject({
    shape: 'noted',
    under: ['c45'],
    badge: null,
    dim: false,
  })
})

test('what belongs: settled, open and swapped holes tell it by shape and sign', () => {
  const marks = new Map(marksOf(block, undefined, answers[0]!, 'belongs').map((mark) => [mark.hole, mark]))
  expect(marks.get('1')).toMatchObject({ shape: 'settled', under: ['c25'], badge: null })
  expect(marks.get('4')).toMatchObject({ shape: 'settled', under: ['c35'], badge: 'swap' })
  expect(marks.get('11')!.shape).toBe('open')
  expect(marks.get('11')!.under).toHaveLength(2)
})

test('what is to do: only holes that want something stand out', () => {
  const marks = marksOf(block, undefined, answers[0]!, 'to do')
  expect(marks.filter(({ dim }) => !dim).map(({ hole }) => hole)).toEqual(
    ['4', '9', '11'].sort((a, b) => Number(a) - Number(b)),
  )
  expect(toDoOf(answers[2]!).get('8')).toBe('check')
})

test('a bolt that was put where it belongs is no longer to be moved, and one that was put elsewhere is', () => {
  const put = (kinds: Record<string, string>): FaceWork => ({
    holes: Object.fromEntries(
      Object.entries(kinds).map(([hole, value]) => [
        hole,
        { steps: {}, placed: { value, event: '', who: '', at: '' } },
      ]),
    ),
  })
  const look = (work: FaceWork) => {
    const marks = new Map(marksOf(block, work, answers[0]!, 'belongs').map((mark) => [mark.hole, mark.badge]))
    const moves = tasksOf(answers[0]!, work).filter((task) => task.do === 'move').length
    return { moves, todo: [...toDoOf(answers[0]!, work).keys()], badges: [marks.get('4'), marks.get('9')] }
  }
  expect(look(put({}))).toEqual({ moves: 1, todo: ['4', '9', '11'], badges: ['swap', 'swap'] })
  expect(look(put({ '4': 'c35' }))).toEqual({ moves: 1, todo: ['9', '11'], badges: [null, 'swap'] })
  expect(look(put({ '4': 'c35', '9': 'c45' }))).toEqual({ moves: 0, todo: ['11'], badges: [null, null] })
  expect(look(put({ '4': 'c45', '9': 'c35' }))).toEqual({ moves: 1, todo: ['4', '9', '11'], badges: ['swap', 'swap'] })
})

test('contradictions lead the list of what to do, then moves, what is missing, and the next reading', () => {
  expect(tasksOf(answers[2]!).map((task) => task.do)[0]).toBe('doubt')
  const tasks = tasksOf(answers[0]!)
  expect(tasks.map((task) => task.do)).toEqual(['move', 'measure', 'lay aside'])
  expect(countsOf(answers[0]!)).toEqual({ settled: 16, open: 2, contradicted: 0, holes: 18 })
})

test('marks on a photograph are shares of its size; holes of a file are laid out by their millimetres', () => {
  const face = {
    holes: [
      { id: '1', thread: 'M6' },
      { id: '2', thread: 'M6' },
    ],
  }
  const at = (x: number, y: number) => ({
    steps: {},
    mark: { value: [x, y] as [number, number], event: '', who: '', at: '' },
  })
  const work = { holes: { '1': at(100, 50) } }
  const picture = { width: 400, height: 200, photograph: 'a' }
  // a hole that was not marked on the photograph is not on it
  expect([...placesOf(face, work, picture)]).toEqual([['1', [0.25, 0.25]]])
  const bare = placesOf(bell, undefined, { width: 1600, height: 1200 })
  expect(bare.size).toBe(12)
  for (const [x, y] of bare.values()) {
    expect(x).toBeGreaterThan(0)
    expect(x).toBeLessThan(1)
    expect(y).toBeGreaterThan(0)
    expect(y).toBeLessThan(1)
  }
})

test('a number of a hole is never given twice, even after it was struck out', () => {
  const marked = (hole: string, face = 'pan') => ({ type: 'hole-marked', body: { face, hole } })
  expect(nextHole([], 'pan')).toBe(1)
  expect(
    nextHole([marked('1'), marked('7'), { type: 'hole-struck-out', body: { face: 'pan', hole: '7' } }], 'pan'),
  ).toBe(8)
  expect(nextHole([marked('3')], 'pan', 5)).toBe(6)
  expect(nextHole([marked('3', 'cover'), marked('left'), marked('2')], 'pan')).toBe(3)
})

test('a place in millimetres counts upwards from the lower left corner of the photograph', () => {
  expect(millimetresAt([800, 200], 1200, 8)).toEqual([100, 125])
  const face = {
    holes: [
      { id: 'low', thread: 'M6', at: [0, 0] as [number, number] },
      { id: 'high', thread: 'M6', at: [0, 50] as [number, number] },
    ],
  }
  const places = placesOf(face, undefined, { width: 1600, height: 1200 })
  expect(places.get('high')![1]).toBeLessThan(places.get('low')![1])
})
