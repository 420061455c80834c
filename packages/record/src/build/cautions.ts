/** Which cautions belong to a record: each to something that was done. The words, and the published limits in them, are with whoever prints. */
import { passesIn } from '../gates/benchFace.ts'
import type { FoldedUnit } from '../unit.ts'

export type Caution =
  | 'lifting'
  | 'springs'
  | 'solvents'
  | 'compressed air'
  | 'battery'
  | 'over-tightened'
  | 'sealant'
  | 'road test'

/** In the order of the work. A unit that was apart was lifted, cleaned and blown out, whether or not somebody wrote so (common practice, no source). */
export function cautionsFor({ things, faces }: FoldedUnit): Caution[] {
  const parts = Object.values(things.part)
  const hasSprings = parts.some(({ what }) => what?.value === 'spring' || what?.value === 'ring')
  const hasWires =
    Object.keys(things.plug).length > 0 ||
    parts.some(({ what }) => what?.value === 'connector' || what?.value === 'wire')
  const holes = Object.values(faces).flatMap((face) => Object.values(face.holes))
  const tightened = holes.some(({ steps }) => steps.final !== undefined || passesIn(steps).length > 0)
  return [
    ...(hasWires ? (['battery'] as const) : []),
    'lifting',
    ...(hasSprings ? (['springs'] as const) : []),
    'solvents',
    'compressed air',
    ...(Object.keys(things.clock).length > 0 ? (['sealant'] as const) : []),
    ...(tightened ? (['over-tightened'] as const) : []),
    'road test',
  ]
}
