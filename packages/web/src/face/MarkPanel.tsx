/** Marking: the thread of what is tapped is chosen once, the rest is taps. */
import { type Face, readThread } from '@gripbook/engine'
import { type FoldedUnit, undone } from '@gripbook/record'
import { useEffect, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { Choice } from '../parts/Choice.tsx'
import { TextField } from '../parts/Field.tsx'
import { sayFault, words } from '../words/index.ts'

/** Usual on small covers; any other is typed. */
const USUAL_THREADS = ['M5', 'M6', 'M8', 'M10', 'M12', '1/4-20', '5/16-18'] as const
const OTHER = 'other'

type Props = {
  unit: string
  face: Face
  folded: FoldedUnit
  thread: string | null
  onThread: (thread: string | null) => void
  onDone: () => void
}

export function MarkPanel({ unit, face, folded, thread, onThread, onDone }: Props) {
  const { settings, choose, write, book } = useApp()
  const [other, setOther] = useState<string | null>(isUsual(settings.thread) ? null : settings.thread)
  const read = other === null ? null : readThread(other)
  const fault = read !== null && !read.ok && other !== '' ? sayFault(read.faults[0]) : ''

  useEffect(() => {
    const next =
      other === null ? (isUsual(settings.thread) ? settings.thread : 'M6') : read?.ok === true ? other!.trim() : null
    if (next !== thread) onThread(next)
  }, [other, settings.thread, thread, onThread, read?.ok])

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
          ...USUAL_THREADS.map((value) => ({ value, words: value })),
          { value: OTHER, words: words.face.otherThread },
        ]}
        value={other === null ? (thread as (typeof USUAL_THREADS)[number] | null) : OTHER}
        onChoose={(value) => {
          if (value === OTHER) return setOther('')
          setOther(null)
          choose({ thread: value })
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

function isUsual(thread: string): boolean {
  return (USUAL_THREADS as readonly string[]).includes(thread)
}
