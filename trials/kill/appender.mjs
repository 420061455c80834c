/**
 * The Gripbook that is killed: opens the database it is told of and does what the trial asks, through the store, as the server does. It runs
 * what `tsc -b` has built, as a shop does, so that it is quickly there again.
 * Arguments: `embedded` and a data folder, or `server` and an address.
 */
import { createHash } from 'node:crypto'
import { connect, sqlStore } from '@gripbook/server'

const [kind, where = ''] = process.argv.slice(2)

/** @param {import('./talk.ts').Answer} answer */
const say = (answer) => process.send?.(answer)

// Whoever ordered the work is gone, so nobody is left to answer.
process.on('disconnect', () => process.exit(0))

const database = await connect(kind === 'server' ? { GRIPBOOK_DATABASE_URL: where } : {}, where)
const store = sqlStore(database.db)

/**
 * @param {import('./talk.ts').Order} order
 * @returns {Promise<import('./talk.ts').Answer>}
 */
async function serve(order) {
  switch (order.what) {
    case 'append': {
      const answer = await store.append(order.events)
      if (!answer.ok) throw new Error(`refused: ${JSON.stringify(answer.refusals[0])}`)
      return { to: order.no }
    }
    case 'since':
      return { to: order.no, page: await store.since(order.position, order.limit) }
    case 'digest': {
      const rows = await database.db.selectFrom('record_entry').select(['id', 'hash']).orderBy('position').execute()
      const digest = createHash('sha256').update(rows.map(({ hash }) => hash).join(''))
      return { to: order.no, digest: digest.digest('hex'), count: new Set(rows.map(({ id }) => id)).size }
    }
    case 'heads':
      return { to: order.no, heads: await store.heads(order.unit) }
    case 'close':
      await database.close()
      return { to: order.no }
  }
}

process.on('message', (order) => {
  serve(order).then(say, (error) => say({ to: order.no, failed: error.message }))
})
say({ to: 0 })
