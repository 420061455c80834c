import { randomUUID } from 'node:crypto'
import { fold, unitTakenIn } from '@gripbook/record'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { chainOf } from '../testing/chains.ts'
import { type SignedIn, type TestShop, testShop } from '../testing/testShop.ts'

let shop: TestShop
let builder: SignedIn
beforeAll(async () => {
  shop = await testShop()
  builder = await shop.signIn('builder')
})
afterAll(() => shop.close())

async function takenIn(name: string, by = builder) {
  const chain = chainOf(by)
  await by.ask('POST', '/api/entries', {
    entries: [chain.next(unitTakenIn({ name, complaint: 'slips when warm' })), ...chain.some(2)],
  })
  return chain
}

test('units are listed with the one worked on last first, page by page, each once', async () => {
  const chains = []
  for (const name of ['one', 'two', 'three', 'four', 'five']) chains.push(await takenIn(name))
  await builder.ask('POST', '/api/entries', { entries: chains[1]!.some(1) })
  const viewer = await shop.signIn('viewer')
  const names: string[] = []
  for (let after = '', more = true; more; ) {
    const page = (await viewer.ask('GET', `/api/units?limit=2${after}`)).json()
    names.push(...page.units.map((unit: { name: string; entries: number }) => `${unit.name} ${unit.entries}`))
    after = `&after=${page.units.at(-1)?.unit}`
    more = page.more
  }
  expect(names).toEqual(['two 4', 'five 3', 'four 3', 'three 3', 'one 3'])
})

test('a unit is what its entries make it, and again after more of them', async () => {
  const chain = await takenIn('gearbox 12')
  for (let round = 0; round < 3; round++) {
    const { entries: _, ...expected } = fold(chain.unit, await shop.store.ofUnit(chain.unit))
    const answer = await builder.ask('GET', `/api/units/${chain.unit}`)
    expect(answer.json()).toEqual(JSON.parse(JSON.stringify(expected)))
    await builder.ask('POST', '/api/entries', { entries: [chain.next(unitTakenIn({ name: `gearbox ${round}` }))] })
  }
  const unknown = await builder.ask('GET', `/api/units/${randomUUID()}`)
  expect([unknown.statusCode, unknown.json().code]).toEqual([404, 'not-found'])
})

test('a device is given what it lacks of a unit, and only that', async () => {
  const chain = await takenIn('gearbox 13')
  const other = await shop.signIn('checker')
  const theirs = chainOf(other, chain.unit).some(3)
  await other.ask('POST', '/api/entries', { entries: theirs })
  const url = `/api/units/${chain.unit}/missing`
  const answer = await builder.ask('POST', url, { have: { [builder.device]: 3 } })
  expect(answer.json()).toEqual({ entries: theirs, more: false })
  const piece = await builder.ask('POST', url, { have: {}, limit: 4 })
  expect([piece.json().entries.length, piece.json().more]).toEqual([4, true])
  const heads = (await builder.ask('GET', `/api/units/${chain.unit}/heads`)).json().heads
  expect(heads.map(({ device, seq }: { device: string; seq: number }) => [device, seq])).toEqual(
    [
      [builder.device, 3],
      [other.device, 3],
    ].sort(([a], [b]) => (String(a) < String(b) ? -1 : 1)),
  )
})

test('a unit by a name that is none is refused before anything is asked', async () => {
  for (const unit of ['1', `${randomUUID()}'`, '..%2f..%2fetc', randomUUID().toUpperCase(), '%00'])
    expect((await builder.ask('GET', `/api/units/${unit}/heads`)).statusCode, unit).toBe(400)
  for (const have of [{ x: 1 }, { [builder.device]: 0 }, { [builder.device]: 1.5 }, []])
    expect((await builder.ask('POST', `/api/units/${randomUUID()}/missing`, { have })).statusCode).toBe(400)
})
