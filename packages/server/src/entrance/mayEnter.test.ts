import { type Event, nextEntry } from '@gripbook/record'
import fc from 'fast-check'
import type { KyselyPlugin } from 'kysely'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { connect, type Database } from '../database/connect.ts'
import { temporaryFolder } from '../testing/folders.ts'
import { newDevice, type TestEntrance, testEntrance } from '../testing/testEntrance.ts'
import { ROLES, type Session } from './entrance.ts'
import { mayWrite, mustBeAllowed } from './mayEnter.ts'
import { hashed } from './secrets.ts'

let database: Database
let remove: () => Promise<void>
let shop: TestEntrance
beforeAll(async () => {
  const made = await temporaryFolder()
  remove = made.remove
  database = await connect({}, `${made.folder}/shop`)
  shop = await testEntrance(database.db)
})
afterAll(async () => {
  await database?.close()
  await remove?.()
})

const refusal = (code: string, index: number) => expect.objectContaining({ name: 'Refused', code, details: { index } })

function entry(device: string, who: string, type = 'note-written', body: Event['body'] = { text: 'x' }): Event {
  const knowledge = { unit: newDevice().id, device, seq: 0, last: null, tick: 0, seen: {} }
  const given = { id: newDevice().id, at: '2026-03-01T09:00:00.000Z', who, type, version: 1, body }
  return nextEntry(knowledge, given, hashed)
}

test('an entry is sent by the device that made it, for a person who was paired on it at some time', async () => {
  const tablet = newDevice()
  const left = await shop.enter('checker', tablet)
  await shop.entrance.changePerson(shop.owner.session, left.session.person.id, { left: true })
  const { session } = await shop.enter('builder', tablet)
  const elsewhere = await shop.enter('builder')
  const own = entry(tablet.id, session.person.id)
  const before = entry(tablet.id, left.session.person.id)
  await shop.entrance.mustBeAllowed(session, [own, before, own])
  const tryWith = (strange: Event) => shop.entrance.mustBeAllowed(session, [own, before, strange])
  for (const who of [elsewhere.session.person.id, newDevice().id, 'builder 1', "' or true --"])
    await expect(tryWith(entry(tablet.id, who)), who).rejects.toEqual(refusal('other-device', 2))
  const others = entry(elsewhere.asking.id, session.person.id)
  await expect(tryWith(others)).rejects.toEqual(refusal('other-device', 2))
})

test('what may be entered goes by the role of the person who made the entry, not of who sends it', async () => {
  const tablet = newDevice()
  const checker = await shop.enter('checker', tablet)
  const viewer = await shop.enter('viewer', tablet)
  const { session } = await shop.enter('builder', tablet)
  const release = (who: { session: { person: { id: string } } }) =>
    entry(tablet.id, who.session.person.id, 'face-released', { face: 'pan' })
  await shop.entrance.mustBeAllowed(session, [release(checker)])
  const own = shop.entrance.mustBeAllowed(session, [release(checker), release({ session })])
  await expect(own).rejects.toEqual(refusal('not-allowed', 1))
  const viewers = shop.entrance.mustBeAllowed(session, [entry(tablet.id, viewer.session.person.id)])
  await expect(viewers).rejects.toEqual(refusal('not-allowed', 0))
})

test('two thousand entries of many people are judged with one query, and none when all are one’s own', async () => {
  const tablet = newDevice()
  const people: Session[] = []
  for (let i = 0; i < 5; i++) people.push((await shop.enter('builder', tablet)).session)
  const session = people.at(-1)!
  let queries = 0
  const counting: KyselyPlugin = {
    transformQuery: ({ node }) => {
      queries++
      return node
    },
    transformResult: async ({ result }) => result,
  }
  const counted = database.db.withPlugin(counting)
  const batch = Array.from({ length: 2_000 }, (_, i) => ({
    ...entry(tablet.id, 'replaced'),
    who: people[i % 5]!.person.id,
  }))
  await mustBeAllowed(counted, session, batch)
  expect(queries).toBe(1)
  await mustBeAllowed(
    counted,
    session,
    batch.map((each) => ({ ...each, who: session.person.id })),
  )
  expect(queries).toBe(1)
})

test('a viewer enters nothing, a builder all but what vouches for a build, checker and owner everything', () => {
  const types = fc.oneof(fc.constantFrom('unit-released', 'face-released', 'step-signed', 'undone'), fc.string())
  const bodies = fc.constantFrom({}, { as: 'builder' }, { as: 'checker' })
  fc.assert(
    fc.property(types, bodies, (type, body: Event['body']) => {
      const may = ROLES.filter((role) => mayWrite(role, { type, body }))
      const vouches =
        ['unit-released', 'face-released'].includes(type) || (type === 'step-signed' && body.as === 'checker')
      expect(may).toEqual(vouches ? ['owner', 'checker'] : ['owner', 'builder', 'checker'])
    }),
    { seed: 20_260_302 },
  )
})
