import type { Face, Kind } from '@gripbook/engine'
import { HOLE_QUANTITIES } from '../readings/quantities.ts'
import { words } from '../words/index.ts'
import type { Question } from './marks.ts'

type Props = { face: Face; kinds: readonly Kind[]; question: Question }

/** While something is still lacking: what, and what to do about it. */
export function NextStep({ face, kinds, question }: Props) {
  const said = nextStep(face, kinds)
  const noted = face.holes.filter(({ asFound }) => asFound !== undefined).length
  return (
    <>
      {said !== null && (
        <div class="empty">
          <h2>{said.title}</h2>
          <p>{said.what}</p>
        </div>
      )}
      {question === 'came out' && face.holes.length > 0 && noted < face.holes.length && (
        <p>{words.face.askAsFound(noted, face.holes.length)}</p>
      )}
    </>
  )
}

export function nextStep(face: Face, kinds: readonly Kind[]): { title: string; what: string } | null {
  if (face.holes.length === 0) return { title: words.face.noHoles, what: words.face.noHolesWhat }
  if (kinds.length === 0) return { title: words.face.noTray, what: words.face.noTrayWhat }
  const read = face.holes.some((hole) => HOLE_QUANTITIES.some((quantity) => hole[quantity] !== undefined))
  return read ? null : { title: words.face.noReadings, what: words.face.noReadingsWhat }
}
