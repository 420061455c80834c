import { usePhotograph } from '../device/usePhotograph.ts'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/index.ts'
import './Picture.css'

type Props = {
  photograph: string | undefined
  /** What it shows, for one who does not see it; empty where words beside it say so. */
  alt: string
  size?: 320 | 1280 | 'full'
  /** Words where it is not here, instead of only a sign. */
  tell?: boolean
}

/** A photograph of the record in a frame; the frame is there before it, so that nothing jumps. */
export function Picture({ photograph, alt, size = 320, tell = false }: Props) {
  const shown = usePhotograph(photograph, size)
  if (shown.state === 'here')
    return (
      <span class="picture">
        <img src={shown.url} alt={alt} decoding="async" />
      </span>
    )
  const said =
    shown.state === 'away' ? words.photograph.away : shown.state === 'fetching' ? words.photograph.fetching : ''
  return (
    <span class={`picture${tell ? ' picture--away' : ''}`}>
      {tell && said !== '' ? (
        said
      ) : (
        <>
          <Icon name={shown.state === 'fetching' ? 'waiting' : 'photo'} />
          {alt !== '' && <span class="unseen">{alt}</span>}
        </>
      )}
    </span>
  )
}
