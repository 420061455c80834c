/** What lies on the picture while the cover is set up: corners that are drawn, or the holes with their number in the manual's order. */
import type { Point } from '@gripbook/engine'
import type { Mark } from '../face/marks.ts'
import type { PicturePoint } from '../face/stage/view.ts'
import { words as shared } from '../words/index.ts'
import { words } from '../words/tightening.ts'
import type { Draft } from './draft.ts'
import type { Placed } from './faultPlace.ts'
import type { Frame } from './frame.ts'
import { readSequence } from './sequence.ts'

/** Corners are marks: they are dragged, stepped by key and looked at through the magnifier like holes. */
export function cornerMarks(corners: readonly Point[], frame: Frame): Mark[] {
  return corners.map((corner, i) => ({
    hole: String(i),
    ...frame.toPicture(corner),
    shape: 'noted',
    badge: null,
    under: [],
    dim: false,
    number: String(i + 1),
    said: words.corner(i + 1, corners.length),
  }))
}

/** While a pass is tapped each hole shows its number in it; else its own name. */
export function holeMarks(
  holes: readonly string[],
  places: ReadonlyMap<string, PicturePoint>,
  draft: Draft,
  tapping: number | null,
  found: readonly Placed[],
): Mark[] {
  const pass = tapping === null ? undefined : draft.passes[tapping]
  const sequence = pass === undefined ? null : readSequence(pass.sequence, holes).holes
  return holes.flatMap((hole): Mark[] => {
    const place = places.get(hole)
    if (place === undefined) return []
    const turn = sequence?.indexOf(hole) ?? -1
    const faulty = found.some((fault) => fault.hole === hole)
    return [
      {
        hole,
        ...place,
        shape: turn >= 0 ? 'settled' : sequence === null ? 'noted' : 'plain',
        badge: faulty ? 'check' : null,
        under: sequence === null ? [] : [hole],
        dim: false,
        number: sequence === null ? hole : turn < 0 ? '' : String(turn + 1),
        said: turn < 0 ? shared.face.hole(hole) : words.turnOf(hole, turn + 1),
      },
    ]
  })
}

/** Where the bolts are, while the marks are corners. */
export function HoleDots({ places }: { places: ReadonlyMap<string, PicturePoint> }) {
  return (
    <>
      {[...places].map(([hole, { x, y }]) => (
        <span key={hole} class="hole-dot" aria-hidden="true" style={{ left: `${x * 100}%`, top: `${y * 100}%` }}>
          {hole}
        </span>
      ))}
    </>
  )
}
