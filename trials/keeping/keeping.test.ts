/** Histories with every kind of entry, of devices that met late, lost, doubled and contradicted each other, through a backup and through an archive. */
import { writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { buffer } from 'node:stream/consumers'
import { type Event, fold, recordHash, stateHash } from '@gripbook/record'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { history, UNIT } from '../../packages/record/src/testing/bench.ts'
import { takeInArchive, unitFiles } from '../../packages/server/src/archives/unitArchive.ts'
import { zipOf } from '../../packages/server/src/archives/zipOut.ts'
import { backUp } from '../../packages/server/src/backup/backup.ts'
import { checkRecord } from '../../packages/server/src/backup/check.ts'
import { restore } from '../../packages/server/src/backup/restore.ts'
import { sha256 } from '../../packages/server/src/sha256.ts'
import { fill } from '../../packages/server/src/testing/fullShop.ts'
import { type TestShop, testShop } from '../../packages/server/src/testing/testShop.ts'

const VERSION = '1.0.0'

let here: TestShop
let made: Event[]
beforeAll(async () => {
  here = await testShop()
  await fill(here, 2, 20)
  made = history(5, 300).made
  const answer = await here.store.append(made)
  if (!answer.ok) throw new Error(JSON.stringify(answer.refusals))
})
afterAll(() => here.close())

async function statesOf({ store }: TestShop): Promise<Record<string, string[]>> {
  const states: Record<string, string[]> = {}
  for (const unit of await store.units()) {
    const events = await store.ofUnit(unit)
    states[unit] = [recordHash(events, sha256), stateHash(fold(unit, events), sha256)]
  }
  return states
}

test('the history has contradictions, undoings and several devices', () => {
  const folded = fold(UNIT, made)
  expect(folded.clashes.length).toBeGreaterThan(0)
  expect(made.some(({ type }) => type === 'undone')).toBe(true)
  expect(Object.keys(folded.heads).length).toBe(3)
})

test('through a backup every unit stays what it was', async () => {
  const there = await testShop({}, { paired: false })
  const file = join(here.folder, 'shop.backup')
  await backUp(here.shop, file, VERSION)
  await restore(there.shop, file, VERSION)
  expect(await statesOf(there)).toEqual(await statesOf(here))
  expect((await checkRecord(there.shop)).faults).toEqual([])
  const again = join(here.folder, 'again.backup')
  await backUp(there.shop, again, VERSION)
  const once = await testShop({}, { paired: false })
  await restore(once.shop, again, VERSION)
  expect(await statesOf(once)).toEqual(await statesOf(here))
  await there.close()
  await once.close()
})

test('through an archive a unit stays what it was, also where half of it was known', async () => {
  const there = await testShop()
  const half = made.slice(0, made.length / 2)
  await there.store.append(half)
  const path = join(here.folder, 'unit.zip')
  await writeFile(path, await buffer(zipOf((await unitFiles(here.shop, UNIT, '2026-03-02T10:00:00.000Z'))!)))
  expect(await takeInArchive(there.shop, path)).toMatchObject({ added: made.length - half.length, known: half.length })
  expect((await statesOf(there))[UNIT]).toEqual((await statesOf(here))[UNIT])
  const { faults, strangers } = await checkRecord(there.shop)
  expect(faults).toEqual([])
  expect(strangers.length, 'three devices of another shop').toBe(3)
  await there.close()
})
