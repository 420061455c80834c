/** Opens all that a server works with: the database, the photographs' place, the entrance. */
import { connect, type Database } from '../database/connect.ts'
import { makeEntrance } from '../entrance/makeEntrance.ts'
import { makePhotographs } from '../photographs/makePhotographs.ts'
import { placeFor } from '../photographs/placeFor.ts'
import { sqlStore } from '../store/sqlStore.ts'
import { newsOf } from './news.ts'
import type { Shop } from './shop.ts'

export type Opening = {
  env: Record<string, string | undefined>
  dataFolder: string
  secure: boolean
  authority?: Shop['authority']
  paper?: NonNullable<Shop['paper']>
  clock: Shop['clock']
  random: Shop['random']
  /** Is told what goes wrong where no request waits for it. */
  failed: (error: unknown) => void
}

export type OpenShop = { shop: Shop; database: Database; close(): Promise<void> }

/** Throws `DatabaseError` and what the place of the photographs throws, each with words. */
export async function openShop({
  env,
  dataFolder,
  secure,
  authority = null,
  paper,
  clock,
  random,
  failed,
}: Opening): Promise<OpenShop> {
  const database = await connect(env, dataFolder)
  const { db } = database
  const store = sqlStore(db)
  const news = newsOf(store, failed)
  const place = placeFor(env, dataFolder)
  const shop: Shop = {
    db,
    store,
    entrance: makeEntrance({ db, clock, random }),
    photographs: makePhotographs({ db, place, clock }),
    news,
    secure,
    authority,
    ...(paper === undefined ? {} : { paper }),
    clock,
    random,
  }
  return {
    shop,
    database,
    async close() {
      news.close()
      await database.close()
    },
  }
}
