/** What the trials put beside the page, on its own origin: the record that the page itself keeps, and the sums that it asks for. */
import { openDevice } from '@gripbook/device'
import { place } from '@gripbook/engine'
import { type Event, fold, type Happening, sha256OfText, stateHash, unitFileOf } from '@gripbook/record'

const beside = {
  /** Writes what happened, with the photographs it speaks of, as someone at this device would have: happenings as JSON, bytes as base64. */
  async keep(unit: string, happenings: string, photographs: readonly string[] = []): Promise<void> {
    const device = await openDevice()
    for (const one of photographs) await device.photograph(Uint8Array.from(atob(one), (c) => c.charCodeAt(0)))
    const { own } = JSON.parse(localStorage.getItem('gripbook settings')!) as { own: { id: string } }
    await device.appendAll(unit, own.id, JSON.parse(happenings) as Happening[])
    await device.close()
  },

  /** The unit as this device folds it, by its hash. */
  async standing(unit: string): Promise<string> {
    const device = await openDevice()
    const events: Event[] = (await device.entriesOf(unit)).map(({ event }) => event)
    await device.close()
    return stateHash(fold(unit, events), sha256OfText)
  },

  /** What is done between an entry and its verdict, each part by itself `times` over, in ms on the page's own thread. */
  async parts(unit: string, happening: string, times: number) {
    const device = await openDevice()
    const who = crypto.randomUUID()
    const events: Event[] = (await device.entriesOf(unit)).map(({ event }) => event)
    const took = {
      write: [] as number[],
      read: [] as number[],
      fold: [] as number[],
      file: [] as number[],
      sums: [] as number[],
    }
    const aside = crypto.randomUUID()
    for (let i = 0; i < times; i++) {
      // Another unit's chain, so that the one that is looked at does not grow.
      took.write.push(await timed(() => device.appendAll(aside, who, [JSON.parse(happening) as Happening])))
      took.read.push(await timed(() => device.entriesOf(unit)))
      const copy = structuredClone(events)
      took.fold.push(await timed(() => fold(unit, copy)))
      const folded = fold(unit, copy)
      took.file.push(await timed(() => unitFileOf(folded)))
      const file = unitFileOf(folded).unit!
      took.sums.push(await timed(() => place(file)))
    }
    await device.close()
    return took
  },
}

async function timed(work: () => unknown): Promise<number> {
  const from = performance.now()
  await work()
  return performance.now() - from
}

export type Beside = typeof beside

declare global {
  interface Window {
    beside: Beside
  }
}

Object.assign(window, { beside })
