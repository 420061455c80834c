/**
 * Tells listeners when the record has grown, whichever process has kept what. One small query every so often for all listeners of this process: no
 * notification of the database's own is needed, so any engine that speaks PostgreSQL's language will do.
 */
import type { Page, Position, Store } from '@gripbook/record'

export type News = {
  /** The page after a position; listeners at the same place share one query. */
  after(position: Position | null): Promise<Page>
  /** Resolves when there may be something new, or when nobody listens to the server any more. */
  next(): Promise<void>
  /** Something was kept by this process: no need to wait for the next look. */
  look(): void
  close(): void
}

const LOOK_EVERY = 400
const PAGE = 500

export function newsOf(store: Store, failed: (error: unknown) => void): News {
  let waiting: (() => void)[] = []
  let pages = new Map<Position | null, Promise<Page>>()
  let seen: Position | null | undefined
  let timer: NodeJS.Timeout | undefined
  let closed = false

  async function lookNow(): Promise<void> {
    try {
      const end = await store.end()
      if (end !== seen) tell()
      seen = end
    } catch (error) {
      // The database is away for a moment: what came meanwhile is seen at the next look.
      failed(error)
    }
    timer = waiting.length > 0 && !closed ? setTimeout(lookNow, LOOK_EVERY) : undefined
  }

  function tell(): void {
    pages = new Map()
    const told = waiting
    waiting = []
    for (const done of told) done()
  }

  return {
    after(position) {
      const known = pages.get(position)
      if (known !== undefined) return known
      const page = store.since(position, PAGE)
      pages.set(position, page)
      page.catch(() => pages.delete(position))
      return page
    },
    next: () =>
      new Promise((done) => {
        if (closed) return done()
        waiting.push(done)
        timer ??= setTimeout(lookNow, LOOK_EVERY)
      }),
    look: tell,
    close() {
      closed = true
      clearTimeout(timer)
      tell()
    },
  }
}
