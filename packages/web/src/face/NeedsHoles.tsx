import { useApp } from '../app/context.ts'
import type { BookName } from '../app/route.ts'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/index.ts'

type Props = { title: string; what: string; book: BookName; unit: string; face: string }

/** In place of a screen of a face that has too few holes for it yet: why, and the way to where they are marked. */
export function NeedsHoles({ title, what, book, unit, face }: Props) {
  const { go } = useApp()
  return (
    <div class="column">
      <div class="empty">
        <h2>{title}</h2>
        <p>{what}</p>
        <button type="button" class="button button--act" onClick={() => go({ at: 'face', book, unit, face })}>
          <Icon name="mark" />
          {words.face.toFace}
        </button>
      </div>
    </div>
  )
}
