/** All that a server works with, handed to `buildApp`, so that the same app runs on an embedded database, a server's, and in tests. */
import type { Kysely } from 'kysely'
import type { Authority } from '../certificates/shopCertificates.ts'
import type { Tables } from '../database/tables.ts'
import type { Entrance } from '../entrance/entrance.ts'
import type { Photographs } from '../photographs/photographs.ts'
import type { PaperMaker } from '../records/paper.ts'
import type { SqlStore } from '../store/sqlStore.ts'
import type { News } from './news.ts'

export type Shop = {
  db: Kysely<Tables>
  store: SqlStore
  entrance: Entrance
  photographs: Photographs
  news: News
  /** Whether devices reach this server by HTTPS. */
  secure: boolean
  /** Where other devices reach this server ("https://shop.local:7480"), without a slash at the end; known once it listens, left out where it serves this machine alone. */
  address?: string
  /** The shop's own certificate authority, which devices come to trust; null or left out where there is none, or none is needed. */
  authority?: Authority | null
  /** Makes build records; left out where nothing is printed. */
  paper?: PaperMaker
  /** Milliseconds since 1970. */
  clock: () => number
  /** So many random bytes, fit for secrets. */
  random: (bytes: number) => Buffer
}
