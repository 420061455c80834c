import { judgeBatch, readBatch } from './batch.ts'
import type { Hash } from './chain.ts'
import type { Event } from './events/event.ts'
import { inOrder } from './inOrder.ts'
import type { Head, Store } from './store.ts'

/** A store in memory: for the tests, for a page without storage, and for reading an archive. What it is given it copies, what it returns may be changed. */
export function memoryStore(hash: Hash): Store {
  const log: Event[] = []
  const byId = new Map<string, Event>()
  const chains = new Map<string, Map<string, Event[]>>()

  const chainOf = (unit: string, device: string): Event[] | undefined => chains.get(unit)?.get(device)
  const headOf = (chain: readonly Event[] | undefined): Head | undefined => {
    const last = chain?.at(-1)
    return last && { device: last.device, seq: last.seq, hash: last.hash }
  }
  const kept = {
    hashOf: (id: string) => byId.get(id)?.hash,
    idOf: (unit: string, device: string, seq: number) => chainOf(unit, device)?.[seq - 1]?.id,
    head: (unit: string, device: string) => headOf(chainOf(unit, device)),
  }

  function keep({ text }: { text: string }): void {
    const own = JSON.parse(text) as Event
    log.push(own)
    byId.set(own.id, own)
    const unit = chains.get(own.unit) ?? new Map<string, Event[]>()
    chains.set(own.unit, unit)
    const chain = unit.get(own.device) ?? []
    unit.set(own.device, chain)
    chain.push(own)
  }

  return {
    async append(batch) {
      const judged = judgeBatch(readBatch(batch, hash), kept)
      if (!judged.ok) return judged
      judged.fresh.forEach(keep)
      return { ok: true, added: judged.fresh.length, known: judged.known }
    },
    async since(position, limit) {
      const from = position === null ? 0 : Number(position)
      const to = Math.min(from + limit, log.length)
      return {
        events: log.slice(from, to).map(copy),
        position: to === from ? position : String(to),
        more: to < log.length,
      }
    },
    async end() {
      return log.length === 0 ? null : String(log.length)
    },
    async ofUnit(unit) {
      return [...(chains.get(unit)?.values() ?? [])].flat().sort(inOrder).map(copy)
    },
    async beyond(unit, have, limit) {
      const lacking = log.filter((event) => event.unit === unit && event.seq > (have[event.device] ?? 0))
      return { events: lacking.slice(0, limit).map(copy), more: lacking.length > limit }
    },
    async heads(unit) {
      return [...(chains.get(unit)?.values() ?? [])]
        .flatMap((chain) => headOf(chain) ?? [])
        .sort((a, b) => (a.device < b.device ? -1 : 1))
    },
    async units() {
      return [...chains.keys()].sort()
    },
  }
}

function copy(event: Event): Event {
  return JSON.parse(JSON.stringify(event)) as Event
}
