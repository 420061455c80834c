/** Asks the engine what belongs where. */
import type { PlacementAnswer, Unit } from '@gripbook/engine'
import type { PlacementQuestion } from './asked.ts'
import { type EngineWorker, newWorker, type Said, startAsking } from './asking.ts'

const PATIENCE = 400

export type Engine = {
  /** Null when a newer question came before the answer, or it was stopped. */
  ask(unit: Unit): Promise<Said<PlacementAnswer> | null>
  stop(): void
  close(): void
}

export function startEngine(make: () => EngineWorker<PlacementAnswer> = newWorker): Engine {
  const asking = startAsking<PlacementQuestion, PlacementAnswer>(make, PATIENCE)
  return { ...asking, ask: (unit) => asking.ask({ what: 'placement', unit }) }
}
