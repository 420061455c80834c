import { readFileSync } from 'node:fs'
import { type FaceAnswer, type Move, place, type Statement, type Unit } from '@gripbook/engine'
import { beforeAll, expect, test } from 'vitest'
import { namesOf } from '../face/kindNames.ts'
import { tasksOf } from '../face/lead.ts'
import { words } from '../words/index.ts'
import { handsOf, sayNothingToDo, sayTask } from './sayTask.ts'

const unit = JSON.parse(readFileSync(new URL('../../../../demo/yard-loader.json', import.meta.url), 'utf8')) as Unit
let answers: FaceAnswer[]
beforeAll(async () => {
  answers = (await place(unit)).faces
})

const around = (face: number) => {
  const kinds = unit.faces[face]!.kinds!
  const { long } = namesOf(kinds)
  return { answer: answers[face]!, kinds, named: (kind: string) => long.get(kind) ?? kind }
}
const said = (face: number) => tasksOf(answers[face]!).map((task) => sayTask(task, around(face)))

test('the demo’s faces say what is hidden in them, contradictions first', () => {
  expect(said(0)).toEqual(['Swap 4 and 9', 'Measure hole 11 (grip) to settle 11 and 12', 'Left over: 1 of M6×25'])
  expect(said(1)).toEqual(['Put M8×35 in 6', expect.stringMatching(/^Left over: 1 of M8×25/)])
  expect(said(2)[0]).toMatch(/^Nothing in the tray fits hole 8\. Check the grip of hole 8 first\.$/)
  expect(said(2)[1]).toBe('Taken as read, hole 8 wants M8×30, you have none')
})

test('two hands take everything out before they put anything in', () => {
  const swap = answers[0]!.changes.cycles[0]!
  expect(handsOf(swap, around(0).named)).toEqual([
    'Take M6×45 out of 4',
    'Take M6×35 out of 9',
    'M6×35 from 9 into 4',
    'M6×45 from 4 into 9',
  ])
})

test('rings, chains and empty holes are told in words', () => {
  const say = (round: Move[]) => sayTask({ do: 'move', round }, around(0))
  expect(
    say([
      { hole: '1', from: 'a', to: 'b' },
      { hole: '2', from: 'b', to: 'c' },
      { hole: '3', from: 'c', to: 'a' },
    ]),
  ).toMatch(/^Move round /)
  expect(say([{ hole: '5', from: 'a', to: 'none' }])).toBe('Take the bolt out of 5')
})

test('where there is nothing to do it says so', () => {
  const hole = { may: ['a'], likely: {}, best: 'a', why: '' }
  const calm = (holes: FaceAnswer['holes']) => sayNothingToDo({ ...answers[0]!, holes })
  expect(calm({ '1': { ...hole, verdict: 'open' } })).toBe('Nothing must change. One hole is open still')
  expect(calm({ '1': { ...hole, verdict: 'settled', asFound: { kind: 'a', verdict: 'right', why: '' } } })).toBe(
    'Every bolt sat where it belongs',
  )
  expect(calm({ '1': { ...hole, verdict: 'settled' } })).toBe('Every hole has its bolt')
})

test('what is to be doubted of bolts is told by what they are called, not by a number that nobody has seen', () => {
  const { kinds, named } = around(0)
  const [first, second] = kinds
  const check = (statement: Statement) => words.verdict.check(statement, named)
  for (const said of [
    check({ what: 'count', of: first!.id }),
    check({ what: 'reading', quantity: 'length', of: first!.id, place: 'kind' }),
    check({ what: 'trial', hole: '3', kind: first!.id }),
    check({ what: 'rank', quantity: 'length', less: first!.id, more: second!.id }),
  ]) {
    expect(said).toContain(named(first!.id))
    expect(said).not.toMatch(new RegExp(`\\b${first!.id}\\b`))
  }
  expect(check({ what: 'reading', quantity: 'grip', of: '4', place: 'hole' })).toBe('Check the grip of hole 4')
  expect(check({ what: 'rank', quantity: 'grip', less: '1', more: '4' })).toBe(
    'Compare the grip of holes 1 and 4 again',
  )
})
