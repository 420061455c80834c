import { expect, test } from 'vitest'
import type { Move } from './answer.ts'
import { cyclesOf } from './changes.ts'

const move = (hole: string, from: string, to: string): Move => ({ hole, from, to })
const holes = (moves: Move[]) => cyclesOf(moves).map((round) => round.map(({ hole }) => hole))

test('nothing to change makes no round', () => {
  expect(cyclesOf([])).toEqual([])
})

test('two holes that hold each other’s bolt swap', () => {
  const moves = [move('1', 'a', 'b'), move('2', 'b', 'a')]
  expect(cyclesOf(moves)).toEqual([moves])
})

test('the moves given are left as they are', () => {
  const moves = [move('1', 'a', 'b'), move('2', 'b', 'a')]
  cyclesOf(moves)
  expect(moves).toHaveLength(2)
})

test('three bolts go round, each into the hole whose bolt goes on', () => {
  expect(cyclesOf([move('1', 'a', 'b'), move('2', 'c', 'a'), move('3', 'b', 'c')])).toEqual([
    [move('1', 'a', 'b'), move('3', 'b', 'c'), move('2', 'c', 'a')],
  ])
})

test('a swap of two is told before a ring of three, though the ring was met first', () => {
  const moves = [
    move('1', 'a', 'b'),
    move('2', 'b', 'c'),
    move('3', 'c', 'a'),
    move('4', 'c', 'd'),
    move('5', 'd', 'c'),
  ]
  expect(holes(moves)).toEqual([
    ['4', '5'],
    ['1', '2', '3'],
  ])
})

test('of a ring of three with a short way back, the two that swap go first and the rest is a chain', () => {
  // 1 and 2 swap a and b; 3 wants the a that nobody gives up any more, and gives up a c.
  expect(holes([move('3', 'c', 'a'), move('1', 'a', 'b'), move('2', 'b', 'a')])).toEqual([['1', '2'], ['3']])
})

test('several swaps of the same two kinds are several rounds', () => {
  expect(holes([move('1', 'a', 'b'), move('2', 'a', 'b'), move('3', 'b', 'a'), move('4', 'b', 'a')])).toEqual([
    ['1', '3'],
    ['2', '4'],
  ])
})

test('a ring of four with no kind met twice is one round', () => {
  expect(holes([move('1', 'a', 'b'), move('2', 'b', 'c'), move('3', 'c', 'd'), move('4', 'd', 'a')])).toEqual([
    ['1', '2', '3', '4'],
  ])
})

test('two rings of two that meet in a kind stay two rounds', () => {
  expect(holes([move('1', 'a', 'b'), move('2', 'b', 'c'), move('3', 'c', 'b'), move('4', 'b', 'a')])).toEqual([
    ['1', '4'],
    ['2', '3'],
  ])
})

test('a bolt from the tray starts a chain, and the last bolt goes back to the tray', () => {
  // The tray's c goes into 3, whose b goes into 2, whose a is left over.
  expect(holes([move('2', 'a', 'b'), move('3', 'b', 'c')])).toEqual([['3', '2']])
  expect(holes([move('3', 'b', 'c'), move('2', 'a', 'b')])).toEqual([['3', '2']])
})

test('a chain of three is told from the tray on, whatever order the moves came in', () => {
  const [first, second, third] = [move('1', 'a', 'x'), move('2', 'b', 'a'), move('3', 'c', 'b')]
  for (const moves of [
    [first, second, third],
    [third, second, first],
    [second, third, first],
    [second, first, third],
  ])
    expect(holes(moves)).toEqual([['1', '2', '3']])
})

test('an empty hole ends a chain: nothing comes out of it', () => {
  expect(holes([move('1', 'none', 'a'), move('2', 'a', 'b')])).toEqual([['2', '1']])
})

test('a hole that stays empty gives its bolt up and takes none', () => {
  expect(holes([move('1', 'a', 'none'), move('2', 'b', 'a')])).toEqual([['1', '2']])
})

test('one hole emptied and another filled are no swap through "none"', () => {
  expect(holes([move('1', 'a', 'none'), move('2', 'none', 'a')])).toEqual([['1', '2']])
  expect(holes([move('2', 'none', 'a'), move('1', 'a', 'none')])).toEqual([['1', '2']])
  expect(holes([move('1', 'none', 'a'), move('2', 'b', 'none')])).toEqual([['1'], ['2']])
  expect(holes([move('1', 'none', 'a'), move('2', 'b', 'none'), move('3', 'a', 'b')])).toEqual([['2', '3', '1']])
})

test('a hole to fill from the tray and a hole to empty are chains of one each', () => {
  expect(cyclesOf([move('1', 'none', 'a')])).toEqual([[move('1', 'none', 'a')]])
  expect(cyclesOf([move('1', 'a', 'none')])).toEqual([[move('1', 'a', 'none')]])
})

test('a chain beside a swap is told after it', () => {
  expect(holes([move('1', 'a', 'x'), move('2', 'c', 'd'), move('3', 'd', 'c')])).toEqual([['2', '3'], ['1']])
})

test('a ring is found though a dead end with the same kind stands before it', () => {
  // From 1 the way to 2 leads nowhere; the way to 3 leads back by 4.
  expect(holes([move('1', 'a', 'b'), move('2', 'b', 'x'), move('3', 'b', 'c'), move('4', 'c', 'a')])).toEqual([
    ['1', '3', '4'],
    ['2'],
  ])
})
