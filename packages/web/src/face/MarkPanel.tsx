/** Marking: the thread of what is tapped is chosen once, the rest is taps. */
import { type Face, readThread } from '@gripbook/engine'
import { type FoldedUnit, undone } from '@gripbook/record'
import { useEffect, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { Choice } from '../parts/Choice.tsx'
import { TextField } from '../parts/Field.tsx'
import { threadsOffered } from '../tray/choices.ts'
import { sayFault, words } from '../words/index.ts'

const OTHER = 'other'

type Props = {
  unit: string
  face: Face
  folded: FoldedUnit
  onThread: (thread: string | null) => void
  onDone: () => void
}

export function MarkPanel({ unit, face, folded, onThread, onDone }: Props) {
  const { settings, choose, write, book } = useApp()
  // As it was when marking began: a list that sorts itself anew would move under the finger.
  const [offered] = useState(() => threadsOffered(folded.unit, settings.thread))
  /** What is typed as another thread; null: one of those offered is taken. */
  const [other, setOther] = useState<string | null>(null)
  const read = readThread(other ?? settings.thread)
  const fault = !read.ok && other !== null && other !== '' ? sayFault(read.faults[0]) : ''
  const taken = read.ok ? (other ?? settings.thread).trim() : null

  useEffect(() => onThread(taken), [taken, onThread])

  /** The last hole of this face that this person marked and that still stands. */
  const gone = new Set(folded.undone.map(({ event }) => event))
  const last = folded.entries.findLast(
    ({ id, type, who, body }) =>
      type === 'hole-marked' && who === book.who && (body as { face?: string }).face === face.id && !gone.has(id),
  )

  return (
    <section class="stack" aria-label={words.face.markTitle}>
      <div>
        <h2>{words.face.markTitle}</h2>
        <p class="quiet">{words.face.markHow}</p>
      </div>
      <Choice
        label={words.face.newThread}
        options={[
          ...offered.map((value) => ({ value, words: value })),
          { value: OTHER, words: words.face.otherThread },
        ]}
        value={other === null ? settings.thread : OTHER}
        onChoose={(value) => {
          setOther(value === OTHER ? '' : null)
          if (value !== OTHER) choose({ thread: value })
        }}
      />
      {other !== null && (
        <TextField
          label={words.face.otherThread}
          value={other}
          onInput={(value) => {
            setOther(value)
            if (readThread(value).ok) choose({ thread: value.trim() })
          }}
          fault={fault}
        />
      )}
      <p class="face__count" role="status">
        {words.face.marked(face.holes.length)}
      </p>
      <div class="buttons buttons--even face__sticky">
        <button
          type="button"
          class="button button--stop"
          disabled={last === undefined}
          onClick={() => last !== undefined && void write(unit, [undone({ event: last.id })])}
        >
          <Icon name="undo" />
          {words.face.undoLast}
        </button>
        <button type="button" class="button button--act" onClick={onDone}>
          <Icon name="tick" />
          {words.face.done}
        </button>
      </div>
    </section>
  )
}
