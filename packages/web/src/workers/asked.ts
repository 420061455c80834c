/** What the page and the engine's worker say to each other. */
import type { TighteningAsked, TighteningProgress, Unit } from '@gripbook/engine'

export type PlacementQuestion = { what: 'placement'; unit: Unit }

export type TighteningQuestion = { what: 'tightening'; unit: Unit; face: string; asked: TighteningAsked }

/** How the cover lies under these loads, N, in the order of the answer's holes. */
export type CoverQuestion = { what: 'cover'; unit: Unit; face: string; loads: number[] }

export type Question = PlacementQuestion | TighteningQuestion | CoverQuestion

export type Asked = { number: number } & Question

export type Answered<A> = { number: number } & (
  | { ok: true; answer: A }
  | { ok: false; why: string }
  /** `soFar`: what is known of the answer already. */
  | { progress: TighteningProgress; soFar?: A }
)
