/** Laying kinds in, one after the other: thread and class stay, length and count are new each time. */
import type { Face, Quantity } from '@gripbook/engine'
import { sizeName } from '@gripbook/print'
import {
  type FoldedUnit,
  type Happening,
  kindDescribed,
  kindLaidOut,
  readingTaken,
  trayLaidOut,
  undone,
} from '@gripbook/record'
import { useEffect, useRef, useState } from 'preact/hooks'
import { useApp } from '../app/context.ts'
import { Icon } from '../look/icons.tsx'
import { Choice } from '../parts/Choice.tsx'
import { Sheet } from '../parts/Sheet.tsx'
import { useTyped } from '../parts/useTyped.ts'
import { instrumentFor, midOf } from '../readings/entry.ts'
import { InstrumentSheet } from '../readings/Instrument.tsx'
import { words } from '../words/index.ts'
import { type Draft, type DraftFault, draftAfter, emptyDraft, readDraft, twinOf } from './draft.ts'
import { KindFields } from './KindFields.tsx'
import { nextKindId } from './kindId.ts'

type Props = {
  folded: FoldedUnit
  face: Face
  named: (kind: string) => string
  onClose: () => void
}

export function AddKind({ folded, face, named, onClose }: Props) {
  const { settings, choose, write } = useApp()
  const shares = (folded.unit.kinds?.length ?? 0) > 0
  const choice = shares || folded.unit.faces.length > 1
  const [into, setInto] = useState<'face' | 'shared'>(shares && !face.kinds?.length ? 'shared' : 'face')
  const { typed: draft, type, clear } = useTyped<Draft>(`kind ${folded.id} ${face.id}`, emptyDraft(settings.thread))
  const [faults, setFaults] = useState<readonly DraftFault[]>([])
  const [kept, setKept] = useState<{ said: string; events: string[] } | null>(null)
  const [picking, setPicking] = useState(false)
  /** Ids given while the record was not yet folded again. */
  const given = useRef<{ body: unknown }[]>([])
  const length = useRef<HTMLInputElement | null>(null)
  const count = useRef<HTMLInputElement | null>(null)
  useEffect(() => length.current?.focus(), [])

  const read = readDraft(draft, settings.length, instrumentFor('length', settings))
  const kinds = into === 'face' ? (face.kinds ?? []) : (folded.unit.kinds ?? [])
  const lengthOf = (ok: Extract<typeof read, { ok: true }>): Quantity | undefined => ok.taken?.value ?? ok.fields.length
  const twin = read.ok ? twinOf(kinds, read.fields, lengthOf(read), midOf) : null

  function change(changed: Partial<Draft>) {
    type(changed)
    setFaults((now) => now.filter(({ field }) => !(field in changed)))
  }

  async function keep(andClose: boolean) {
    // Nothing new was typed since the last one: done.
    if (andClose && kept !== null && draft.length.trim() === '') return onClose()
    if (!read.ok) return setFaults(read.faults)
    const id = nextKindId([...folded.entries, ...given.current])
    const where = into === 'face' ? { face: face.id } : {}
    const first = into === 'face' ? face.kinds === undefined : folded.unit.kinds === undefined
    const happenings: Happening[] = [
      ...(first ? [trayLaidOut(where)] : []),
      kindLaidOut({ ...where, kind: id, ...read.fields }),
      ...(read.taken === null
        ? []
        : [readingTaken({ of: { ...where, kind: id, quantity: 'length' as const }, ...read.taken })]),
    ]
    const name = sizeName({ id, ...read.fields, ...optional(lengthOf(read)) })
    const said = words.tray.kept(name, draft.count)
    const events = await (andClose ? write(folded.id, happenings, said) : write(folded.id, happenings))
    if (events === null) return
    given.current.push({ body: { kind: id } })
    if (typeof read.fields.thread === 'string') choose({ thread: read.fields.thread })
    clear()
    if (andClose) return onClose()
    next({ said, events: events.map((event) => event.id) })
  }

  function next(done: { said: string; events: string[] }) {
    setKept(done)
    type(draftAfter(draft))
    setFaults([])
    length.current?.focus()
  }

  async function countThere() {
    if (twin === null || !read.ok) return
    const sum = (twin.count ?? 0) + (read.fields.count ?? 0)
    const where = into === 'face' ? { face: face.id } : {}
    const events = await write(folded.id, [kindDescribed({ ...where, kind: twin.id, count: sum })])
    if (events !== null) next({ said: words.tray.countKept(named(twin.id), sum), events: events.map(({ id }) => id) })
  }

  async function undoKept() {
    if (kept === null) return
    const back = [...kept.events].reverse().map((event) => undone({ event }))
    if ((await write(folded.id, back)) !== null) setKept(null)
  }

  return (
    <Sheet title={words.tray.addTitle} onClose={onClose}>
      <form
        class="stack kind-form"
        onSubmit={(event) => {
          event.preventDefault()
          void keep(false)
        }}
        onKeyDown={(event) => {
          if (event.key !== 'Enter' || event.target !== length.current) return
          // A gauge ends its figure with Enter: the count is still to come.
          event.preventDefault()
          count.current?.focus()
        }}
      >
        <div role="status" class="kind-status">
          {kept !== null && (
            <div class="kind-kept">
              <Icon name="tick" />
              <p dir="auto">{kept.said}</p>
              <button type="button" class="button" onClick={() => void undoKept()}>
                <Icon name="undo" />
                {words.shell.undo}
              </button>
            </div>
          )}
        </div>
        <KindFields
          unit={folded.unit}
          draft={draft}
          faults={faults}
          onChange={change}
          onInstrument={() => setPicking(true)}
          lengthRef={length}
          countRef={count}
          name={draft.thread}
        />
        {choice && (
          <Choice
            label={words.tray.tray}
            options={[
              { value: 'face', words: words.tray.thisFace },
              { value: 'shared', words: words.tray.allFaces },
            ]}
            value={into}
            onChoose={setInto}
          />
        )}
        {twin !== null && (
          <div class="caution" role="status">
            <Icon name="question" />
            <div class="stack stack--tight">
              <p dir="auto">{words.tray.twin(named(twin.id), twin.count)}</p>
              <div>
                <button type="button" class="button" onClick={() => void countThere()}>
                  {words.tray.countThere(Number(draft.count) || 0)}
                </button>
              </div>
            </div>
          </div>
        )}
        <div class="sheet-foot buttons buttons--even">
          <button type="button" class="button" onClick={() => void keep(true)}>
            {words.tray.keepClose}
          </button>
          <button type="submit" class="button button--act">
            {words.tray.keepNext}
          </button>
        </div>
      </form>
      {picking && <InstrumentSheet quantity="length" onClose={() => setPicking(false)} />}
    </Sheet>
  )
}

function optional(length: Quantity | undefined): { length?: Quantity } {
  return length === undefined ? {} : { length }
}
