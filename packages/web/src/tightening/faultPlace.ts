/** Where in the form a fault of the sums stands, and where on the picture. */
import type { Face, Fault, Point } from '@gripbook/engine'
import { sayFault } from '../words/index.ts'
import { words } from '../words/tightening.ts'
import type { FaultPlace } from './draft.ts'

export type Placed = { at: FaultPlace; index?: number; words: string; near?: Point; hole?: string }

/** The path of a fault starts at `faces` and the number of the face. */
export function placedFault(fault: Fault, face: Face): Placed {
  const [what, part, index] = fault.path.slice(2)
  const said = sayFault(fault)
  const near = 'near' in fault ? { near: fault.near } : {}
  if (what === 'holes' && typeof part === 'number') {
    const hole = face.holes[part]?.id ?? ''
    return { at: 'holes', index: part, words: words.faultAtHole(hole, said), hole }
  }
  const numbered = typeof index === 'number' ? { index } : {}
  if (what === 'cover' && (part === 'openings' || part === 'regions' || part === 'lines'))
    return { at: part, ...numbered, words: said, ...near }
  if (what === 'bed' && part === 'hollows') return { at: 'hollows', ...numbered, words: said, ...near }
  if (what === 'bed') return { at: 'bed', words: said }
  return { at: 'outline', words: said, ...near }
}
