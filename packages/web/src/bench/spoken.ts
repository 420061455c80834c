/** What is said aloud of a step. */
import type { Kind } from '@gripbook/engine'
import { intervalOf, readThread } from '@gripbook/engine'
import { words } from '../words/bench.ts'
import type { BenchStep } from './round.ts'

export type Saying = { kind: string | null; turns: string | null; torque: { figure: string; unit: string } | null }

/** One short sentence: hole, kind, torque. */
export function sayStep({ round, hole }: BenchStep, { kind, turns, torque }: Saying): string {
  const say = words.spoken
  if (hole === null) return say.close
  switch (round.what) {
    case 'start':
      return say.start(hole, kind ?? words.kindUnknown)
    case 'run down':
      return say.down(hole, turns)
    case 'snug':
      return say.snug(hole)
    case 'pass':
      return say.pass(hole, torque === null ? null : `${torque.figure} ${say.torqueUnits[torque.unit] ?? torque.unit}`)
    case 'mark':
      return say.mark(hole)
    case 'close':
      return say.close
  }
}

/** "M6 by 45, stud end": signs that a voice would leave out are words. */
export function kindAloud(kind: Kind, written: string): string {
  const thread = readThread([kind.thread].flat()[0]!)
  const { lo, hi } = intervalOf(kind.length)
  if (!thread.ok || !Number.isFinite(hi)) return written.replace('×', ` ${words.spoken.times} `)
  const length = String(Math.round((lo + hi) / 2))
  const features = kind.features === undefined || kind.features.length === 0 ? '' : `, ${kind.features.join(', ')}`
  return `${words.spoken.kindBy(thread.value.name, length)}${features}`
}
