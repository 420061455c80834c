import { expect, test } from 'vitest'
import { type Loop, startLoop } from './loop.ts'
import type { Refusing } from './sender.ts'

const LATER = { ok: false, why: 'later', status: 503, after: 0 } as const
const SIGNED_OUT = { ok: false, why: 'refused', status: 401, code: 'not-signed-in', facts: {} } as const

/** A loop whose rounds come to what `answers` says, one after the other, then to nothing. */
function looping(answers: (Refusing | null | Error)[], pauses = { firstPause: 5, longestPause: 5, idle: 10_000 }) {
  const ends: (string | null)[] = []
  const stands: (string | null)[] = []
  let looks = 0
  const patience = { answer: 1, turn: 1, silence: 1, poll: 1, ...pauses }
  const loop: Loop = startLoop({
    place: { patience, random: () => Uint8Array.of(255) },
    turn: (work) => work(),
    ending: new AbortController(),
    sender: {
      async round() {
        const answer = answers.shift() ?? null
        if (answer instanceof Error) throw answer
        return answer
      },
      lookAgain: () => looks++,
    },
    ended(last, error) {
      ends.push(error instanceof Error ? error.message : (last?.why ?? null))
      stands.push(last?.why ?? null)
    },
  })
  const rounds = async (count: number) => {
    for (let tries = 0; ends.length < count && tries < 400; tries++) await new Promise((done) => setTimeout(done, 5))
    return ends
  }
  return { loop, rounds, stands, looks: () => looks }
}

test('a failure is tried again by itself, also one of the database, and then the shop is looked at anew', async () => {
  const { loop, rounds, looks, stands } = looping([LATER, new Error('the database'), null])
  expect(await rounds(3)).toEqual(['later', 'the database', null])
  await loop.stop()
  // Nor is the shop said to have answered what it answered the round before.
  expect(stands).toEqual(['later', null, null])
  expect(looks()).toBe(2)
})

test('a new entry ends a pause, but not one that the shop has asked for', async () => {
  const long = { firstPause: 60_000, longestPause: 60_000, idle: 60_000 }
  const free = looping([LATER], long)
  await free.rounds(1)
  free.loop.wake('new-entry')
  expect(await free.rounds(2)).toEqual(['later', null])
  await free.loop.stop()
  const asked = looping([{ ...LATER, after: 60_000 }], long)
  await asked.rounds(1)
  asked.loop.wake('new-entry')
  await new Promise((done) => setTimeout(done, 30))
  expect(await asked.rounds(1)).toEqual(['later'])
  await asked.loop.stop()
})

test('without a session only pairing, or the network coming back, makes another round', async () => {
  const long = { firstPause: 60_000, longestPause: 60_000, idle: 60_000 }
  const { loop, rounds } = looping([SIGNED_OUT, SIGNED_OUT], long)
  await rounds(1)
  loop.wake('new-entry')
  await new Promise((done) => setTimeout(done, 30))
  expect(await rounds(1)).toEqual(['refused'])
  loop.wake('network-back')
  await rounds(2)
  loop.wake('session')
  expect(await rounds(3)).toEqual(['refused', 'refused', null])
  await loop.stop()
})

test('a shop that was asked too often is not asked from the beginning again', async () => {
  const { loop, rounds, looks } = looping([{ ...LATER, status: 429 }, null])
  await rounds(2)
  expect(looks()).toBe(0)
  loop.wake('seen')
  await rounds(3)
  expect(looks()).toBe(0)
  await loop.stop()
})

test('with nothing to send the shop is looked at now and then', async () => {
  const { loop, rounds, looks } = looping([], { firstPause: 5, longestPause: 5, idle: 10 })
  await rounds(3)
  await loop.stop()
  expect(looks()).toBeGreaterThanOrEqual(2)
})
