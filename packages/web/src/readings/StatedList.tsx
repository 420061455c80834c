import { undone } from '@gripbook/record'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { words } from '../words/index.ts'

type Props = {
  unit: string
  /** The entry, and what it says. */
  lines: readonly { event: string; line: string }[]
  /** What stands here while there is nothing. */
  none: string
}

/** What was stated by hand and stands, each with its undo. */
export function StatedList({ unit, lines, none }: Props) {
  const { write } = useApp()
  if (lines.length === 0) return <p class="quiet">{none}</p>
  return (
    <ul class="lines">
      {lines.map(({ event, line }) => (
        <li key={event} class="stated">
          <p>{line}</p>
          <button
            type="button"
            class="button button--undo"
            aria-label={words.readings.undoThis(line)}
            onClick={() => void write(unit, [undone({ event })])}
          >
            <Icon name="undo" />
            {words.shell.undo}
          </button>
        </li>
      ))}
    </ul>
  )
}
