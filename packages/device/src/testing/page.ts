/** A page that is nothing but the record on a device, for trials in a real browser. */
import { type Happening, happeningsOf, noteWritten, photographed, sha256OfText, stateHash } from '@gripbook/record'
import { type Device, DeviceFault, type Given, openDevice } from '../index.ts'

/** What the trials call: `window.trial`. */
const trial = {
  device: null as Device | null,
  /** What `open` was given last, and what `append` has been acknowledged. */
  statuses: [] as unknown[],

  /** `ahead`: ms by which the device's clock is wrong. */
  async open({ ahead = 0, patience, ...given }: Given & { ahead?: number } = {}): Promise<string> {
    trial.device = await openDevice({
      clock: () => Date.now() + ahead,
      patience: { firstPause: 50, longestPause: 400, answer: 3_000, poll: 200, ...patience },
      ...given,
    })
    return trial.device.id
  },

  async note(unit: string, text: string, who = 'builder-1'): Promise<string> {
    const { id } = await trial.device!.append(unit, who, noteWritten({ text }))
    return id
  },

  /** Happenings for one call. */
  many(count: number): Happening[] {
    return Array.from({ length: count }, (_, i) => noteWritten({ text: `note ${i}` }))
  },

  async notes(unit: string, from: number, count: number): Promise<void> {
    await Promise.all(Array.from({ length: count }, (_, i) => trial.note(unit, `note ${from + i}`)))
  },

  /** A photograph of so many bytes, and the entry that speaks of it. */
  async picture(unit: string, bytes: number, seed = 1): Promise<string> {
    const { photograph } = await trial.device!.photograph(filled(bytes, seed))
    await trial.device!.append(unit, 'builder-1', photographed({ photograph, width: 40, height: 30 }))
    return photograph
  },

  async fault(work: () => Promise<unknown>): Promise<{ code: string; facts: unknown } | null> {
    try {
      await work()
      return null
    } catch (error) {
      if (error instanceof DeviceFault) return { code: error.code, facts: error.facts }
      throw error
    }
  },

  async stateHash(unit: string): Promise<string> {
    return stateHash(await trial.device!.unitOf(unit), sha256OfText)
  },

  openDevice,
  happeningsOf,
  noteWritten,
  filled,
}

export type Trial = typeof trial

function filled(bytes: number, seed: number): Uint8Array<ArrayBuffer> {
  const made = new Uint8Array(bytes)
  let state = seed
  for (let i = 0; i < bytes; i++) {
    state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0
    made[i] = state >>> 24
  }
  return made
}

Object.assign(window, { trial })
