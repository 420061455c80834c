import type { Kind } from '@gripbook/engine'
import { Choice } from '../parts/Choice.tsx'
import { words } from '../words/index.ts'

type Props = {
  kinds: readonly Kind[]
  named: (kind: string) => string
  /** What the next tap on a hole notes; null: a tap opens the hole. */
  noting: string | null
  onNoting: (kind: string | null) => void
}

const NONE = 'none'
const OPEN = ' open'

/** What came out, noted as fast as it is seen: a bolt is picked once, then every hole it sat in is tapped. */
export function FoundPanel({ kinds, named, noting, onNoting }: Props) {
  return (
    <Choice
      label={words.face.noteFound}
      options={[
        { value: OPEN, words: words.face.noteOpen },
        ...kinds.map(({ id }) => ({ value: id, words: named(id) })),
        { value: NONE, words: words.face.asFoundNone },
      ]}
      value={noting ?? OPEN}
      onChoose={(value) => onNoting(value === OPEN ? null : value)}
    />
  )
}
