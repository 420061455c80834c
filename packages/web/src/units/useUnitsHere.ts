import type { Device, Status } from '@gripbook/device'
import type { FoldedUnit } from '@gripbook/record'
import { useEffect, useState } from 'preact/hooks'
import { lineOf, type UnitLine } from './unitLines.ts'

export type Here = {
  lines: readonly Omit<UnitLine, 'waits'>[]
  /** Units with entries of this device that the shop has not taken yet. */
  waiting: ReadonlySet<string>
  /** All that were there at the beginning have been read. */
  read: boolean
}

/**
 * The units on this device, kept up to date. They are read one after the other, so that the page stays quick while many are read; each is
 * shown when it is read.
 */
export function useUnitsHere(device: Device, status: Status | null): Here {
  const [lines, setLines] = useState<ReadonlyMap<string, Omit<UnitLine, 'waits'>>>(new Map())
  const [written, setWritten] = useState<ReadonlySet<string>>(new Set())
  const [read, setRead] = useState(false)
  const [waiting, setWaiting] = useState<ReadonlySet<string>>(new Set())

  useEffect(() => {
    const watched = new Map<string, () => void>()
    let left = false
    let looking = false
    let again = false
    const show = (folded: FoldedUnit) => {
      setLines((before) => new Map(before).set(folded.id, lineOf(folded)))
      if (folded.heads[device.id] !== undefined)
        setWritten((before) => (before.has(folded.id) ? before : new Set(before).add(folded.id)))
    }
    /** Resolves when the unit was read for the first time. */
    const watchOne = (unit: string) =>
      new Promise<void>((done) => {
        const stop = device.watch(unit, (folded) => {
          show(folded)
          done()
        })
        watched.set(unit, stop)
        // One that cannot be read does not keep the others waiting.
        setTimeout(done, 5_000)
      })
    async function look() {
      again = true
      if (looking) return
      looking = true
      while (again && !left) {
        again = false
        for (const unit of await device.units().catch(() => [])) {
          if (left) break
          if (!watched.has(unit)) await watchOne(unit)
        }
      }
      looking = false
      if (!left) setRead(true)
    }
    void look()
    const stopStatus = device.watchStatus(() => void look())
    return () => {
      left = true
      stopStatus()
      for (const stop of watched.values()) stop()
    }
  }, [device])

  const unsent = status === null ? 0 : status.waiting.entries + status.refused.entries
  useEffect(() => {
    let left = false
    // A device that is not paired has sent nothing of anything: its chip says so once.
    if (unsent === 0 || status?.signedIn === 'no') {
      setWaiting((before) => (before.size === 0 ? before : new Set()))
      return
    }
    const timer = setTimeout(async () => {
      const found = new Set<string>()
      for (const unit of written) {
        const entries = await device.entriesOf(unit).catch(() => [])
        if (left) return
        if (entries.some(({ state }) => state === 'waiting' || state === 'refused')) found.add(unit)
      }
      setWaiting(found)
    }, 300)
    return () => {
      left = true
      clearTimeout(timer)
    }
  }, [device, written, unsent, status?.signedIn])

  return { lines: [...lines.values()], waiting, read }
}
