import type { Face } from '@gripbook/engine'
import { Icon } from '../look/icons.tsx'
import { type KeptPhotograph, PhotographButtons } from '../parts/PhotographButtons.tsx'
import { words } from '../words/index.ts'
import type { Mark, Picture } from './marks.ts'
import { sayMark } from './sayMark.ts'

type Props = {
  face: Face
  marks: readonly Mark[]
  names: ReadonlyMap<string, string>
  picture: Picture
  onHole: (hole: string) => void
  onScale: () => void
  onPhotograph: (kept: KeptPhotograph) => void
}

/** The same as the photograph says, as a list; and what is seldom wanted of the photograph itself. */
export function HoleList({ face, marks, names, picture, onHole, onScale, onPhotograph }: Props) {
  return (
    <>
      {face.holes.length > 0 && (
        <details class="hole-list">
          <summary class="button">
            <Icon name="list" />
            {`${words.face.listTitle} (${face.holes.length})`}
          </summary>
          <ul class="lines">
            {marks.map((mark) => (
              <li key={mark.hole}>
                <button type="button" class="hole-list__line" onClick={() => onHole(mark.hole)}>
                  <span class={`mark-sign mark-sign--${mark.shape}`} aria-hidden="true" />
                  {sayMark(mark, names)}
                </button>
              </li>
            ))}
          </ul>
        </details>
      )}
      <details class="hole-list">
        <summary class="button">
          <Icon name="photo" />
          {picture.photograph === undefined ? words.face.photographFirst : words.face.replace}
        </summary>
        <div class="stack">
          {face.holes.length > 0 && <p class="quiet">{words.face.replaceWhat}</p>}
          <PhotographButtons onKept={onPhotograph} />
          {picture.photograph !== undefined && (
            <button type="button" class="button" onClick={onScale}>
              <Icon name="scale" />
              {words.face.scale}
            </button>
          )}
        </div>
      </details>
    </>
  )
}
