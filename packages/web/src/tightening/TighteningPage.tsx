/** In which order the bolts of a face are tightened: the cover is drawn once, then every order is tried on it. */
import type { Face, Fault } from '@gripbook/engine'
import type { FoldedUnit } from '@gripbook/record'
import { useMemo, useState } from 'preact/hooks'
import type { Route } from '../app/route.ts'
import { Shell } from '../app/Shell.tsx'
import { useUnit } from '../app/useUnit.ts'
import { usePhotograph } from '../device/usePhotograph.ts'
import { pictureOf } from '../face/marks.ts'
import { NeedsHoles } from '../face/NeedsHoles.tsx'
import { words as shared } from '../words/index.ts'
import { words } from '../words/tightening.ts'
import { CoverSetup } from './CoverSetup.tsx'
import { frameOf } from './frame.ts'
import { NeedsScale } from './NeedsScale.tsx'
import { PlanView } from './PlanView.tsx'
import { hasDraft } from './useSetup.ts'
import './TighteningPage.css'

type Props = Extract<Route, { at: 'tightening' }>

export function TighteningPage(route: Props) {
  const folded = useUnit(route.unit)
  if (folded === null) return <p class="starting">{shared.shell.opening}</p>
  const face = folded.unit.faces.find(({ id }) => id === route.face)
  if (face === undefined) return <Shell title={shared.face.noFace}>{shared.face.noFaceWhat}</Shell>
  return (
    <Shell title={words.title} over={face.name ?? face.id} filled>
      {face.holes.length < 2 ? (
        <NeedsHoles
          title={words.needsHoles}
          what={words.needsHolesWhat}
          book={route.book}
          unit={route.unit}
          face={face.id}
        />
      ) : (
        <WithHoles folded={folded} face={face} />
      )}
    </Shell>
  )
}

function WithHoles({ folded, face }: { folded: FoldedUnit; face: Face }) {
  const work = folded.faces[face.id]
  const picture = pictureOf(work)
  const photograph = usePhotograph(picture.photograph)
  const frame = useMemo(() => frameOf(face, work), [face, work])
  const told = face.cover !== undefined && face.bed !== undefined
  const [editing, setEditing] = useState(() => !told || hasDraft(folded.id, face.id))
  const [faults, setFaults] = useState<readonly Fault[]>([])
  const seen = {
    folded,
    face,
    picture,
    url: photograph.state === 'here' ? photograph.url : null,
    away: photograph.state === 'away',
  }
  if (frame === null) return <NeedsScale {...seen} />
  if (editing || !told)
    return <CoverSetup {...seen} frame={frame} told={told} computed={faults} onDone={() => setEditing(false)} />
  return (
    <PlanView
      {...seen}
      frame={frame}
      onCover={(found) => {
        setFaults(found)
        setEditing(true)
      }}
    />
  )
}
