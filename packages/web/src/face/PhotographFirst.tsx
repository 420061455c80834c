import { Icon } from '../look/icons.tsx'
import { type KeptPhotograph, PhotographButtons } from '../parts/PhotographButtons.tsx'
import { words } from '../words/index.ts'

type Props = { onKept: (kept: KeptPhotograph) => Promise<unknown>; onWithout: () => void }

/** A new face: the photograph first, since it becomes the page. */
export function PhotographFirst({ onKept, onWithout }: Props) {
  return (
    <div class="column stack">
      <div class="empty">
        <Icon name="photo" size={48} />
        <h2>{words.face.photographFirst}</h2>
        <p>{words.face.photographHow}</p>
        <PhotographButtons act onKept={onKept} />
        <button type="button" class="button button--plain" onClick={onWithout}>
          {words.face.without}
        </button>
      </div>
      <p class="caution">
        <Icon name="warning" />
        <span>{words.face.cautionOpen}</span>
      </p>
    </div>
  )
}
