import { randomBytes } from 'node:crypto'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { connect, type Database } from '../database/connect.ts'
import { temporaryFolder } from '../testing/folders.ts'
import { newDevice, type TestEntrance, testEntrance } from '../testing/testEntrance.ts'
import { hashed } from './secrets.ts'

const MINUTE = 60_000
const HOUR = 60 * MINUTE
const DAY = 24 * HOUR

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

const refused = (code: string) => expect.objectContaining({ name: 'Refused', code })
const outcomes = async (tries: Promise<unknown>[]) =>
  (await Promise.allSettled(tries)).map((each) => (each.status === 'fulfilled' ? 'done' : each.reason.code)).sort()
const codeFor = (role: 'builder' | 'owner' = 'builder') =>
  shop.entrance.makeCode(shop.owner.session, { name: 'Someone', role })

/** The shop as it is before its first owner. */
async function withoutOwner(): Promise<void> {
  await database.db.deleteFrom('entrance_person').execute()
  await database.db.deleteFrom('entrance_session').execute()
}

describe('the owner code', () => {
  test('each start makes a new owner code and voids the one before; there is none once there is an owner', async () => {
    expect(await shop.entrance.ownerCode()).toBeNull()
    await withoutOwner()
    const first = await shop.entrance.ownerCode()
    const second = await shop.another().ownerCode()
    await expect(shop.entrance.pair(first!, newDevice(), { name: 'A' })).rejects.toEqual(refused('code-not-valid'))
    shop.pass(400 * DAY)
    const { session } = await shop.entrance.pair(second!, newDevice(), { name: 'A' })
    expect(session.person).toMatchObject({ name: 'A', role: 'owner', left: null })
    expect(await shop.entrance.ownerCode()).toBeNull()
  })

  test('an owner who has lost every device is let in by whoever starts the server, until the next start', async () => {
    const lost = (await shop.entrance.ownerCode({ another: true }))!
    expect(await shop.entrance.ownerCode()).toBeNull()
    await expect(shop.entrance.pair(lost, newDevice(), { name: 'A' })).rejects.toEqual(refused('code-not-valid'))
    const code = (await shop.entrance.ownerCode({ another: true }))!
    const { session } = await shop.entrance.pair(code, newDevice(), { name: 'Again' })
    expect(session.person).toMatchObject({ name: 'Again', role: 'owner' })
  })

  test('several processes that start at once leave one owner code that works, and it makes one owner', async () => {
    await withoutOwner()
    const processes = Array.from({ length: 4 }, () => shop.another())
    const codes = await Promise.all(processes.map((each) => each.ownerCode()))
    const tries = codes.map((code, i) => processes[i]!.pair(code!, newDevice(), { name: `Owner ${i}` }))
    expect(await outcomes(tries)).toEqual(['code-not-valid', 'code-not-valid', 'code-not-valid', 'done'])
  })

  test('the owner has to say a name, and the code is still there after forgetting it', async () => {
    await withoutOwner()
    const code = (await shop.entrance.ownerCode())!
    await expect(shop.entrance.pair(code, newDevice())).rejects.toEqual(refused('wrong-request'))
    await shop.entrance.pair(code, newDevice(), { name: 'A' })
  })
})

describe('codes', () => {
  test('a code is used once, also by two devices at the same moment on two processes', async () => {
    const { code } = await codeFor()
    const entrances = [shop.entrance, shop.another(), shop.another()]
    expect(await outcomes(entrances.map((each) => each.pair(code, newDevice())))).toEqual([
      'code-not-valid',
      'code-not-valid',
      'done',
    ])
    expect((await shop.entrance.people()).length).toBe(2)
  })

  test('a code lives ten minutes', async () => {
    const { code, expires } = await codeFor()
    expect(expires).toBe('2026-03-02T08:10:00.000Z')
    shop.pass(10 * MINUTE - 1)
    await shop.entrance.pair(code, newDevice())
    const late = await codeFor()
    shop.pass(10 * MINUTE)
    await expect(shop.entrance.pair(late.code, newDevice())).rejects.toEqual(refused('code-not-valid'))
  })

  test('after a hundred wrong tries within ten minutes open codes are void, but not the owner code', async () => {
    const [early, late] = [await codeFor(), await codeFor()]
    const wrong = async (tries: number) => {
      for (let i = 0; i < tries; i++)
        await expect(shop.entrance.pair('0000-0000-0000', newDevice())).rejects.toEqual(refused('code-not-valid'))
    }
    await wrong(99)
    await shop.entrance.pair(early.code, newDevice())
    await wrong(1)
    await expect(shop.entrance.pair(late.code, newDevice())).rejects.toEqual(refused('code-not-valid'))
    await withoutOwner()
    const owners = (await shop.entrance.ownerCode())!
    await wrong(101)
    await shop.entrance.pair(owners, newDevice(), { name: 'A' })
  })

  test('neither a code, nor a token, nor a secret of a device can be read from the database', async () => {
    const { code } = await codeFor()
    const rows = JSON.stringify([
      await database.db.selectFrom('entrance_code').selectAll().execute(),
      await database.db.selectFrom('entrance_session').selectAll().execute(),
      await database.db.selectFrom('entrance_device').selectAll().execute(),
    ])
    for (const secret of [code, code.replaceAll('-', ''), shop.owner.token, shop.owner.asking.secret])
      expect([rows.includes(secret), secret.length > 10]).toEqual([false, true])
    for (const kept of [code, shop.owner.token, shop.owner.asking.secret]) expect(rows).toContain(hashed(kept))
  })

  test('a code is made by an owner alone, also when the session is from before a change elsewhere', async () => {
    const { session } = await shop.enter('builder')
    await expect(shop.entrance.makeCode(session, { name: 'X', role: 'owner' })).rejects.toEqual(refused('not-allowed'))
    const second = await shop.enter('owner')
    await shop.another().changePerson(shop.owner.session, second.session.person.id, { role: 'viewer' })
    const late = shop.entrance.makeCode(second.session, { name: 'X', role: 'owner' })
    await expect(late).rejects.toEqual(refused('not-allowed'))
  })

  test('the open codes of an owner who goes go too, and those for a person who leaves', async () => {
    const second = await shop.enter('owner')
    const back = await shop.entrance.makeCode(second.session, { name: 'Back again', role: 'owner' })
    const further = await shop.entrance.makeCode(shop.owner.session, { person: second.session.person.id })
    await shop.entrance.changePerson(shop.owner.session, second.session.person.id, { left: true })
    for (const { code } of [back, further])
      await expect(shop.entrance.pair(code, newDevice())).rejects.toEqual(refused('code-not-valid'))
    const gone = shop.entrance.makeCode(shop.owner.session, { person: second.session.person.id })
    await expect(gone).rejects.toEqual(refused('not-found'))
  })
})

describe('devices', () => {
  test('a device that is known is paired again with the secret that it made first, and with no other', async () => {
    const { asking } = await shop.enter('builder')
    const { code } = await codeFor()
    const forged = { ...asking, secret: 'f'.repeat(64) }
    await expect(shop.entrance.pair(code, forged)).rejects.toEqual(refused('wrong-secret'))
    const { session } = await shop.entrance.pair(code, { ...asking, name: 'New name' })
    expect(session.device).toEqual({ id: asking.id, name: 'New name' })
  })

  test('two who claim the same new device at once: it belongs to one of them', async () => {
    const codes = [await codeFor(), await codeFor()]
    const { id } = newDevice()
    const tries = codes.map(({ code }, i) => shop.another().pair(code, { id, name: 'x', secret: `${i}`.repeat(64) }))
    expect(await outcomes(tries)).toEqual(['done', 'wrong-secret'])
  })

  test('a person may have several devices, and a further code brings the same person', async () => {
    const { session } = await shop.enter('checker')
    const { code } = await shop.entrance.makeCode(shop.owner.session, { person: session.person.id })
    const second = await shop.entrance.pair(code, newDevice('Phone'))
    expect(second.session.person).toEqual(session.person)
    expect((await shop.entrance.sessions(session.person.id)).length).toBe(2)
  })
})

describe('sessions', () => {
  test('the token changes at each pairing, and the session before it on the device has ended', async () => {
    const first = await shop.enter('builder')
    const second = await shop.enter('viewer', first.asking)
    expect(second.token).not.toBe(first.token)
    expect(await shop.entrance.sessionOf(first.token)).toBeNull()
    expect(await shop.entrance.sessionOf(second.token)).toEqual(second.session)
  })

  test('a session ends thirty days after it was used last, and in any case after a hundred and eighty', async () => {
    const { token } = await shop.enter('builder')
    shop.pass(30 * DAY - 1)
    expect(await shop.entrance.sessionOf(token)).not.toBeNull()
    for (let day = 30; day < 180; day += 10) {
      expect(await shop.entrance.sessionOf(token), `day ${day}`).not.toBeNull()
      shop.pass(10 * DAY)
    }
    expect(await shop.entrance.sessionOf(token)).not.toBeNull()
    shop.pass(1)
    expect(await shop.entrance.sessionOf(token)).toBeNull()
    const idle = await shop.enter('builder')
    shop.pass(30 * DAY)
    expect(await shop.entrance.sessionOf(idle.token)).toBeNull()
  })

  test('the last use is written once an hour at most', async () => {
    const { token, session } = await shop.enter('builder')
    const written = async () =>
      (await database.db.selectFrom('entrance_session').selectAll().where('id', '=', session.id).execute())[0]!
        .last_used - Date.parse(session.since)
    for (let i = 0; i < 59; i++) {
      shop.pass(MINUTE)
      await shop.entrance.sessionOf(token)
    }
    expect(await written()).toBe(0)
    shop.pass(MINUTE)
    await Promise.all([shop.entrance.sessionOf(token), shop.another().sessionOf(token)])
    expect(await written()).toBe(HOUR)
  })

  test('an ended session stops counting at once where it was ended, and within five seconds in every process', async () => {
    const elsewhere = shop.another()
    const { token, session } = await shop.enter('builder')
    expect([await shop.entrance.sessionOf(token), await elsewhere.sessionOf(token)]).toEqual([session, session])
    await shop.entrance.endSession(session.id, null)
    expect(await shop.entrance.sessionOf(token)).toBeNull()
    shop.pass(5_000)
    expect(await elsewhere.sessionOf(token)).toBeNull()
  })

  test('a session that is read while it ends is not kept: the next request finds it ended', async () => {
    for (let i = 0; i < 10; i++) {
      const { token, session } = await shop.enter('viewer')
      await Promise.all([
        ...Array.from({ length: 5 }, () => shop.entrance.sessionOf(token)),
        shop.entrance.endSession(session.id, null),
        ...Array.from({ length: 5 }, () => shop.entrance.sessionOf(token)),
      ])
      expect(await shop.entrance.sessionOf(token)).toBeNull()
    }
  })

  test('a session is ended by the person it belongs to, and nobody learns of one that is not theirs', async () => {
    const { session } = await shop.enter('builder')
    const { session: other } = await shop.enter('builder')
    await expect(shop.entrance.endSession(session.id, other.person.id)).rejects.toEqual(refused('not-found'))
    await shop.entrance.endSession(session.id, session.person.id)
    await expect(shop.entrance.endSession(session.id, session.person.id)).rejects.toEqual(refused('not-found'))
  })

  test('what is no token finds no session', async () => {
    const forged = [
      randomBytes(32).toString('base64url'),
      '',
      "' or true --",
      shop.owner.token.slice(1),
      'x'.repeat(9_999),
    ]
    for (const token of forged) expect(await shop.entrance.sessionOf(token)).toBeNull()
  })
})

describe('people', () => {
  test('a change of role acts on the very next request, and leaving ends every session', async () => {
    const { token, session } = await shop.enter('builder')
    const change = (change: object) => shop.entrance.changePerson(shop.owner.session, session.person.id, change)
    await change({ role: 'checker' })
    expect((await shop.entrance.sessionOf(token))?.person.role).toBe('checker')
    expect((await change({ left: true })).left).toBe('2026-03-02T08:00:00.000Z')
    expect(await shop.entrance.sessionOf(token)).toBeNull()
    await change({ left: false })
    expect(await shop.entrance.sessionOf(token)).toBeNull()
    const { code } = await shop.entrance.makeCode(shop.owner.session, { person: session.person.id })
    await shop.entrance.pair(code, newDevice())
  })

  test('the last owner can neither leave nor take another role, but may be called otherwise', async () => {
    const { session } = shop.owner
    for (const change of [{ left: true }, { role: 'builder' as const }, { role: 'viewer' as const, left: true }])
      await expect(shop.entrance.changePerson(session, session.person.id, change)).rejects.toEqual(
        refused('last-owner'),
      )
    expect((await shop.entrance.changePerson(session, session.person.id, { name: 'Chief' })).name).toBe('Chief')
    expect((await shop.entrance.sessionOf(shop.owner.token))?.person).toMatchObject({ name: 'Chief', role: 'owner' })
  })

  test('two owners who leave at the same moment, each on a process of its own: one of them stays', async () => {
    for (let i = 0; i < 8; i++) {
      shop = await testEntrance(database.db)
      const second = await shop.enter('owner')
      const tries = [shop.owner, second].map(({ session }) =>
        shop.another().changePerson(session, session.person.id, i % 2 === 0 ? { left: true } : { role: 'viewer' }),
      )
      expect(await outcomes(tries)).toEqual(['done', 'last-owner'])
    }
  })

  test('who is no owner changes nobody, and nobody is changed who is not there', async () => {
    const { session } = await shop.enter('checker')
    const promotion = shop.entrance.changePerson(session, session.person.id, { role: 'owner' })
    await expect(promotion).rejects.toEqual(refused('not-allowed'))
    const nobody = shop.entrance.changePerson(shop.owner.session, newDevice().id, { name: 'X' })
    await expect(nobody).rejects.toEqual(refused('not-found'))
  })
})
