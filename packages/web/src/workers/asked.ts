/** What the page and the engine's worker say to each other. */
import type { PlacementAnswer, Unit } from '@gripbook/engine'

export type Asked = { number: number; unit: Unit }

export type Answered = { number: number } & ({ ok: true; answer: PlacementAnswer } | { ok: false; why: string })
