/** What was written before the pairing, and who must not come by it. */
import { randomUUID } from 'node:crypto'
import { type Happening, nextEntry, noteWritten } from '@gripbook/record'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { connect, type Database } from '../database/connect.ts'
import { sqlStore } from '../store/sqlStore.ts'
import { temporaryFolder } from '../testing/folders.ts'
import { newDevice, type TestEntrance, testEntrance } from '../testing/testEntrance.ts'
import type { Asking, ForWhom, Session } from './entrance.ts'
import { hashed } from './secrets.ts'

let database: Database
let remove: () => Promise<void>
let shop: TestEntrance
beforeAll(async () => {
  const made = await temporaryFolder()
  remove = made.remove
  database = await connect({}, `${made.folder}/shop`)
})
afterAll(async () => {
  await database?.close()
  await remove?.()
})
beforeEach(async () => {
  shop = await testEntrance(database.db)
})

const RELEASE: Happening = { type: 'face-released', version: 1, body: { face: 'pan' } } as Happening
const JO: ForWhom = { name: 'Jo', role: 'builder' }

async function pairWith(whom: ForWhom, device: Asking, before: readonly string[]): Promise<Session> {
  const { code } = await shop.entrance.makeCode(shop.owner.session, whom)
  return (await shop.entrance.pair(code, device, { before })).session
}

function note(device: string, who: string, happening: Happening = noteWritten({ text: 'written without a shop' })) {
  const knowledge = { unit: randomUUID(), device, seq: 0, last: null, tick: 0, seen: {} }
  return nextEntry(knowledge, { id: randomUUID(), at: '2026-03-01T09:00:00.000Z', who, ...happening }, hashed)
}

/** Whether the session may send an entry of its device under this id: yes, or the code of the refusal. */
function maySend(session: Session, who: string, happening?: Happening): Promise<string> {
  return shop.entrance.mustBeAllowed(session, [note(session.device.id, who, happening)]).then(
    () => 'yes',
    (refused) => refused.code,
  )
}

test('who is new goes on under the id that the device has written with; further ids stand for the person', async () => {
  const [first, second, third] = [newDevice().id, newDevice().id, newDevice().id]
  const session = await pairWith(JO, newDevice(), [first, second, first, third])
  expect(session.person).toMatchObject({ id: first, name: 'Jo', role: 'builder', left: null })
  for (const who of [first, second, third]) expect(await maySend(session, who)).toBe('yes')
  const people = (await shop.entrance.people()).filter(({ id }) => [first, second, third].includes(id))
  expect(people.map(({ name, left }) => `${name}: ${left === null ? 'here' : 'left'}`).sort()).toEqual([
    'Jo (before pairing): left',
    'Jo (before pairing): left',
    'Jo: here',
  ])
})

test('so does the owner of a shop that is new', async () => {
  await database.db.deleteFrom('entrance_person').execute()
  const before = [randomUUID()]
  const code = (await shop.entrance.ownerCode())!
  const { session } = await shop.entrance.pair(code, newDevice(), { name: 'Owner', before })
  expect(session.person).toMatchObject({ id: before[0], role: 'owner' })
  expect(await maySend(session, before[0]!, RELEASE)).toBe('yes')
})

test('for who is there already the id stands, writes as a builder, and nobody can be signed in as it', async () => {
  const { session: there } = await shop.enter('checker')
  const before = randomUUID()
  const session = await pairWith({ person: there.person.id }, newDevice(), [before])
  expect(session.person.id).toBe(there.person.id)
  expect(await maySend(session, before)).toBe('yes')
  expect(await maySend(session, before, RELEASE)).toBe('not-allowed')
  expect((await shop.entrance.people()).find(({ id }) => id === before)).toMatchObject({
    name: 'A checker (before pairing)',
    role: 'builder',
  })
  await expect(shop.entrance.makeCode(shop.owner.session, { person: before })).rejects.toMatchObject({
    code: 'not-found',
  })
  expect((await shop.entrance.sessions(null)).map(({ person }) => person.id)).not.toContain(before)
})

test('a device that names another person’s id, or one from before another’s pairing, does not come by it', async () => {
  const before = [randomUUID(), randomUUID()]
  const own = await pairWith(JO, newDevice(), before)
  const names = JSON.stringify(await shop.entrance.people())
  const named = [shop.owner.session.person.id, ...before]
  for (const whom of [{ name: 'Eve', role: 'checker' }, { person: own.person.id }] as ForWhom[]) {
    const session = await pairWith(whom, newDevice(), named)
    for (const who of named.filter((id) => id !== session.person.id))
      expect(await maySend(session, who)).toBe('other-device')
  }
  const eve = (await shop.entrance.people()).filter(({ name }) => name.startsWith('Eve'))
  expect([eve.length, named.includes(eve[0]!.id)]).toEqual([1, false])
  const kept = (await shop.entrance.people()).filter(({ name }) => !name.startsWith('Eve'))
  expect(JSON.stringify(kept), 'the others are who they were').toBe(names)
  for (const who of before) expect(await maySend(own, who)).toBe('yes')
})

test('an id under which another device has written is nobody’s to take, though no person has it here', async () => {
  const [strangers, own] = [randomUUID(), randomUUID()]
  const device = newDevice()
  await sqlStore(database.db).append([note(randomUUID(), strangers), note(device.id, own)])
  const session = await pairWith(JO, device, [strangers, own])
  expect(session.person.id).toBe(own)
  expect(await maySend(session, strangers)).toBe('other-device')
})

test('a viewer comes by none, and loses none: paired as a builder the same device names them again', async () => {
  const [device, before] = [newDevice(), randomUUID()]
  const viewer = await pairWith({ name: 'Jo', role: 'viewer' }, device, [before])
  expect(viewer.person.id).not.toBe(before)
  expect(await maySend(viewer, before)).toBe('other-device')
  const further = await pairWith({ person: viewer.person.id }, device, [before])
  expect(await maySend(further, before)).toBe('other-device')
  await shop.entrance.changePerson(shop.owner.session, viewer.person.id, { role: 'builder' })
  const builder = await pairWith({ person: viewer.person.id }, device, [before])
  expect(await maySend(builder, before)).toBe('yes')
})

test('whoever becomes a viewer does not go on writing under an id from before', async () => {
  const [own, before] = [randomUUID(), randomUUID()]
  const session = await pairWith(JO, newDevice(), [own, before])
  await shop.entrance.changePerson(shop.owner.session, own, { role: 'viewer' })
  expect(await maySend({ ...session, person: { ...session.person, role: 'viewer' } }, before)).toBe('not-allowed')
})

test('paired once more with the same ids nothing changes; a long name is cut to make room', async () => {
  const [device, before] = [newDevice(), [randomUUID(), randomUUID()]]
  const { person } = await pairWith({ name: '🔩'.repeat(80), role: 'builder' }, device, before)
  const people = await shop.entrance.people()
  expect([...people.find(({ id }) => id === before[1])!.name].length).toBe(80)
  const again = await pairWith({ person: person.id }, device, before)
  expect(await shop.entrance.people()).toEqual(people)
  for (const who of before) expect(await maySend(again, who)).toBe('yes')
})

test('two devices that name one id at the same moment: one of them comes by it', async () => {
  const before = [randomUUID()]
  const codes = [
    await shop.entrance.makeCode(shop.owner.session, JO),
    await shop.entrance.makeCode(shop.owner.session, JO),
  ]
  const entrances = [shop.entrance, shop.another()]
  const paired = await Promise.all(codes.map(({ code }, i) => entrances[i]!.pair(code, newDevice(), { before })))
  const may = await Promise.all(paired.map(({ session }) => maySend(session, before[0]!)))
  expect(may.sort()).toEqual(['other-device', 'yes'])
})
