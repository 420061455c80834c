import type { Face } from '@gripbook/engine'
import type { FoldedUnit } from '@gripbook/record'
import type { BookName } from '../app/route.ts'
import { Icon } from '../look/icons.tsx'
import { Go } from '../units/Go.tsx'
import { words } from '../words/index.ts'
import { faceStanding } from './faceStanding.ts'
import { Picture } from './Picture.tsx'

type Props = { folded: FoldedUnit; face: Face; book: BookName; onChange: () => void }

export function FaceCard({ folded, face, book, onChange }: Props) {
  const standing = faceStanding(folded, face.id)
  const name = face.name ?? face.id
  return (
    <div class="face-card">
      <Go to={{ at: 'face', book, unit: folded.id, face: face.id }} class="face-card__link">
        <Picture photograph={folded.faces[face.id]?.photograph?.value.photograph} alt="" />
        <span class="face-card__words">
          <strong class="face-card__name" dir="auto">
            {name}
          </strong>
          <span class="quiet">{words.unit.standing(standing)}</span>
          {(standing.closed || standing.released) && (
            <span class="sign sign--fits quiet">
              <Icon name="tick" size={18} />
              {standing.released ? words.unit.faceReleased : words.unit.closed}
            </span>
          )}
        </span>
      </Go>
      <button type="button" class="face-card__change" aria-label={words.unit.changeFace(name)} onClick={onChange}>
        <Icon name="more" />
      </button>
    </div>
  )
}
