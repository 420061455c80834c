import type { Picture } from '../marks.ts'
import type { ScreenPoint, Size, View } from './view.ts'

/** px */
const ACROSS = 132
const NEARER = 2.6
/** Above the finger, which hides what it points at. */
const LIFT = 104

type Props = { at: ScreenPoint; view: View; picture: Picture; url: string | null; stage: Size }

/** What lies under the finger, larger, with a cross hair. */
export function Magnifier({ at, view, picture, url, stage }: Props) {
  const below = at.y - LIFT - ACROSS / 2 < 0
  const x = Math.min(Math.max(at.x, ACROSS / 2), stage.width - ACROSS / 2)
  const y = below ? at.y + LIFT : at.y - LIFT
  const wide = picture.width * view.scale * NEARER
  const high = picture.height * view.scale * NEARER
  const left = ACROSS / 2 - (at.x - view.x) * NEARER
  const top = ACROSS / 2 - (at.y - view.y) * NEARER
  return (
    <div class="magnifier" aria-hidden="true" style={{ left: `${x - ACROSS / 2}px`, top: `${y - ACROSS / 2}px` }}>
      {url !== null && (
        <img
          src={url}
          alt=""
          style={{ width: `${wide}px`, height: `${high}px`, transform: `translate(${left}px, ${top}px)` }}
        />
      )}
      <span class="magnifier__cross" />
    </div>
  )
}
