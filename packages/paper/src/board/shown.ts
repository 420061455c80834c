/** Which bolt a board shows at a hole, and as what. */
import type { Face, FaceAnswer, Hole, Kind } from '@gripbook/engine'
import { NONE, sizeName } from '@gripbook/print'
import { words } from '../words.ts'

export type ShownHole = {
  hole: Hole
  kind: Kind | undefined
  /** `belongs`: the answer is settled. `as found`: it is not, or was not asked for, and this came out of it. `nothing`: neither is known. */
  as: 'belongs' | 'as found' | 'nothing'
  /** What is said under the bolt's size; empty for what belongs. */
  said: string
  /** The size, with the kind's name where that says more. */
  name: string
}

/** `answer` absent, or `asFound`: what came out. */
export function shownHole(
  hole: Hole,
  tray: ReadonlyMap<string, Kind>,
  answer: FaceAnswer | undefined,
  asFound: boolean,
): ShownHole {
  const here = asFound ? undefined : answer?.holes[hole.id]
  const found = hole.asFound === undefined || hole.asFound === NONE ? undefined : tray.get(hole.asFound)
  const shown = (kind: Kind | undefined, as: ShownHole['as'], said: string): ShownHole => ({
    hole,
    kind,
    as,
    said,
    name: kind ? nameOn(kind, tray) : '',
  })
  if (here?.verdict === 'settled') {
    const kind = tray.get(here.may[0] ?? '')
    if (kind) return shown(kind, 'belongs', '')
  }
  if (here?.verdict === 'contradicted')
    return shown(found, found ? 'as found' : 'nothing', words.noBoltFits(found !== undefined))
  if (here?.verdict === 'open') {
    const may = here.may.flatMap((id) => tray.get(id) ?? []).map((kind) => sizeName(kind))
    return shown(found, found ? 'as found' : 'nothing', words.open([...new Set(may)], found !== undefined))
  }
  // The whole board shows what came out: its title says so once.
  if (found) return shown(found, 'as found', '')
  return shown(undefined, 'nothing', hole.asFound === NONE ? words.foundEmpty : words.notKnown)
}

export function shownHoles(
  face: Face,
  tray: ReadonlyMap<string, Kind>,
  answer: FaceAnswer | undefined,
  asFound: boolean,
): ShownHole[] {
  return face.holes.map((hole) => shownHole(hole, tray, answer, asFound))
}

/** "M6×45", and the kind's own name too where another kind of the tray has the same size. */
export function nameOn(kind: Kind, tray: ReadonlyMap<string, Kind>): string {
  const size = sizeName(kind)
  const isShared = [...tray.values()].some((other) => other.id !== kind.id && sizeName(other) === size)
  return isShared ? `${size} ${kind.id}` : size
}
